"""Cautions by what an opening holds, each beside its work; foam by what a layer is made of, not by its name."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from arches import arched
from cases import DOOR, changed, job_of, kit_of
from gangs import ganged_kit, unit
from trimmed_as_one import run_kits

from jambs.app.chain import make_kits
from jambs.job import read_job
from jambs.job.models.layers import MadeOf
from jambs.length import Units
from jambs.parts.board.lifting import Lift, lifting_of_house, lifting_words
from jambs.parts.kit.cautions import Beside
from jambs.parts.kit.kit import Kit

EXAMPLES = Path(__file__).parents[2] / "examples"


def layers(one: Any) -> list[Any]:
    """A wall without foam but for one layer."""
    return [
        "gypsum board 1/2",
        {"material": "stud 2x6", "spacing": "16"},
        "plywood 1/2",
        one,
        {"material": "plywood 1/2", "role": "outer sheathing"},
        "wood shingles",
    ]


def warns(one: Any) -> bool:
    kit = kit_of(walls__main__layers=layers(one))
    return any(one.text.startswith("Foam and fire") for one in kit.cautions)


INSULATION = {"role": "insulation", "thickness": "2"}


@pytest.mark.parametrize(
    ("name", "keys", "expected"),
    [
        ("EPS", {"thickness": "2"}, True),
        ("PIR board", INSULATION, True),
        ("closed-cell insulation", INSULATION, True),
        ("GPS graphite board", INSULATION, True),
        ("aerated board", INSULATION, True),  # unknown: the safe side, and the papers say that it was assumed
        ("aerated board", {**INSULATION, "made_of": "mineral"}, False),
        ("aerated board", {**INSULATION, "made_of": "foam plastic"}, True),
        ("Steps panel", {"role": "outer sheathing", "thickness": "1"}, False),
        ("Steps panel", {"role": "outer sheathing", "thickness": "1", "made_of": "foam plastic"}, True),
        ("polyester batts", INSULATION, False),
        ("polyethylene 6 mil", {}, False),
        ("wood-fiber board", {"thickness": "2"}, False),
    ],
)
def test_foam_is_told_by_what_it_is(name: str, keys: dict[str, str], expected: bool) -> None:
    assert warns({"material": name, **keys}) is expected


def test_one_caution_goes_by_the_weight_of_the_window() -> None:
    """A list of the whole house leaves it out, and says it once for each number of hands."""
    lifting = [one for one in kit_of().cautions if one.is_of_lifting]
    assert [(one.beside, "lb" in one.text) for one in lifting] == [(Beside.INSTALL, True)]


def test_foam_between_studs_counts() -> None:
    """Foam sprayed between the studs lies behind the same board toward the room."""
    filled = layers("plywood 1/2")
    filled[1] = {"material": "stud 2x6", "spacing": "16", "cavity": "closed-cell spray foam"}
    filled[2:4] = ["plywood 1/2"]
    assert any(one.text.startswith("Foam") for one in kit_of(walls__main__layers=filled).cautions)
    filled[1] = {"material": "stud 2x6", "spacing": "16", "cavity": "cellulose"}
    assert not any(one.text.startswith("Foam") for one in kit_of(walls__main__layers=filled).cautions)


def test_what_is_assumed_is_said_and_what_is_known_is_not() -> None:
    def told(one: Any) -> list[str]:
        job = job_of(changed(walls__main__layers=layers(one)))
        return [f"{one.what}: {one.value}" for one in (*job.assumed, *job.openings[0].assumed) if "made of" in one.what]

    assert told({"material": "aerated board", **INSULATION}) == ["what aerated board is made of: foam plastic"]
    assert told({"material": "aerated board", **INSULATION, "made_of": "fiber"}) == []
    assert told({"material": "EPS", "thickness": "2"}) == []
    assert told({"material": "drainage sheet", "role": "membrane", "thickness": "1/8"}) == []
    assert told({"material": "Steps panel", "role": "outer sheathing", "thickness": "1"}) == []


def test_the_job_has_the_last_word() -> None:
    job = job_of(changed(walls__main__layers=layers({"material": "EPS", "thickness": "2", "made_of": "fiber"})))
    assert [one.made_of for one in job.openings[0].wall.layers][3] is MadeOf.FIBER


def lines(beside: Beside, **paths: Any) -> list[str]:
    """What the caution lines beside some work are about: the words before the colon."""
    return [one.text.split(":")[0] for one in kit_of(**paths).cautions if one.beside is beside]


@pytest.mark.parametrize(
    ("keys", "is_told"),
    [
        ({"sill_height": "39"}, True),  # the rough sill is 1/4 lower: 38 3/4
        ({"sill_height": "39 1/4"}, False),
        ({"sill_height": "20", "drop_outside": "72 1/4"}, True),
        ({"sill_height": "20", "drop_outside": "72"}, False),
        ({"sill_height": "20"}, True),  # how deep it is outside nobody said
        ({"sill_height": None}, True),
        ({"sill_height": None, "drop_outside": "30"}, False),
    ],
)
def test_an_open_hole_is_told_of_to_the_framer_and_to_who_sets_the_window(
    keys: dict[str, str | None], is_told: bool
) -> None:
    """OSHA 29 CFR 1926.501(b)(14), from memory: under 39 in over the floor, 6 ft or more over what lies below."""
    paths: dict[str, Any] = {f"openings__0__{key}": value for key, value in keys.items()}
    for beside in (Beside.INSTALL, Beside.FRAMING):
        assert ("Open rough opening" in lines(beside, **paths)) is is_told


def test_a_window_is_set_from_staging_whether_or_not_it_has_trim_outside() -> None:
    assert "Height" in lines(Beside.INSTALL) and "Height" in lines(Beside.INSTALL, openings__0__exterior_trim="none")


@pytest.mark.parametrize(("left_out", "is_told"), [("", True), ("transom", False)])
def test_what_stands_over_a_door_is_set_from_staging_too(left_out: str, is_told: bool, tmp_path: Path) -> None:
    """Doors at the floor without trim outside are set from the floor; the unit on their transom bar is not."""
    job = yaml.safe_load((EXAMPLES / "quarry-loft" / "job.yaml").read_text(encoding="utf-8"))
    (doors,) = [one for one in job["openings"] if one["mark"] == "L6"]
    job["openings"] = [{key: one for key, one in doors.items() if not (left_out and key.startswith(left_out))}]
    (tmp_path / "job.yaml").write_text(yaml.safe_dump(job), encoding="utf-8")
    (kit,) = make_kits(read_job(tmp_path))
    assert any(one.text.startswith("Height: ") for one in kit.cautions) is is_told


def test_cautions_read_the_same_whatever_is_set_so_that_a_list_of_the_house_says_each_once() -> None:
    """A window, a door; units joined that are both (L6 of the quarry loft: doors under a light)."""
    loft = read_job(EXAMPLES / "quarry-loft")
    joined = next(kit for kit in make_kits(loft) if kit.mark == "L6")
    window, door, both = (
        {one.text for one in kit.cautions if one.beside is Beside.INSTALL} for kit in (kit_of(), kit_of(**DOOR), joined)
    )
    assert door and door <= window
    for said in map(" ".join, (door, both)):
        assert "not from a ladder with a window or a door in your hands" in said and "until its frame stands" in said


def has(words: str, **paths: Any) -> bool:
    return any(words in one.text for one in kit_of(**paths).cautions)


@pytest.mark.parametrize(
    ("pounds", "hands"),
    [
        (51, "one person can lift it, two set it"),
        (51.1, "two people to lift it"),
        (100, "two people to lift it"),
        (100.1, "three or four people to lift it, or lifting gear"),
        (200, "three or four people to lift it, or lifting gear"),
        (200.1, "lifting gear, and people who know how to use it; never by hand alone"),
    ],
)
def test_hands_go_by_the_weight(pounds: float, hands: str) -> None:
    """51 lb is 23 kg, the load constant of the NIOSH lifting equation (1994, from memory); the rest common practice."""
    assert f"lb: {hands};" in lifting_words([Lift(weight=pounds)], Units.INCH)


def test_a_heavy_window_is_not_for_two_people() -> None:
    """174 kg are 383.6 lb."""
    said = lifting_words([Lift(weight=174 / 0.45359237)], Units.MM)
    assert said == (
        "Glass: about 174 kg: lifting gear, and people who know how to use it; never by hand alone; gloves; "
        "never lean on a sash that is only tacked."
    )
    assert has("383 lb: lifting gear", openings__0__weight="383 lb")
    assert not has("two people", openings__0__weight="383 lb")


def test_units_are_lifted_joined_or_one_by_one() -> None:
    """60 + 60 + 31 lb: three or four people for all, two for the heaviest."""
    each = {"openings__0__units": [unit("30 x 48", weight="60 lb"), unit("30 x 48", weight="60 lb")]}
    said = [
        one.words for one in ganged_kit(**each, openings__0__transom=[unit("60 1/2 x 16", weight="31 lb")]).cautions
    ]
    assert (
        "Glass: the units joined about 151 lb: three or four people to lift it, or lifting gear; the heaviest alone "
        "about 60 lb: two people to lift it; gloves; never lean on a sash that is only tacked."
    ) in said
    assert not has("the heaviest alone")


def test_a_transom_over_a_bar_is_lifted_by_itself() -> None:
    """60 + 60 lb with a gap between, 31 lb past the bar; past a post each unit is by itself."""
    bar = {"post": "4", "joint": "1/4"}
    each: dict[str, Any] = {"openings__0__units": [unit("30 x 48", weight="60 lb"), unit("30 x 48", weight="60 lb")]}
    each |= {"openings__0__transom": [unit("60 1/2 x 16", weight="31 lb")], "openings__0__transom_bar": bar}
    said = (
        "Glass: units 1 and 2 joined about 120 lb: three or four people to lift it, or lifting gear; the heaviest "
        "alone about 60 lb: two people to lift it; unit 3 about 31 lb: one person can lift it, two set it; gloves; "
        "never lean on a sash that is only tacked."
    )
    assert said in [one.words for one in ganged_kit(**each).cautions]
    wide = {"openings__0__transom": [unit("64 1/2 x 16", weight="31 lb")], "openings__0__mull": dict(bar)}
    assert ganged_kit(**{**each, **wide}).placement.opening.gang.lifts == ((1,), (2,), (3,))  # type: ignore[union-attr]


NEAR_GROUND = {"openings__0__drop_outside": "30"}


def test_a_plain_opening_is_told_no_more_than_it_needs() -> None:
    """No taper, no liner, no service cavity, no cement, no old house, no deep drop; foam in the wall and a buck."""
    assert lines(Beside.FRAMING, **NEAR_GROUND) == []
    said = lines(Beside.INSTALL, **NEAR_GROUND)
    assert said == [
        "Glass",
        "Height",
        "Metal",
        "Wiring",
        "Sealant, spray foam and glue",
        "Foam and fire",
        "Structure",
    ]
    # The window is set and taped from outside all the same.
    inside = lines(Beside.INSTALL, exterior_trim=None)
    assert "Height" in inside and "Metal" not in inside


LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}


def test_headers_are_told_where_a_liner_widens_the_hole() -> None:
    assert lines(Beside.FRAMING, **NEAR_GROUND, walls__main__buck=LINER) == ["Headers"]
    assert lines(Beside.FRAMING, **NEAR_GROUND, walls__main__buck=LINER, position={"flange_on": "sheathing"}) == []


MEASURED = {
    "date": "2026-03-20",
    "interior_depth": {"head_left": "4 11/16", "head_right": "4 3/4", "sill_left": "4 5/8", "sill_right": "4 13/16"},
}


def test_a_taper_jig_is_told_by_the_tapered_parts() -> None:
    told = [one.text for one in kit_of(openings__0__measured=MEASURED).cautions if one.text.startswith("Taper jig")]
    assert told == ["Taper jig with clamps, never freehand: W1-1, W1-2, W1-3, W1-4."]
    assert not has("Taper jig")


def test_a_push_block_is_told_by_the_narrow_rips() -> None:
    """Interior depth 1 31/32 and proud 1/32 is a rip of 2, wide enough; 1 15/16 makes 1 31/32."""
    shallow = {"exterior_trim": None, "windows__fixed__jamb_depth": "4 17/32"}
    narrow = kit_of(position={"interior_depth": "1 31/32"}, **shallow)
    assert {part.width for part in narrow.parts if "jamb" in part.name} == {2.0}
    assert not any(one.text.startswith("Narrow") for one in narrow.cautions)
    assert has(
        "Narrow: rip from a wide blank and push it through with a block: W1-1, W1-2, W1-3, W1-4.",
        position={"interior_depth": "1 31/32"},
        shop__proud="0",
        **shallow,
    )


@pytest.mark.parametrize(
    ("stock", "told"),
    [
        ("cedar", "asthma"),
        ("western red cedar", "asthma"),
        ("red oak", "oak dust can cause cancer"),
        ("pressure-treated pine", "burn none of it"),
        ("pine", ""),
        ("soak-proof pine", ""),
    ],
)
def test_dust_goes_by_the_wood(stock: str, told: str) -> None:
    kit = kit_of(interior_trim__inside__jamb__stock=stock, exterior_trim=None)
    (dust,) = [one.text for one in kit.cautions if one.text.startswith("Dust")]
    assert told in dust if told else dust == "Dust: extraction and a mask."


def test_silica_is_told_of_cement_outside_and_not_of_gypsum_inside() -> None:
    clad = layers("plywood 1/2")
    assert not has("Silica", walls__main__layers=clad)
    assert has("Silica", walls__main__layers=[*clad[:-1], "fiber cement lap siding"])


def test_a_service_cavity_is_told_before_nails_go_through_it() -> None:
    def walled(*inside: Any) -> dict[str, Any]:
        return {"walls__main__layers": [*inside, *layers("plywood 1/2")[1:]]}

    plain = walled("gypsum board 1/2")
    cavity = walled("gypsum board 1/2", {"material": "service battens", "role": "service cavity", "thickness": "1 1/2"})
    assert has("pass the service cavity", **cavity) and not has("pass the service cavity", **plain)
    assert has("at the edge of the rough opening", **plain) and not has("at the edge of the rough opening", **cavity)


@pytest.mark.parametrize(
    ("year", "expected"),
    [(None, []), ("1977", ["Old paint", "Asbestos"]), ("1978", ["Asbestos"]), ("1989", ["Asbestos"]), ("1990", [])],
)
def test_old_paint_and_asbestos_only_in_old_houses(year: str | None, expected: list[str]) -> None:
    built = {"year_built": year} if year else {}
    assert [one for one in lines(Beside.INSTALL, **built) if one in ("Old paint", "Asbestos")] == expected


def test_the_windows_of_a_house_are_lifted_line_by_line_of_hands_the_lightest_first() -> None:
    """23, 40, 43 and 100 kg."""
    pounds = {"F3": 100 / 0.45359237, "F1": 43 / 0.45359237, "F2": 40 / 0.45359237, "F7": 23 / 0.45359237}
    kept = "gloves; never lean on a sash that is only tacked"
    assert lifting_of_house(pounds, Units.MM) == [
        f"Glass: one person can lift it, two set it; {kept}: F7 about 23 kg.",
        f"Glass: two people to lift it; {kept}: F2 about 40 kg, F1 about 43 kg.",
        f"Glass: lifting gear, and people who know how to use it; never by hand alone; {kept}: F3 about 100 kg.",
    ]


def told_of(start: str, kit: Kit) -> list[str]:
    return [one for said in kit.cautions if said.words.startswith(start) for one in said.marks]


def test_a_tilted_blade_goes_by_the_cuts_and_not_by_the_flare() -> None:
    """All jambs of an octagon are beveled by 22.5°, none leans; its mitered casing is cut with the blade upright."""
    made = arched("octagon", 36, 36, exterior_trim__outside__sill=None).kit
    jambs = [part.mark for part in made.parts if part.kind.is_jamb]
    assert len(jambs) == 16 and told_of("Blade tilted", made) == jambs
    assert told_of("Blade tilted", kit_of(exterior_trim=None)) == []


def test_resawing_is_told_of_plies_and_not_of_segments() -> None:
    bent = arched(curved="bent laminations").kit
    assert told_of("Resaw", bent) == [part.mark for part in bent.parts if part.is_laminated] != []
    assert not set(told_of("Resaw", bent)) & set(told_of("Blade tilted", bent))
    assert told_of("Resaw", arched().kit) == []


def test_every_one_of_openings_trimmed_as_one_warns_of_metal_that_is_put_up_there() -> None:
    """The flashing is the leftmost one's, and lies at all of them; boards are sawn where the leftmost one's are."""
    for kit in run_kits():
        assert [line.beside for line in kit.cautions if line.words.startswith("Metal:")] == [Beside.INSTALL]
    without = run_kits(exterior_trim=None)
    assert not [line for kit in without for line in kit.cautions if line.words.startswith("Metal:")]

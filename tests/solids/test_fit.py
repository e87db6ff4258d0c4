"""The fit report: the harbour house fits; planted faults are each told in a sentence; a wall out of plane is allowed
what it is out of plane, and no more.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from cases import METRIC, STOOL, changed, job_of, kit_of
from harbour import harbour_job, harbour_kits, harbour_solids
from said import sentences

from jambs.job import Job
from jambs.parts.board.cuts import Crosscut, Cut, Edge, End, EndBevel, EndRabbet, Groove, Miter, Notch, Rip, Taper
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.solids import fit_report
from jambs.solids.findings import ReturnsNotShown
from jambs.solids.fit import FitReport
from jambs.solids.model import board_shape, model_kit

SIXTEENTH = 1 / 16
CORNERS = ("head_left", "head_right", "sill_left", "sill_right")
MARKS = ["W01", "W02", "W03", "W04", "W05", "W06", "W07", "D01", *(f"W{number:02d}" for number in range(8, 15))]


@pytest.mark.parametrize("mark", MARKS)
def test_the_harbour_house_fits(mark: str) -> None:
    report = fit_report(harbour_solids(mark))
    assert report.faults == ()
    assert report.fits
    assert len(report.measures) > 50
    assert len(report.joints) >= 16


def report_of(**paths: Any) -> FitReport:
    job = job_of(changed(**paths))
    return fit_report(model_kit(make_kit(place_windows(job)[0], job), job))


BUTTED = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}
BAND = {"width": "3/4", "thickness": "1 1/8", "stock": "poplar"}
HEAD = [
    {"kind": "fillet", "height": "1/2", "projection": "1 1/4", "overhang": "1/2", "stock": "poplar"},
    {"kind": "frieze", "height": "5 1/2", "projection": "3/4", "overhang": "0", "stock": "poplar"},
    {"kind": "cap", "height": "3/4", "projection": "2", "overhang": "1 1/4", "stock": "poplar"},
]
HORNED = {"thickness": "1", "stock": "poplar", "horn": "1", "nosing": "3/4"}
RETURNED: dict[str, Any] = {
    "style": "returns",
    "frame_reveal": "1/2",
    "returns": {
        "material": "gypsum board",
        "thickness": "1/2",
        "corner_bead": {"leg": "1 1/4", "nose": "1/16"},
        "wall_board": "over the return",
        "gap_at_frame": "1/4",
    },
}
FITTING: dict[str, dict[str, Any]] = {
    "metric": METRIC,
    "two stacked frames, mitered": {
        "position": {"share": "1"},
        "interior_trim__inside__jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
        "interior_trim__inside__stack": "2",
    },
    "three stacked frames on a stool, measured": {
        "position": {"share": "1"},
        "interior_trim__inside": {**STOOL, "stack": {"frames": "3", "reveal": "3/16"}},
        "openings__0__measured": {
            "date": "2026-05-18",
            "interior_depth": {
                "head_left": "7 1/2",
                "head_right": "7 3/8",
                "sill_left": "7 7/16",
                "sill_right": "7 5/16",
            },
        },
    },
    "a stool with play behind its horns": {"interior_trim__inside": STOOL, "shop__horn_play": "1/16"},
    "returns with a stool, measured": {
        "interior_trim__inside": {**RETURNED, "style": "returns and stool", "stool": HORNED},
        "openings__0__measured": {
            "date": "2026-05-18",
            "interior_depth": {
                "head_left": "4 3/4",
                "head_right": "4 5/8",
                "sill_left": "4 11/16",
                "sill_right": "4 9/16",
            },
        },
    },
    "returns with an apron": {
        "interior_trim__inside": {
            **RETURNED,
            "style": "returns and stool",
            "stool": HORNED,
            "apron": {"width": "3", "thickness": "3/4", "stock": "poplar", "ends": "returned"},
        },
    },
    "returns with tile": {
        "interior_trim__inside": {
            **RETURNED,
            "style": "returns and tile sill",
            "tile_sill": {"thickness": "3/8", "bed": "1/4", "joint": "1/8", "nosing": "1/4"},
        },
    },
    "returned on four sides, over the wall board": {
        "interior_trim__inside": {**RETURNED, "returns": {**RETURNED["returns"], "wall_board": "behind the return"}},
    },
    "shadow gap on a stool": {
        "interior_trim__inside": {
            "style": "returns and stool",
            "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
            "frame_reveal": "1/8",
            "wall_edge": {"kind": "shadow gap", "gap": "3/8", "leg": "1"},
            "stool": HORNED,
        },
    },
    "flared, mitered": {
        "interior_trim__inside__jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
        "interior_trim__inside__flare": {"left": "30 deg", "right": '1"', "head": "45 deg", "sill": "10 deg"},
    },
    "flared and rabbeted, measured": {
        "interior_trim__inside__flare": {"sides": "10 deg", "head": "15 deg"},
        "openings__0__measured": {
            "date": "2026-05-18",
            "interior_depth": {
                "head_left": "4 3/4",
                "head_right": "4 7/8",
                "sill_left": "4 5/8",
                "sill_right": "4 3/4",
            },
        },
    },
    "flared legs on a stool under the frame": {
        "windows__fixed__frame_face": "1/2",
        "interior_trim__inside": {
            **STOOL,
            "stool": {**STOOL["stool"], "rabbet": "1/2", "thickness": "1 1/2"},
            "flare": {"left": "25 deg", "right": "5 deg", "head": "60 deg"},
        },
    },
    "head of members on a stool": {
        "interior_trim__inside": {**STOOL, "casing": BUTTED, "built_up": {"head": HEAD}},
    },
    "crown under a cap": {
        "interior_trim__inside": {
            **STOOL,
            "casing": BUTTED,
            "built_up": {
                "head": [HEAD[0], HEAD[1], {**HEAD[2], "projection": "4", "overhang": "3 1/4"}],
                "crown": {"width": "3 1/2", "thickness": "5/8", "spring_deg": "38", "stock": "poplar"},
            },
        },
    },
    "head of members over backbands": {
        "interior_trim__inside": {**STOOL, "casing": BUTTED, "built_up": {"head": HEAD, "backband": BAND}},
    },
    "backband round mitered casing": {"interior_trim__inside__built_up": {"backband": BAND}},
    "backband round butted casing": {
        "interior_trim__inside": {**STOOL, "casing": BUTTED, "built_up": {"backband": BAND}},
    },
    "backband, measured": {
        "interior_trim__inside": {**STOOL, "casing": BUTTED, "built_up": {"backband": BAND}},
        "openings__0__measured": {
            "date": "2026-05-18",
            "interior_depth": {
                "head_left": "4 3/4",
                "head_right": "4 5/8",
                "sill_left": "4 11/16",
                "sill_right": "4 9/16",
            },
        },
    },
    "head of members, measured": {
        "interior_trim__inside": {**STOOL, "casing": BUTTED, "built_up": {"head": HEAD}},
        "openings__0__measured": {
            "date": "2026-05-18",
            "interior_depth": {
                "head_left": "4 3/4",
                "head_right": "4 5/8",
                "sill_left": "4 11/16",
                "sill_right": "4 9/16",
            },
        },
    },
    "four rosettes": {
        "interior_trim__inside__casing": BUTTED,
        "interior_trim__inside__built_up": {"rosettes": {"size": "3 3/4", "thickness": "1", "stock": "poplar"}},
    },
    "plinths under a door's legs": {
        "interior_trim__inside": {
            **{key: value for key, value in STOOL.items() if key not in ("stool", "apron")},
            "style": "three-sided",
            "casing": BUTTED,
            "built_up": {"plinths": {"width": "4", "height": "8", "thickness": "1", "stock": "poplar"}, "head": HEAD},
        },
        "windows__fixed__sash": "door out",
        "windows__fixed__sash_thickness": "1 3/4",
        "windows__fixed__sash_set_back": "0",
        "openings__0__sill_height": None,
        "openings__0__floor_below_frame": "3/4",
        "exterior_trim": None,
    },
    "casing on the frame": {"windows__fixed__jamb_depth": "6 1/2", "position": {"share": "0"}},
    "frame proud outside": {"position": {"share": "1"}},
    "nothing outside": {"exterior_trim": None},
    "trim plane deeper at one side": {
        "openings__0__measured": {
            "date": "2026-05-18",
            "interior_depth": dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), "4 11/16"),
            "exterior_depth": {
                "head_left": "1 1/2",
                "head_right": "1 5/8",
                "sill_left": "1 1/2",
                "sill_right": "1 5/8",
            },
        }
    },
}


@pytest.mark.parametrize("name", FITTING)
def test_other_kits_fit(name: str) -> None:
    assert report_of(**FITTING[name]).faults == ()


def planted(mark: str, name: str, position: str, change: Callable[[Part], Part]) -> tuple[str, ...]:
    """Spoil one part of a harbour house kit, the interior one of two, and return the faults."""
    kit = harbour_kits()[mark]
    chosen = next(part for part in kit.parts if (part.name, part.position) == (name, position))
    parts = tuple(change(part) if part is chosen else part for part in kit.parts)
    assert parts != kit.parts
    return faults_of(replace(kit, parts=parts), harbour_job())


def faults_of(kit: Kit, job: Job) -> tuple[str, ...]:
    return tuple(sentences(fit_report(model_kit(kit, job)).faults, job.units))


def with_cuts(part: Part, change: Callable[[Any], Cut | None]) -> Part:
    return replace(part, cuts=tuple(cut for cut in (change(one) for one in part.cuts) if cut is not None))


def longer(part: Part) -> Part:
    """The part 1/16 longer: only its neighbors tell."""
    return with_cuts(part, lambda one: Crosscut(length=one.length + SIXTEENTH) if isinstance(one, Crosscut) else one)


def test_a_stacked_frame_that_does_not_reach_the_next_is_caught() -> None:
    """The frame at the window a sixteenth narrower: the next one stands off it, and its depth is told."""
    job = job_of(changed(position={"share": "1"}, interior_trim__inside__stack="2"))
    kit = make_kit(place_windows(job)[0], job)

    def narrower(part: Part) -> Part:
        if part.kind is not PartKind.EXTENSION_JAMB or part.member != 1:
            return part
        return with_cuts(part, lambda one: Rip(width=one.width - SIXTEENTH) if isinstance(one, Rip) else one)

    faults = faults_of(replace(kit, parts=tuple(narrower(part) for part in kit.parts)), job)
    assert any(one.startswith("jamb frame 2 and jamb frame 1 should touch over") for one in faults)
    assert (
        "depth of the head of frame 1 at the left is 3.438 in on the solids, it should be 3.500 in: 0.062 in less."
        in faults
    )


def test_a_return_a_sixteenth_narrow_is_caught() -> None:
    job = job_of(changed(interior_trim__inside=RETURNED))
    kit = make_kit(place_windows(job)[0], job)
    head = next(part for part in kit.parts if part.kind is PartKind.RETURN)
    narrow = with_cuts(head, lambda one: Rip(width=one.width - SIXTEENTH) if isinstance(one, Rip) else one)
    faults = faults_of(replace(kit, parts=(narrow, *kit.parts[1:])), job)
    assert any("depth of the head return is 4.625 in on the solids, it should be 4.688 in" in one for one in faults)


def test_a_leg_a_sixteenth_long_is_caught() -> None:
    """The leg goes 1/16 into the rabbet's floor: 1/16 x 3/4 x 4-23/32 = 0.2212 cu in; 3/8 of shoulder still touches."""
    faults = planted("W11", "extension jamb", "left leg", longer)
    assert (
        "W11-1 (extension jamb, head) and W11-2 (extension jamb, left leg) take the same room: "
        "0.2212 cu in in a box of 0.062 in × 0.750 in × 4.719 in."
    ) in faults
    assert (
        "the jamb's head and left leg, W11-1 and W11-2, should touch over 5.309 sq in but touch over 1.770 sq in."
    ) in faults


def test_a_leg_a_sixteenth_long_is_caught_on_a_measured_wall() -> None:
    faults = planted("W02", "extension jamb", "left leg", longer)
    assert any(
        text.startswith("W02-1 (extension jamb, head) and W02-2 (extension jamb, left leg) take") for text in faults
    )


def test_a_mirrored_miter_is_caught() -> None:
    def change(part: Part) -> Part:
        return with_cuts(part, lambda one: replace(one, long_edge=Edge.NEAR) if isinstance(one, Miter) else one)

    faults = planted("W11", "casing", "head", change)
    assert (
        "W11-5 (casing, head) and W11-6 (casing, left leg) take the same room: "
        "2.2969 cu in in a box of 0.750 in × 1.750 in × 3.500 in."
    ) in faults
    assert (
        "the casing's head and left leg, W11-5 and W11-6, should touch over 3.712 sq in but touch over "
        "0.000 sq in; no faces meet there."
    ) in faults


def test_a_swapped_taper_is_caught() -> None:
    def change(part: Part) -> Part:
        def swapped(one: Any) -> Cut:
            if isinstance(one, Taper):
                return Taper(start_width=one.finish_width, finish_width=one.start_width)
            cut: Cut = one
            return cut

        return with_cuts(part, swapped)

    faults = planted("W02", "extension jamb", "head", change)
    assert "depth of the head at the left is 4.750 in on the solids, it should be 4.688 in: 0.062 in more." in faults
    assert any(text.startswith("the jamb's head and right leg, W02-1 and W02-3, should touch") for text in faults)


def test_a_lost_rabbet_is_caught() -> None:
    def change(part: Part) -> Part:
        return with_cuts(part, lambda one: None if isinstance(one, EndRabbet) and one.end is End.START else one)

    assert planted("W02", "extension jamb", "head", change) == (
        "W02-1 (extension jamb, head) and W02-2 (extension jamb, left leg) take the same room: "
        "1.3271 cu in in a box of 0.375 in × 0.750 in × 4.719 in.",
        "the jamb's head and left leg, W02-1 and W02-2, should touch over 5.309 sq in but touch over "
        "0.000 sq in; they stand 0.375 in into each other.",
    )


def test_a_lost_drip_kerf_is_caught() -> None:
    faults = planted(
        "W01",
        "exterior sill",
        "sill",
        lambda part: with_cuts(part, lambda one: None if isinstance(one, Groove) else one),
    )
    assert faults == ("depth of the drip kerf is 0.000 in on the solids, it should be 0.250 in: 0.250 in less.",)


def test_an_apron_beveled_the_wrong_way_is_caught() -> None:
    """Outline and profile do not show ends cut through the thickness; the face is short by a thickness at each end.

    Where the horns stand 1/16 off the wall, the end that is cut the wrong way is long: 2 x 1/16 x (3/4 - 1/16) less.
    """

    def change(part: Part) -> Part:
        return with_cuts(part, lambda one: replace(one, face_short=True) if isinstance(one, EndBevel) else one)

    assert planted("W01", "apron", "sill", change) == (
        "the apron W01-8 and the stool W01-4 should touch over 37.879 sq in but touch over 37.793 sq in.",
        "face of the apron is 50.125 in on the solids, it should be 51.625 in: 1.500 in less.",
        "left end of the apron to the casing's edge is 0.750 in on the solids, it should be 0.000 in: 0.750 in more.",
    )


def test_a_leg_cut_against_the_slope_is_caught() -> None:
    def change(part: Part) -> Part:
        return with_cuts(part, lambda one: replace(one, long_edge=Edge.NEAR) if isinstance(one, Miter) else one)

    faults = planted("W01", "exterior extension jamb", "left leg", change)
    assert any(
        "W01-10 (exterior extension jamb, left leg) and W01-12 (exterior sill, sill) take" in text for text in faults
    )


def test_a_shallow_notch_is_caught() -> None:
    def change(part: Part) -> Part:
        return with_cuts(
            part, lambda one: replace(one, across=one.across - SIXTEENTH) if isinstance(one, Notch) else one
        )

    faults = planted("W01", "stool", "sill", change)
    assert (
        "back of the stool's left horn to the frame is 4.688 in on the solids, it should be 4.750 in: 0.062 in "
        "less." in faults
    )


def test_a_solid_that_lacks_a_cut_is_caught() -> None:
    """Board 33-5/8 x 3-1/2 x 3/4 = 88.2656 cu in; a miter takes 3.5² / 2 x 3/4 = 4.5938 cu in at each end."""
    solids = harbour_solids("W11")
    casing = next(one for one in solids.parts if one.name == "W11-5")
    assert casing.part is not None
    plain = replace(casing.part, cuts=tuple(cut for cut in casing.part.cuts if not isinstance(cut, Miter)))
    whole = replace(casing, bench=board_shape(plain.silhouettes))
    parts = tuple(whole if one is casing else one for one in solids.parts)
    assert tuple(sentences(fit_report(replace(solids, parts=parts)).faults)) == (
        "W11-5 (casing, head): the solid has 88.2656 cu in, the board less its cuts 79.0781 cu in: 9.1875 cu in off.",
    )


def test_a_mirrored_seat_is_caught() -> None:
    def change(part: Part) -> Part:
        x, y, d = part.seat.across
        return replace(part, seat=replace(part.seat, across=(-x, -y, -d)))

    faults = planted("W11", "casing", "left leg", change)
    assert faults == ("W11-6 (casing, left leg): its seat mirrors it; a board cannot be turned to lie like that.",)


def test_grain_across_is_caught() -> None:
    """A leg seated lying down."""

    def change(part: Part) -> Part:
        return replace(part, seat=replace(part.seat, along=(0.0, 0.0, 1.0), across=(0.0, 1.0, 0.0)))

    faults = planted("D01", "extension jamb", "left leg", change)
    assert faults[0] == "D01-2 (extension jamb, left leg): its grain runs level, it should run upright."


def test_a_shifted_seat_is_caught() -> None:
    def change(part: Part) -> Part:
        x, y, d = part.seat.origin
        return replace(part, seat=replace(part.seat, origin=(x - SIXTEENTH, y, d)))

    faults = planted("W05", "extension jamb", "left leg", change)
    assert "frame reveal at the left is 0.188 in on the solids, it should be 0.125 in: 0.062 in more." in faults
    assert any(text.startswith("shim space left is ") and text.endswith(": 0.062 in less.") for text in faults)
    assert any(text.startswith("clear opening width in the middle is ") for text in faults)


def test_a_stool_laps_under_a_shallow_frame() -> None:
    """Frame 3/4 high at the sill, reveal 1/8: the tongue starts at the frame's bottom, 5/8 below the stool's top."""
    entry = {"thickness": "1", "stock": "poplar", "horn": "3/4", "nosing": "3/4", "rabbet": "1/4"}
    face = {"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "3/4"}
    report = report_of(interior_trim__inside={**STOOL, "stool": entry}, windows__fixed__frame_face=face)
    assert report.faults == ()


def test_metric_jobs_are_told_in_millimeters() -> None:
    job = job_of(changed(**METRIC))
    kit = kit_of(**METRIC)
    leg = next(part for part in kit.parts if part.position == "left leg")
    spoiled = tuple(longer(part) if part is leg else part for part in kit.parts)
    faults = faults_of(replace(kit, parts=spoiled), job)
    assert faults[0].startswith("W1-1 (extension jamb, head) and W1-2 (extension jamb, left leg) take the same room: ")
    assert "in a box of 1.59 mm × 20.00 mm ×" in faults[0]


def test_a_twisted_wall_says_what_tolerance_it_was_given() -> None:
    """Corners 4-11/16, 4-3/4, 4-5/8, 4-13/16: twist 1/8, so a flat casing stands half of that off two of them.

    The boards' corners lie a little outside the measured ones, so a little more.
    """
    solids = harbour_solids("W02")
    assert solids.inside_slack.hollow == pytest.approx(SIXTEENTH, abs=0.005)
    assert (
        "The measured wall is out of plane inside: casing joints are held to 0.071 in, not to a thousandth; "
        "the casing is flat and lies on the highest edges, plane or shim the rest."
    ) in sentences(fit_report(solids).notes)


def test_an_even_wall_is_given_nothing() -> None:
    """A wall that is deeper everywhere is still flat: the casing moves out with it, joints stay tight."""
    depths = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), "4 7/8")
    job = job_of(changed(openings__0__measured={"date": "2026-05-18", "interior_depth": depths}))
    solids = model_kit(make_kit(place_windows(job)[0], job), job)
    assert solids.inside_slack.gap == pytest.approx(0.0, abs=1e-9)
    assert fit_report(solids).faults == ()


@pytest.mark.parametrize(("ends", "is_said"), [("returned", True), ("square", False)])
def test_returns_that_are_not_shown_are_said_where_there_are_some(ends: str, is_said: bool) -> None:
    apron = {**STOOL["apron"], "ends": ends}
    report = report_of(interior_trim__inside={**STOOL, "apron": apron})
    assert any(isinstance(one, ReturnsNotShown) for one in report.notes) is is_said


LEANING = {
    "date": "2026-05-18",
    "interior_depth": {
        **dict.fromkeys(("head_left", "head_right"), "4 11/16"),
        **dict.fromkeys(("sill_left", "sill_right"), "4 15/16"),
    },
}


@pytest.mark.parametrize("corner", ["miter", "butt"])
def test_an_apron_thicker_than_the_casing_leans_over_its_own_thickness(corner: str) -> None:
    """The wall falls back 1/4 over about 41 in of leg: over a 3/4 apron that is 0.005, over a 1/2 casing 0.003."""
    casing = {"width": "3 1/2", "thickness": "1/2", "stock": "poplar", "corner": corner}
    trim = {**STOOL, "casing": casing}
    assert report_of(interior_trim__inside=trim, openings__0__measured=LEANING).faults == ()


def test_a_stool_that_is_let_into_the_apron_is_still_caught_on_a_wall_that_leans() -> None:
    job = job_of(changed(interior_trim__inside=STOOL, openings__0__measured=LEANING))
    kit = make_kit(place_windows(job)[0], job)
    parts = tuple(thicker(part, SIXTEENTH) if part.kind is PartKind.STOOL else part for part in kit.parts)
    faults = faults_of(replace(kit, parts=parts), job)
    assert any("(stool, sill) and W1-8 (apron, sill) take the same room" in text for text in faults)


def thicker(part: Part, by: float) -> Part:
    return replace(part, blank=replace(part.blank, thickness=part.thickness + by))


@pytest.mark.parametrize(
    "depths",
    [("5", "5 3/4", "5", "5 3/4"), ("5 1/2", "5 1/2", "4 1/2", "4 1/2")],
    ids=["across, 1.2 degrees", "up, 1.2 degrees"],
)
def test_casing_bears_on_a_wall_that_leans_by_more_than_a_degree(depths: tuple[str, ...]) -> None:
    paths: dict[str, Any] = {
        "exterior_trim": None,
        "openings__0__measured": {"date": "2026-06-01", "interior_depth": dict(zip(CORNERS, depths, strict=True))},
    }
    assert fit_report(model_kit(kit_of(**paths), job_of(changed(**paths)))).faults == ()


def test_a_wide_leg_on_a_steep_sill_is_allowed_what_a_leaning_wall_takes() -> None:
    level = dict.fromkeys(CORNERS, "4 11/16")
    outside = dict(zip(CORNERS, ("1 3/4", "1 1/2", "1 3/4", "1 1/2"), strict=True))
    paths: dict[str, Any] = {
        "exterior_trim__outside__sill__slope": "15 deg",
        "exterior_trim__outside__casing__thickness": "3/4",
        "exterior_trim__outside__casing__width": "6",
        "openings__0__measured": {"date": "2026-06-01", "interior_depth": level, "exterior_depth": outside},
    }
    assert fit_report(model_kit(kit_of(**paths), job_of(changed(**paths)))).clashes == ()

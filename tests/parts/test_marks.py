"""A mark belongs to its part for ever: parts that come and go beside it, renaming, numbers that never return."""

from __future__ import annotations

from dataclasses import replace

from cases import changed, job_of
from hypothesis import given, settings
from hypothesis import strategies as st

from jambs.app.chain import make_kits
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.marks import NO_MARKS, MarkBook
from jambs.parts.board.part import Part, PartIdentity
from jambs.sides import Side


def part(side: Side, kind: PartKind = PartKind.CASING, opening: str = "W1") -> PartIdentity:
    return PartIdentity(opening=opening, kind=kind, where=Where.INTERIOR, side=side, member=1)


HEAD, LEFT, RIGHT, SILL = (part(side) for side in Side)


def parts_of(book: MarkBook = NO_MARKS, **paths: object) -> dict[str, Part]:
    job = job_of(changed(**paths))
    return {one.mark: one for kit in make_kits(job, book) for one in kit.parts}


def test_without_a_record_numbers_run_from_one_in_the_order_of_the_kit() -> None:
    assert list(parts_of()) == [f"W1-{number}" for number in range(1, len(parts_of()) + 1)]


def test_a_window_moved_until_its_exterior_jambs_are_gone() -> None:
    """``L2-9`` was an exterior extension jamb and became a head casing; no number may mean two parts."""
    before = parts_of()
    book = NO_MARKS.with_parts(one.identity for one in before.values())
    after = parts_of(book, position={"exterior_depth": "0"})
    gone = {mark for mark, one in before.items() if one.kind is PartKind.EXTERIOR_JAMB}
    assert gone and not gone & set(after)
    assert all(before[mark].identity == one.identity for mark, one in after.items() if mark in before)
    assert [one.kind for mark, one in after.items() if mark not in before] == [PartKind.CASING]  # under the frame now
    assert f"W1-{len(before) + 1}" in after


def test_new_parts_take_numbers_that_were_never_given_and_those_that_come_back_their_own() -> None:
    bare, full = parts_of(openings__0__exterior_trim="none"), parts_of()
    book = NO_MARKS.with_parts(one.identity for one in bare.values())
    after = parts_of(book)
    new = [mark for mark in after if mark not in bare]
    assert sorted(new, key=len) == [f"W1-{len(bare) + at}" for at in range(1, len(full) - len(bare) + 1)]
    book = book.with_parts(one.identity for one in after.values())
    assert parts_of(book, openings__0__exterior_trim="none").keys() == bare.keys()
    assert parts_of(book).keys() == after.keys()


def test_numbers_go_with_an_opening_that_is_renamed() -> None:
    book = NO_MARKS.with_parts([HEAD, LEFT]).moved({"W01": "W1"})
    assert [book.mark(replace(one, opening="W01")) for one in (HEAD, LEFT)] == ["W01-1", "W01-2"]
    assert book.moved({"W01": "W1"}) == book


def test_an_opening_that_takes_a_mark_which_another_had_begins_behind_it() -> None:
    book = NO_MARKS.with_parts([HEAD, LEFT]).moved({"W01": "W1"}).with_parts([HEAD])
    assert book.mark(HEAD) == "W1-3"


def test_a_mark_that_was_used_keeps_its_numbers_from_the_opening_that_takes_it() -> None:
    there = replace(HEAD, opening="W01")
    book = NO_MARKS.with_parts([there, HEAD, LEFT]).moved({"W01": "W1"})
    assert [book.mark(replace(one, opening="W01")) for one in (HEAD, LEFT)] == ["W01-3", "W01-2"]


def test_renamed_and_back_again() -> None:
    book = NO_MARKS.with_parts([HEAD, LEFT]).moved({"W01": "W1"})
    book = book.with_parts([replace(SILL, opening="W01")]).moved({"W1": "W01"})
    assert [book.mark(one) for one in (HEAD, LEFT, SILL)] == ["W1-1", "W1-2", "W1-3"]


def test_numbers_go_with_openings_that_exchange_their_marks_and_come_back_with_them() -> None:
    there = replace(HEAD, opening="W2")
    before = NO_MARKS.with_parts([HEAD, LEFT, there])
    book = before.moved({"W1": "W2", "W2": "W1"})
    assert [book.mark(replace(one, opening="W2")) for one in (HEAD, LEFT)] == ["W2-3", "W2-2"]
    assert book.mark(HEAD) == "W1-3" and LEFT not in book.numbers  # it was W2-1, and W1-1 is on another board
    back = book.moved({"W1": "W2", "W2": "W1"})
    assert back.numbers == before.numbers


OPENINGS = ("A", "B", "C")
STEPS = st.one_of(
    st.tuples(st.just("parts"), st.sampled_from(OPENINGS), st.lists(st.sampled_from(list(Side)), unique=True)),
    st.tuples(st.just("rename"), st.sampled_from(OPENINGS), st.sampled_from(OPENINGS)),
    st.tuples(st.just("exchange"), st.just(""), st.permutations(OPENINGS)),
)


@settings(max_examples=300)
@given(st.lists(STEPS, max_size=40))
def test_no_mark_ever_means_two_parts(steps: list[tuple[str, str, object]]) -> None:
    """Each thing has a name of its own here, which it keeps over renaming; a removed opening is a thing of its own."""
    book = NO_MARKS
    thing = {mark: number for number, mark in enumerate(OPENINGS)}
    meant: dict[str, tuple[int, Side]] = {}
    for what, mark, other in steps:
        if what == "rename" and other != mark and any(one.opening == mark for one in book.numbers):
            book = book.moved({str(other): mark})
            thing[str(other)], thing[mark] = thing[mark], max(thing.values()) + 1
        elif what == "exchange":
            moves = dict(zip(OPENINGS, other, strict=True))  # type: ignore[call-overload]
            book = book.moved({new: old for new, old in moves.items() if new != old})
            thing = {new: thing[old] for new, old in moves.items()}
        elif what == "parts":
            book = book.with_parts(part(side, opening=mark) for side in other)  # type: ignore[attr-defined]
        for one in book.numbers:
            assert meant.setdefault(book.mark(one), (thing[one.opening], one.side)) == (thing[one.opening], one.side)

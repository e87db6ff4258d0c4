"""What a part is and where it belongs: as data, with its words in one place.

Nothing in the house compares these words; they are for printing.
"""

from __future__ import annotations

from enum import Enum

from jambs.sides import Side


class Where(Enum):
    """Which set a part belongs to."""

    INTERIOR = "interior"
    EXTERIOR = "exterior"
    BUCK = "buck"


class Crew(Enum):
    """Who makes a part, and leaves it to the carpenter to the sizes of the sheet where he does not."""

    CARPENTER = "carpenter"
    DRYWALL = "drywall crew"
    TILER = "tiler"
    SIDING = "siding crew"


class PartKind(Enum):
    """The kinds of parts, by their trade words."""

    EXTENSION_JAMB = "extension jamb"
    STILE = "stile"
    RAIL = "rail"
    PANEL = "panel"
    RETURN = "return"
    STOOL = "stool"
    TILE_SILL = "tile sill"
    CASING = "casing"
    APRON = "apron"
    BACKBAND = "backband"
    ROSETTE = "rosette"
    PLINTH = "plinth block"
    FILLET = "fillet"
    FRIEZE = "frieze"
    CAP = "cap"
    CROWN = "crown"
    MULL_JAMB = "mull jamb"
    MULL_CASING = "mull casing"
    TRANSOM_BAR_CASING = "transom bar casing"
    EXTERIOR_JAMB = "exterior extension jamb"
    EXTERIOR_SILL = "exterior sill"
    METAL_RETURN = "metal return"
    CLADDING_RETURN = "cladding return"
    CORNER_BOARD = "corner board"
    RETURN_FURRING = "return furring"
    HEAD_FLASHING = "head flashing"
    LINER_BUCK = "liner buck"
    OUTBOARD_BUCK = "outboard buck"

    @property
    def words(self) -> str:
        """The part in trade words."""
        return self.value

    @property
    def says_side(self) -> bool:
        """Say whether the words alone tell where it is: a stool is at the sill, a head flashing at the head."""
        return self.is_at_sill or self in (PartKind.HEAD_FLASHING, PartKind.TRANSOM_BAR_CASING)

    @property
    def is_jamb(self) -> bool:
        """Say whether it is an extension jamb, inside or outside, or what lines the opening out to the wall for it."""
        return self in (
            PartKind.EXTENSION_JAMB,
            PartKind.EXTERIOR_JAMB,
            PartKind.RETURN,
            PartKind.MULL_JAMB,
            PartKind.CORNER_BOARD,
        )

    @property
    def is_built_up(self) -> bool:
        """Say whether it is a member that stands with the boards of a casing."""
        return self in BUILT_UP

    @property
    def is_at_corner(self) -> bool:
        """Say whether it is a block in a corner, which no section through the middle of a side meets."""
        return self in (PartKind.ROSETTE, PartKind.PLINTH)

    @property
    def is_between_units(self) -> bool:
        """Say whether it lies or stands between ganged units, at no side of the opening."""
        return self in (PartKind.MULL_JAMB, PartKind.MULL_CASING, PartKind.TRANSOM_BAR_CASING)

    @property
    def is_of_panel_frame(self) -> bool:
        """Say whether it is a member of a jamb that is made as a frame with panels."""
        return self in (PartKind.STILE, PartKind.RAIL, PartKind.PANEL)

    @property
    def is_bar(self) -> bool:
        """Say whether it lies level between units, under a transom."""
        return self is PartKind.TRANSOM_BAR_CASING

    @property
    def is_buck(self) -> bool:
        """Say whether it is a board of a buck."""
        return self in (PartKind.LINER_BUCK, PartKind.OUTBOARD_BUCK)

    @property
    def is_at_sill(self) -> bool:
        """Say whether it lies at the sill only, and is said to lie there; all others go round the opening."""
        return self in (PartKind.STOOL, PartKind.TILE_SILL, PartKind.APRON, PartKind.EXTERIOR_SILL)


BUILT_UP = (
    PartKind.BACKBAND,
    PartKind.ROSETTE,
    PartKind.PLINTH,
    PartKind.FILLET,
    PartKind.FRIEZE,
    PartKind.CAP,
    PartKind.CROWN,
)


def position_words(kind: PartKind, side: Side, *, is_on_wall: bool = False) -> str:
    """Say where a part is: ``left leg``, ``bottom`` of what goes round the opening, ``sill`` of what lies there.

    ``is_on_wall``: it lies on the wall between openings that are trimmed as one.
    """
    if kind.is_between_units:
        if kind is PartKind.MULL_JAMB:
            return f"{side.words} side of the mull"
        if kind is not PartKind.MULL_CASING:
            return "under the transom"
        return "between openings" if is_on_wall else "between units"
    if kind.is_at_corner:
        return side.words
    return side.words if kind.is_at_sill else side.board_words


def member_words(kind: PartKind, member: int, members: int, *, is_on_wall: bool = False) -> str:
    """Say which of several on a side a part is: `` of frame 2``, from the window on; nothing where it is alone."""
    if kind is PartKind.CROWN:
        return ("", ", left return", ", right return")[member - 1]
    if kind is PartKind.STILE:
        return ", at the frame" if member == 1 else ", at the room"
    if members > 1 and kind is PartKind.RETURN_FURRING:
        return ", at the frame" if member == 1 else ", at the corner"
    if kind.is_of_panel_frame and members > 1:
        return f", {member} of {members}"
    if members > 1 and kind is PartKind.ROSETTE:
        return " above" if member == 1 else " below"
    if members > 1 and kind in (PartKind.MULL_CASING, PartKind.MULL_JAMB):
        return f", {'wall' if is_on_wall else 'mull'} {member}"
    if members > 1 and kind is PartKind.TRANSOM_BAR_CASING:
        return f", bar {member} from below"
    return f" of frame {member}" if members > 1 and kind is PartKind.EXTENSION_JAMB else ""


def run_words(run: int, runs: int) -> str:
    """Say which of the edges a side is parted into a board lies along: ``, left``; nothing where it is the only one."""
    if runs == 1:
        return ""
    if runs <= len(_RUNS):
        return f", {_RUNS[runs - 1][run - 1]}"
    return f", {run} of {runs} from the left"


def is_one_of_several(kind: PartKind, members: int, runs: int | None) -> bool:
    """Say whether a part has its side to share: with edges or segments of it, or with other stacked frames."""
    return (runs or 1) > 1 or (members > 1 and kind is PartKind.EXTENSION_JAMB)


_RUNS = (("",), ("left", "right"), ("left", "middle", "right"))


def told_position(name: str, position: str) -> str:
    """Return where a part is, in words, or nothing where its name tells it: a stool is at the sill."""
    return "" if name in _SAYS_SIDE else position


def told_name(name: str, where: str) -> str:
    """Return what a part is called where boards of both sides lie in one stack: ``interior casing``."""
    return f"{where} {name}" if name in _OF_BOTH_SIDES else name


_OF_BOTH_SIDES = {
    kind.words for kind in (PartKind.CASING, PartKind.MULL_JAMB, PartKind.MULL_CASING, PartKind.TRANSOM_BAR_CASING)
}
_SAYS_SIDE = {kind.words for kind in PartKind if kind.says_side}

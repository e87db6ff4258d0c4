"""What touches what in a placed view: measured on the boxes of its texts, by rules written apart from the program's."""

from __future__ import annotations

from itertools import combinations

from jambs.drawings.elements.placed import PlacedView, ticks

TOUCH = 1e-6
Rectangle = tuple[float, float, float, float]
Piece = tuple[tuple[float, float], tuple[float, float]]


def rectangles(view: PlacedView) -> list[tuple[str, Rectangle]]:
    found = []
    for text in view.lettering:
        box = text.box
        found.append((" | ".join(text.lines), (box.left, box.bottom, box.right, box.top)))
    return found


def pieces(view: PlacedView) -> list[tuple[str, Piece]]:
    found: list[tuple[str, Piece]] = []
    for dimension in view.dimensions:
        name = f"dimension {dimension.text.lines[0]}"
        found += [(name, piece) for piece in (dimension.line, *dimension.extensions)]
        found += [(f"tick of {name}", piece) for piece in ticks(dimension, view.scale.factor)]
        if dimension.leader:
            found += [(f"leader of {name}", piece) for piece in dimension.leader.segments]
    for leader in (*view.leaders, *(one.leader for one in view.radials)):
        found += [("leader", piece) for piece in leader.segments]
    found += [("rule", rule.segment) for rule in view.rules]
    return found


def overlap(one: Rectangle, two: Rectangle) -> bool:
    wide = min(one[2], two[2]) - max(one[0], two[0])
    high = min(one[3], two[3]) - max(one[1], two[1])
    return wide > TOUCH and high > TOUCH


def cuts(piece: Piece, box: Rectangle) -> bool:
    """Clip the piece to the box one side after another (Cyrus and Beck); something longer than a touch is left."""
    (x0, y0), (x1, y1) = piece
    first, last = 0.0, 1.0
    for normal, distance in (
        ((-1, 0), -box[0] - TOUCH),
        ((1, 0), box[2] - TOUCH),
        ((0, -1), -box[1] - TOUCH),
        ((0, 1), box[3] - TOUCH),
    ):
        toward = normal[0] * (x1 - x0) + normal[1] * (y1 - y0)
        room = distance - normal[0] * x0 - normal[1] * y0
        if toward == 0:
            if room < 0:
                return False
        elif toward > 0:
            last = min(last, room / toward)
        else:
            first = max(first, room / toward)
    return last - first > 0


def collisions(view: PlacedView) -> list[str]:
    """Every pair of texts that overlap, every text that a line runs through, everything outside the view."""
    texts, lines = rectangles(view), pieces(view)
    found = [f"{one[0]} on {two[0]}" for one, two in combinations(texts, 2) if overlap(one[1], two[1])]
    found += [f"{line[0]} through {text[0]}" for text in texts for line in lines if cuts(line[1], text[1])]
    box = view.box
    for name, (left, bottom, right, top) in texts:
        if left < box.left or bottom < box.bottom or right > box.right or top > box.top:
            found.append(f"{name} outside the view")
    for name, ((x0, y0), (x1, y1)) in lines:
        if min(x0, x1) < box.left or max(x0, x1) > box.right or min(y0, y1) < box.bottom or max(y0, y1) > box.top:
            found.append(f"{name} outside the view")
    return found


def crossings(view: PlacedView) -> list[str]:
    """Leaders that cross leaders of another text."""
    found = []
    for one, two in combinations(view.leaders, 2):
        if any(_cross(a, b) for a in one.segments for b in two.segments):
            found.append(f"{one.points} x {two.points}")
    return found


def _cross(one: Piece, two: Piece) -> bool:
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = two
    denominator = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if abs(denominator) < 1e-12:
        return False
    share = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / denominator
    other = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / denominator
    return 1e-6 < share < 1 - 1e-6 and 1e-6 < other < 1 - 1e-6

"""Which way each layer of a wall can dry."""

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.study.wall.stack import US_PERM, HeatLayer, HeatStack

# A side lets a layer dry when what lies on it passes more than 1 perm together: the upper end of vapor retarder
# class II of the International Residential Code, its definitions. [ng/(s m2 Pa)]
DRYING_LIMIT = US_PERM


@dataclass(frozen=True, slots=True, kw_only=True)
class Drying:
    """One layer's ways to dry: permeance of everything on either side of it [ng/(s m2 Pa)].

    Infinite when nothing lies on that side, None when a layer there has no known permeance and none known blocks.
    """

    layer: HeatLayer
    inward: float | None
    outward: float | None
    limit: float

    @property
    def is_blocked_both_ways(self) -> bool:
        """Whether neither side is known to let more through than the limit."""
        return _blocks(self.inward, self.limit) and _blocks(self.outward, self.limit)

    @property
    def words(self) -> str:
        """What to print for the layer."""
        own = "permeance not given" if self.layer.permeance is None else _perms(self.layer.permeance)
        return (
            f"{self.layer.name} ({own}): dries inward {_through(self.inward, self.limit)}, "
            f"outward {_through(self.outward, self.limit)}"
            + (". BLOCKED ON BOTH SIDES: what gets wet here stays wet." if self.is_blocked_both_ways else ".")
        )


def drying(stack: HeatStack, *, limit: float = DRYING_LIMIT) -> tuple[Drying, ...]:
    """Ways to dry of every layer, inside -> outside. A side passes when its permeance is over `limit`."""
    layers = stack.layers
    return tuple(
        Drying(
            layer=layer,
            inward=permeance_of(layers[:place], limit=limit),
            outward=permeance_of(layers[place + 1 :], limit=limit),
            limit=limit,
        )
        for place, layer in enumerate(layers)
    )


def permeance_of(layers: Sequence[HeatLayer], *, limit: float = DRYING_LIMIT) -> float | None:
    """Permeance of layers one behind the other [ng/(s m2 Pa)].

    Infinite for no layers. Where some are not known: of the known ones when they alone block, else None.
    """
    known = [layer.permeance for layer in layers if layer.permeance is not None]
    if any(permeance == 0 for permeance in known):
        return 0.0
    together = 1 / sum(1 / permeance for permeance in known) if known else float("inf")
    return together if len(known) == len(layers) or together <= limit else None


def _blocks(permeance: float | None, limit: float) -> bool:
    return permeance is not None and permeance <= limit


def _through(permeance: float | None, limit: float) -> str:
    if permeance is None:
        return "unknown (a permeance is missing)"
    if permeance == float("inf"):
        return "freely"
    return f"{'blocked' if permeance <= limit else 'yes'} ({_perms(permeance)})"


def _perms(permeance: float) -> str:
    return f"{permeance / US_PERM:.2f} perm, {permeance:.0f} ng/s m2 Pa"

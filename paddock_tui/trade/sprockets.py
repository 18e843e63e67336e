"""Pairs of sprockets in order of their ratio, with what each asks of chain and axle."""

from collections.abc import Iterable

import attrs

from paddock_tui.trade.chain import centre_mm, links_even
from paddock_tui.trade.errors import Inconsistent, within
from paddock_tui.trade.gearing import final_ratio


@attrs.frozen
class Fitted:
    """The final drive as it is: teeth, links, pitch in mm, and room in mm for the axle either way, if known.

    `back_mm` lengthens the wheelbase, `forward_mm` shortens it; None while nobody has measured it.
    """

    front_teeth: int
    rear_teeth: int
    links: int
    pitch_mm: float
    back_mm: float | None = None
    forward_mm: float | None = None

    def __attrs_post_init__(self) -> None:
        within("links", self.links, 40, 250)
        for room in (self.back_mm, self.forward_mm):
            if room is not None:
                within("room for the axle", room, 0.0, 200.0, "mm")

    def takes(self, move_mm: float) -> bool | None:
        """Return whether the axle has room to move so far (positive: back); None where that is not known."""
        room = self.back_mm if move_mm > 0.0 else self.forward_mm
        if abs(move_mm) < 1e-9:
            return True
        return None if room is None else abs(move_mm) <= room


@attrs.frozen
class SprocketPair:
    """One pair: ratio, and the change against the fitted one in percent (positive: shorter gearing).

    `axle_mm` is how far the axle moves with the fitted chain (positive: back), `fits` whether there is room;
    `links` is the even number for the axle where it stands, `axle_with_links_mm` the move with that chain.
    """

    front_teeth: int
    rear_teeth: int
    ratio: float
    change_percent: float
    axle_mm: float
    fits: bool | None
    links: int
    axle_with_links_mm: float


def sprocket_pairs(fronts: Iterable[int], rears: Iterable[int], fitted: Fitted) -> tuple[SprocketPair, ...]:
    """Return every pair of the given sprockets, longest gearing first, equal ratios by front teeth.

    The chain is taken as new and taut: a worn one is up to 1 % longer. Slack is to be set afresh after any
    change, at the tightest point.
    """
    rear_list = sorted(set(rears))
    front_list = sorted(set(fronts))
    if not front_list or not rear_list:
        raise Inconsistent("sprockets", "none is given for one end")
    pairs = [_pair(front, rear, fitted) for front in front_list for rear in rear_list]
    return tuple(sorted(pairs, key=lambda pair: (pair.ratio, pair.front_teeth)))


def axle_move_mm(fitted: Fitted, front_teeth: int, rear_teeth: int, links: int | None = None) -> float:
    """Return how far in mm the axle moves (positive: back) for other sprockets and, if given, another
    chain.
    """
    now = centre_mm(fitted.front_teeth, fitted.rear_teeth, fitted.links, fitted.pitch_mm)
    return centre_mm(front_teeth, rear_teeth, links or fitted.links, fitted.pitch_mm) - now


def _pair(front: int, rear: int, fitted: Fitted) -> SprocketPair:
    ratio = final_ratio(front, rear)
    now_ratio = final_ratio(fitted.front_teeth, fitted.rear_teeth)
    now_mm = centre_mm(fitted.front_teeth, fitted.rear_teeth, fitted.links, fitted.pitch_mm)
    move = axle_move_mm(fitted, front, rear)
    links = links_even(front, rear, now_mm, fitted.pitch_mm)
    return SprocketPair(
        front_teeth=front,
        rear_teeth=rear,
        ratio=ratio,
        change_percent=100.0 * (ratio / now_ratio - 1.0),
        axle_mm=move,
        fits=fitted.takes(move),
        links=links,
        axle_with_links_mm=axle_move_mm(fitted, front, rear, links),
    )

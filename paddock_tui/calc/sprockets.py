"""Pairs of sprockets in order of their ratio, with what each asks of chain and axle."""

from collections.abc import Iterable

import attrs

from paddock_tui.calc.chain import centre_mm
from paddock_tui.calc.errors import Inconsistent, OutOfRange, within
from paddock_tui.calc.gearing import final_ratio


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
class ChainFit:
    """A chain for one pair: its links, how far the axle moves with it in mm (positive: back), and the fit.

    `fits` is None where the room is not known; `short_mm` is the room that is missing, none where it fits.
    """

    links: int
    axle_mm: float
    fits: bool | None
    short_mm: float = 0.0


@attrs.frozen
class SprocketPair:
    """One pair: ratio, change against the fitted one in percent (positive: shorter gearing), its chain."""

    front_teeth: int
    rear_teeth: int
    ratio: float
    change_percent: float
    chain: ChainFit


_OTHER_LINKS = 8
"""So many links more or less than fitted are looked at."""


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


def chain_for(fitted: Fitted, front_teeth: int, rear_teeth: int) -> ChainFit:
    """Return the chain for a pair: the fitted one where it fits or nobody knows, else another that fits.

    Only even numbers of links are looked at. Where none fits, the one that misses the least room is given.
    """
    now = _chain(fitted, front_teeth, rear_teeth, fitted.links)
    if now.fits is not False:
        return now
    even = range(fitted.links - fitted.links % 2 - _OTHER_LINKS, fitted.links + _OTHER_LINKS + 1, 2)
    others = []
    for links in even:
        try:
            others.append(_chain(fitted, front_teeth, rear_teeth, links))
        except (Inconsistent, OutOfRange):
            continue
    fitting = [one for one in others if one.fits]
    if fitting:
        return min(fitting, key=lambda one: abs(one.axle_mm))
    return min((now, *others), key=lambda one: (one.fits is None, one.short_mm))


def _chain(fitted: Fitted, front: int, rear: int, links: int) -> ChainFit:
    move = axle_move_mm(fitted, front, rear, links)
    room = fitted.back_mm if move > 0.0 else fitted.forward_mm
    fits = fitted.takes(move)
    return ChainFit(links, move, fits, abs(move) - room if fits is False and room is not None else 0.0)


def _pair(front: int, rear: int, fitted: Fitted) -> SprocketPair:
    ratio = final_ratio(front, rear)
    change = 100.0 * (ratio / final_ratio(fitted.front_teeth, fitted.rear_teeth) - 1.0)
    return SprocketPair(front, rear, ratio, change, chain_for(fitted, front, rear))

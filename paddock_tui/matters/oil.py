"""Work on the oil: secured before it leaves, and seen dry hot after the first run."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.order import is_early
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import HOLD, SERIOUS
from paddock_tui.matters.work import in_time, ridden_on, run_since, work_words

OIL = ("oil", "filter", "plug")
"""Work after which oil may come out once it is hot."""

_LISTS = "organisers' inspection lists: drain, filler and filter secured"


def _waiting(kind: str, outing: Outing, tick: str) -> Iterator[Opened]:
    """Open the last work of each of these words that has not its tick."""
    found: dict[str, Opened] = {}
    for number, work in in_time(outing):
        if work.what not in OIL:
            continue
        found.pop(work.what, None)
        if not getattr(work, tick) or is_early(work, outing.session):
            found[work.what] = opened(
                kind,
                outing.session.bike,
                outing,
                ("work", number, tick),
                at=work.at,
                what=work.what,
                subject="oil",
                rides=run_since(outing, work),
            )
    yield from found.values()


def _secured_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _waiting("oil-work-not-secured", outing, "torqued")


def _hot_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _waiting("oil-work-not-checked-hot", outing, "rechecked_hot")


def _again(one: Opened, outing: Outing) -> bool:
    same = outing.session.bike == one.whom
    return same and any(work.what == one.what for work in outing.session.work.values())


def _secured(one: Opened, now: Present) -> Said:
    words = work_words(one, now)
    return Said(
        HOLD,
        f"Ticked at {one.early}, before it was done: {words}."
        if one.early
        else f"Oil level and plug not checked since: {words}.",
        "A plug or filter that comes loose puts the oil on the rear tyre and on the line of those behind.",
        "Level by the manual; drain plug, filler and filter tight and wired where the organiser asks; a "
        "second person looks. Then tick torqued under work done.",
        words,
        (words,),
    )


def _hot(one: Opened, now: Present) -> Said | None:
    if one.rides == 0:
        return None
    words = work_words(one, now)
    return Said(
        SERIOUS,
        f"Not looked at again hot: {words}.",
        "An old gasket left on, a loose plug: the oil comes once it is hot, onto the rear tyre.",
        "Warm the engine up on the stand, let a second person look under it and at plug, filler and filter; "
        "then tick checked again hot under work done.",
        words,
        (words,),
    )


declare(
    MatterKind(
        "oil-work-not-secured",
        "bike",
        HOLD,
        "brakes",
        "level and plug checked, one tick",
        _secured_opens,
        _secured,
        closes=_again,
        at="session:work",
        source=_LISTS,
        todo="check oil level and that plug and filter are tight",
        afterwards=False,
    )
)
declare(
    MatterKind(
        "oil-work-not-checked-hot",
        "bike",
        SERIOUS,
        "brakes",
        "seen dry hot after the first run",
        _hot_opens,
        _hot,
        closes=_again,
        carried=ridden_on,
        guard="before the first run",
        at="session:work",
        source=_LISTS,
        afterwards=False,
    )
)

"""What nothing found rests on: the essentials of a session to come, and which of them are missing."""

from collections.abc import Iterable, Iterator, Mapping

from paddock_tui.facts.core import fact
from paddock_tui.facts.essentials import day, machine, outing  # noqa: F401 - register their essentials
from paddock_tui.facts.essentials.core import ESSENTIALS, Around, Essential, MissingEssential, missing_of
from paddock_tui.facts.past import History, PastSession
from paddock_tui.facts.situation import NotUnderstood
from paddock_tui.facts.unplaced import lacking, without_order
from paddock_tui.limits import Limits
from paddock_tui.records.kinds import Record
from paddock_tui.records.paths import Ref, spell
from paddock_tui.records.session import Session
from paddock_tui.text import printable

__all__ = ["ESSENTIALS", "Essential", "MissingEssential"]

_ORDER = (
    "who-and-what",
    "surface",
    "declared",
    "last-outing",
    "rider-fit",
    "brakes-tried",
    "pads",
    "controls-free",
    "wheels-secured",
    "as-last-ridden",
    "tyre-kinds",
    "tyres-seen",
    "tread",
    "pressures",
    "air-kept",
    "warmers",
    "fuel",
    "aids",
    "dash",
    "signed-on",
    "briefing",
    "inspection",
    "race-paper",
    "passing-rule",
    "pit-limit",
    "noise",
    "road-ready",
)
"""The order in which they are named: what decides most, and what is done first, comes first."""

_RANKED = {name: ESSENTIALS[name] for name in _ORDER}
if set(_RANKED) != set(ESSENTIALS):
    raise NameError(f"essentials without a place in the order: {set(ESSENTIALS) - set(_RANKED)}")
ESSENTIALS.clear()
ESSENTIALS.update(_RANKED)


@fact("what is not known of the essentials")
def missing_essentials(
    to_come: bool,
    session: Session,
    records: Mapping[str, Record],
    refs: Mapping[str, Ref],
    history: History,
    rider_today: tuple[PastSession, ...],
    not_understood: tuple[NotUnderstood, ...],
    unplaced: tuple[PastSession, ...],
    limits: Limits,
) -> tuple[MissingEssential, ...]:
    """Return the essentials of a session to come that are not known, and what could not be understood."""
    around = Around(session, records, refs, history, rider_today, limits)
    unordered = without_order(history, session)
    return (*missing_of(around), *_not_placed(unplaced, unordered), *_not_understood(not_understood))


def _not_placed(
    unplaced: tuple[PastSession, ...], unordered: Iterable[tuple[PastSession, str]]
) -> Iterator[MissingEssential]:
    """What one left open may be open now: it is asked where in the record it belongs."""
    named = [(one, lacking(one.session)) for one in unplaced] + list(unordered)
    for one, key in named:
        ref = Ref("session", one.id)
        label = printable(f"the {key} of session {one.id}: what it left open may be open now")
        yield MissingEssential(f"not-placed {one.id} {key}", label, ref=ref, path=(key,))


def _not_understood(found: tuple[NotUnderstood, ...]) -> Iterator[MissingEssential]:
    """A newer program may have written a danger into what this one does not know."""
    for one in found:
        where = f"{spell(one.path)} in {one.ref.id}" if one.path else str(one.ref)
        yield MissingEssential(
            f"not-understood {one.ref} {spell(one.path)}", printable(where), ref=one.ref, path=one.path
        )

"""The starting pressure of the next session: what the bench works out, with this session's reading learnt."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice import figures
from paddock_tui.advice.about import About, End, PastSession
from paddock_tui.advice.answered import answered
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.words import Move, Refusal
from paddock_tui.advice.pressures import pressures
from paddock_tui.facts.tyre_targets import cold_target_of
from paddock_tui.limits.next_change import NEAR_TARGET, START_STEP
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.differences import NOT_KNOWN, old_to_new
from paddock_tui.records.session_parts import PressureReading
from paddock_tui.rules.core import SetValue

_SLACK_KPA = 1e-6


def learnt_with(about: About) -> About:
    """Return what is looked at with its own session among those that went before, as the next one sees it."""
    name = about.id_of("session") or "this session"
    if about.history.of(name) is not None:
        return about
    own = PastSession(name, about.session, about.id_of("venue"))
    return attrs.evolve(about, history=about.history.and_then(own))


def start_move(case: Case, end: End, wanted: int = 0) -> Move | Refusal:
    """Move the starting pressure of one end to what the bench works out for the hot target.

    `wanted` +1 or -1 allows only that way.
    """
    over = case.over_target_kpa(end)
    if over is None:
        why = case.no_target(end) or "no hot reading"
        return Refusal(f"{end} tyre: {why}: pressure moves only toward the hot target")
    if wanted and abs(over) <= 100.0 * case.limits[NEAR_TARGET]:
        return Refusal(f"the {end} tyre is on its hot target")
    if wanted and (over > 0) == (wanted > 0):
        return Refusal(f"the {end} tyre stands {'over' if over > 0 else 'under'} its hot target already")
    about = learnt_with(case.about)
    answer = answered(about, pressures)[f"{end}_start"]
    if not answer.puts:
        lacks = ", ".join(_lacks(case, end))
        needed = f"enter {lacks}" if lacks else answer.text
        if not lacks and answer.missing:
            needed = "no hot reading on record tells how warm its air gets; read both, cold and hot"
        return Refusal(f"{end} start pressure: {needed}", own=True)
    return _to(case, end, str(answer.puts[0].value), wanted)


def _to(case: Case, end: End, new: str, wanted: int) -> Move | Refusal:
    held = cold_target_of(case.setup, end)
    found = parse(new)
    by = found.to("kPa") - held.to("kPa") if isinstance(found, Quantity) and held is not None else None
    old = figures.pressure(held.to("kPa"), case.about.units) if held is not None else NOT_KNOWN
    if by is not None and abs(by) < 100.0 * case.limits[START_STEP] - _SLACK_KPA:
        return Refusal(f"the {end} start pressure stands where the calculator puts it, {old}")
    if wanted and by is not None and by * wanted < 0:
        return Refusal(f"the calculator puts the {end} start pressure at {new}: the other way")
    key = f"{end}_start"
    words = old_to_new(old, new)
    return Move(f"{end} start pressure {words}", (SetValue(("setup", key), new),), (("setup", key),))


def _lacks(case: Case, end: End) -> Iterator[str]:
    """Name what the session does not say and a start cannot be worked out without."""
    session = case.session
    cold, hot = (session.pressures.get(name, PressureReading()) for name in ("cold", "hot"))
    if session.parked is None:
        yield "when it was parked"
    if hot.at is None:
        yield "when the hot pressures were read"
    if getattr(cold, f"set_to_{end}") is None and getattr(cold, end) is None:
        yield f"the cold pressure of the {end}"
    if cold.temperature is None and not isinstance(session.air, Quantity):
        yield "the temperature of the air, or of the cold reading"

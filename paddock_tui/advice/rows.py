"""Which answer stands beside which row of a set-up or a session."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice.answers import Answer, Calculator
from paddock_tui.advice.fuel import fuel
from paddock_tui.advice.gearing import gearing
from paddock_tui.advice.history import ENDS, About
from paddock_tui.advice.levels import levels
from paddock_tui.advice.pressures import pressures
from paddock_tui.advice.sag import adjuster_of, sag
from paddock_tui.facts.outing import is_ridden
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.electronics import function_of
from paddock_tui.records.fields import value_at
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile
from paddock_tui.records.shapes import Setting
from paddock_tui.rules.core import Put


@attrs.frozen
class Beside:
    """What is said beside one row: a few words, values to take over, and the whole working."""

    short: str
    puts: tuple[Put, ...]
    working: tuple[str, ...]


def beside_setup(about: About) -> dict[Path, Beside]:
    """Give the answers for the rows of the set-up page; a session that was ridden needs no start."""
    record = about.situation.session or about.situation.profile
    if record is None:
        return {}
    found: dict[Path, Beside] = {}
    open_ = about.situation.session is None or not is_ridden(about.situation.session)
    if about.situation.session is not None:
        answers = _by_key(pressures(about), about)
        for end in ENDS:
            start = answers[f"{end}_start"]
            _put(found, record, ("setup", f"{end}_start"), start, needs=True, said=open_)
    for one in levels(about).answers(about.units):
        _put(found, record, ("setup", "controls", one.key), one, said=open_)
    answers = _by_key(gearing(about), about)
    _put(found, record, ("setup", "front_sprocket"), answers["ratio"])
    _put(found, record, ("setup", "rear_sprocket"), answers["limiter"])
    for name in _limiters(about):
        _put(found, record, ("setup", "controls", name), answers["pits"])
    if about.situation.session is not None:
        _put_sag(found, record, about, open_)
    return found


def beside_session(about: About) -> dict[Path, Beside]:
    """Give the answers for the rows of the session page."""
    found: dict[Path, Beside] = {}
    session = about.situation.session
    if session is None:
        return found
    today = session.date == about.situation.now.date()
    answers = _by_key(pressures(about), about)
    for end in ENDS:
        hot, now = ("pressures", "hot", end), answers[f"{end}_now"]
        read = value_at(session, hot) is not None
        _put(found, session, hot, now if read else answers[f"{end}_expected"], said=not read or today)
        set_to = ("pressures", "hot", f"set_to_{end}")
        _put(found, session, set_to, now, said=bool(now.puts) and today)
    answers = _by_key(fuel(about), about)
    to_come = not is_ridden(session)
    row = answers["add"] if to_come and answers["add"].puts else answers["flag"]
    _put(found, session, ("fuel_added",), row if row.known else answers["needed"], needs=to_come)
    answers = _by_key(gearing(about), about)
    if session.top_speed is not None:
        _put(found, session, ("top_speed",), answers["straight"])
    for end in ENDS:
        for load, key in (("alone", "free"), ("rider", "rider")):
            if load in session.sag.get(end, {}):
                _put(found, session, ("sag", end, load, "lifted"), _by_key(sag(about, end), about)[key])
    return found


def _put_sag(found: dict[Path, Beside], record: Session | Profile, about: About, said: bool) -> None:
    for end in ENDS:
        answers = _by_key(sag(about, end), about)
        adjuster = adjuster_of(about, end)
        if adjuster is not None and answers["preload"].known:
            _put(found, record, ("setup", "adjusters", adjuster[0]), answers["preload"], said=said)
        if answers["verdict"].known:
            _put(found, record, ("setup", f"{end}_spring"), answers["verdict"])


def _by_key(calculator: Calculator, about: About) -> dict[str, Answer]:
    return {one.key: one for one in calculator.answers(about.units)}


def _limiters(about: About) -> Iterator[str]:
    bike = about.situation.bike
    for name, control in bike.controls.items() if bike is not None else ():
        if function_of(name, control) == "pit-limiter":
            yield name


def _put(
    found: dict[Path, Beside],
    record: Session | Profile,
    path: Path,
    answer: Answer,
    *,
    needs: bool = False,
    said: bool = True,
) -> None:
    """Put an answer beside a row; what the row holds already is neither offered nor said again.

    `needs` says beside the row what is missing; without `said` the answer is only in its working.
    """
    if not said:
        found[path] = Beside("", (), answer.working)
        return
    puts = tuple(one for one in answer.puts if not _same(value_at(record, one.path), one.value))
    short = answer.short if answer.known else answer.text if needs else ""
    if answer.puts and not puts:
        short = ""
    found[path] = Beside(short, puts, answer.working)


def _same(held: Quantity | Setting | float | None, wanted: object) -> bool:
    if isinstance(held, Quantity):
        other = parse(str(wanted))
        return isinstance(other, Quantity) and held.dimension == other.dimension and held.same(other)
    return held == wanted

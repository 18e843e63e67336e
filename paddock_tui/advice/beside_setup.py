"""Which answer stands beside which row of a set-up or a session."""

from collections.abc import Iterator

import attrs

from paddock_tui.advice.about import ENDS, About
from paddock_tui.advice.air_today import air_on_rows
from paddock_tui.advice.answered import answered
from paddock_tui.advice.brake_pads import pads_answer
from paddock_tui.advice.calculators import Answer
from paddock_tui.advice.fuel import fuel
from paddock_tui.advice.gearing import gearing
from paddock_tui.advice.launch import launch_answers
from paddock_tui.advice.levels import levels
from paddock_tui.advice.more_rows import session_rows, setup_rows
from paddock_tui.advice.pressures import pressures
from paddock_tui.advice.sag import adjuster_of, sag
from paddock_tui.advice.session_laps import lap_words, left_out, needs_words, stint_of, usual_words, working
from paddock_tui.advice.tyre_state import tyre_state_words
from paddock_tui.advice.wet_ratios import wet_to_dry_ratios
from paddock_tui.advice.wheelie_gears import lifting
from paddock_tui.facts.past import gauge_in_use
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.electronics import function_of
from paddock_tui.records.fields import value_at
from paddock_tui.records.paths import Path
from paddock_tui.records.session import Session, is_ridden
from paddock_tui.records.setup import Profile
from paddock_tui.records.shapes import Setting
from paddock_tui.rules.core import SetValue


@attrs.frozen
class BesideRow:
    """What is said beside one row: a few words, values to take over, and the whole working."""

    short: str
    puts: tuple[SetValue, ...]
    working: tuple[str, ...]


def beside_setup(about: About) -> dict[Path, BesideRow]:
    """Return the answers for the rows of the set-up page; a session that was ridden needs no start."""
    record = about.situation.session or about.situation.profile
    if record is None:
        return {}
    found: dict[Path, BesideRow] = {}
    open_ = about.situation.session is None or not is_ridden(about.situation.session)
    if about.situation.session is not None:
        answers = answered(about, pressures)
        for end in ENDS:
            start = answers[f"{end}_start"]
            _put(found, record, ("setup", f"{end}_start"), start, needs=True, said=open_)
    for one in answered(about, levels).values():
        _put(found, record, ("setup", "controls", one.key), one, said=open_)
    for one in launch_answers(about):
        _put(found, record, ("setup", "controls", one.key), one, said=open_)
    answers = answered(about, gearing)
    _put(found, record, ("setup", "front_sprocket"), answers["ratio"])
    _put(found, record, ("setup", "rear_sprocket"), answers["limiter"])
    for name in _of_function(about, "pit-limiter"):
        _put(found, record, ("setup", "controls", name), answers["pits"])
    for name in _of_function(about, "wheelie"):
        _add(found, ("setup", "controls", name), answered(about, lifting)["gears"])
    _put_surface(found, about, open_)
    _put_air(found, about)
    if about.situation.session is not None:
        _put_sag(found, record, about, open_)
    for path, answer in setup_rows(about):
        _add(found, path, answer)
    return found


def beside_session(about: About) -> dict[Path, BesideRow]:
    """Return the answers for the rows of the session page."""
    found: dict[Path, BesideRow] = {}
    session = about.situation.session
    if session is None:
        return found
    today = session.date == about.situation.now.date()
    _put_surface(found, about, not is_ridden(session))
    _put_air(found, about)
    answers = answered(about, pressures)
    for end in ENDS:
        hot, now = ("pressures", "hot", end), answers[f"{end}_now"]
        read = value_at(session, hot) is not None
        _put(found, session, hot, now if read else answers[f"{end}_expected"], said=not read or today)
        set_to = ("pressures", "hot", f"set_to_{end}")
        _put(found, session, set_to, now, said=bool(now.puts) and today)
    answers = answered(about, fuel)
    to_come = not is_ridden(session)
    row = answers["add"] if to_come and answers["add"].puts else answers["flag"]
    _put(found, session, ("fuel_added",), row if row.known else answers["needed"], needs=to_come)
    found.update(_of_laps(session))
    for end in ENDS:
        if value_at(session, (f"{end}_pads",)) is not None:
            _put(found, session, (f"{end}_pads",), pads_answer(about, end))
    answers = answered(about, gearing)
    if session.top_speed is not None:
        _put(found, session, ("top_speed",), answers["straight"])
    for end in ENDS:
        for load, key in (("alone", "free"), ("rider", "rider")):
            if load in session.sag.get(end, {}):
                _put(found, session, ("sag", end, load, "lifted"), answered(about, sag, end)[key])
    found.update(_of_gauge(about))
    _put_tyre_state(found, about, session)
    for path, answer in session_rows(about):
        _add(found, path, answer)
    return found


def _put_tyre_state(found: dict[Path, BesideRow], about: About, session: Session) -> None:
    """Say beside a row of a tyre what it was last, until it is read or looked at again."""
    for path, words, whole in tyre_state_words(about):
        before = found.get(path, BesideRow("", (), ()))
        said = before.short or (words if value_at(session, path) is None else "")
        found[path] = BesideRow(said, before.puts, (*before.working, whole))


def _of_gauge(about: About) -> Iterator[tuple[Path, BesideRow]]:
    """Say beside a cold reading without a gauge which one was last named, and where: it is taken for that."""
    cold = about.session.pressures.get("cold")
    in_use = gauge_in_use(about.history)
    if cold is None or cold.gauge is not None or in_use is None:
        return
    name, since = in_use
    at: Path = ("pressures", "cold", "gauge")
    words = f"taken for {name}"
    yield at, BesideRow(words, (SetValue(at, name),), (f"{words}, named in session {since.id}",))


def _of_laps(session: Session) -> Iterator[tuple[Path, BesideRow]]:
    """Say beside the best lap what the laps were like, beside those left out why, and how many it takes."""
    found = stint_of(session)
    if not (found.clean or found.aside):
        return
    lines = tuple(working(found))
    best = "" if found.best_s is None or session.best_lap is not None else f"best {lap_words(found.best_s)}, "
    yield ("best_lap",), BesideRow(f"{best}{usual_words(found)}", (), lines)
    for number, why in left_out(found).items():
        yield ("laps", number), BesideRow(f"left out: {why}", (), lines)
    after = str(max(map(int, session.laps), default=0) + 1)
    yield ("laps", after), BesideRow(needs_words(found), (), lines)


def _put_sag(found: dict[Path, BesideRow], record: Session | Profile, about: About, said: bool) -> None:
    for end in ENDS:
        answers = answered(about, sag, end)
        adjuster = adjuster_of(about, end)
        if adjuster is not None and answers["preload"].known:
            _put(found, record, ("setup", "adjusters", adjuster[0]), answers["preload"], said=said)
        if answers["verdict"].known:
            _put(found, record, ("setup", f"{end}_spring"), answers["verdict"])


def _put_surface(found: dict[Path, BesideRow], about: About, said: bool) -> None:
    """Put the ratios of wet to dry beside the surface, unless it is dry."""
    session = about.situation.session
    if session is not None and session.surface not in (None, "dry"):
        _put(found, session, ("surface",), answered(about, wet_to_dry_ratios)["words"], said=said)


def _put_air(found: dict[Path, BesideRow], about: About) -> None:
    """Put what the air does beside its rows; what is only for the ride ahead is said before it only."""
    session = about.situation.session
    if session is None:
        return
    for row in air_on_rows(about):
        first, *others = row.answers
        _put(found, session, row.path, first, said=not row.ahead or not is_ridden(session))
        for one in others:
            _add(found, row.path, attrs.evolve(one, short=""))


def _of_function(about: About, function: str) -> Iterator[str]:
    bike = about.situation.bike
    for name, control in bike.controls.items() if bike is not None else ():
        if function_of(name, control) == function:
            yield name


def _add(found: dict[Path, BesideRow], path: Path, answer: Answer) -> None:
    """Say a further answer beside a row where nothing stands yet, and behind it in any case.

    A row has room for one; nothing is said of what is not known.
    """
    if not answer.known:
        return
    before = found.get(path, BesideRow("", (), ()))
    found[path] = BesideRow(before.short or answer.short, before.puts, (*before.working, *answer.working))


def _put(
    found: dict[Path, BesideRow],
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
        found[path] = BesideRow("", (), answer.working)
        return
    puts = tuple(one for one in answer.puts if not _same(value_at(record, one.path), one.value))
    short = answer.short if answer.known else answer.text if needs else ""
    if answer.puts and not puts:
        short = ""
    found[path] = BesideRow(short, puts, answer.working)


def _same(held: Quantity | Setting | float | None, wanted: object) -> bool:
    if isinstance(held, Quantity):
        other = parse(str(wanted))
        return isinstance(other, Quantity) and held.dimension == other.dimension and held.same(other)
    return held == wanted

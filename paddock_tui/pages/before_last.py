"""What the page before a day says of the last time there, and how its rows are made."""

from collections.abc import Iterator

from paddock_tui.advice.about import About
from paddock_tui.advice.ridden_so_far import count_words
from paddock_tui.advice.session_laps import lap_words, stint_of
from paddock_tui.desk.sessions.last_time import last_time
from paddock_tui.facts.fuel_consumption import TRACK, fuel_learnt
from paddock_tui.facts.past import PastSession
from paddock_tui.pages.dates import short_date
from paddock_tui.pages.rows import Row
from paddock_tui.records.differences import differences
from paddock_tui.records.paths import Ref
from paddock_tui.records.setup import SetUp
from paddock_tui.text import printable

_NAMED = 3
"""So many values that are otherwise now are named, the others counted."""


def text_row(text: str, key: str, label: str = "", severity: str = "", aside: str = "") -> Row:
    return Row(label, printable(text), aside=printable(aside), kind="text", key=key, severity=severity)


def not_known(label: str, what: str, key: str) -> Row:
    return Row(label, "not known", aside=what, kind="text", key=key, known=False)


def last_time_rows(about: About, name: str) -> Iterator[Row]:
    found = last_time(about.situation)
    if found is None:
        yield text_row("this bike was not here on an earlier day", f"{name} last")
        return
    past = found.past
    then = past.session
    when = f"{short_date(then.date)}, session {then.number}" if then.date is not None else past.id
    ref = Ref("session", past.id)
    yield Row("session", printable(when), kind="link", opens=ref, ref=ref, key=f"{name} last")
    conditions = (then.surface, shown(then.air, "air"), shown(then.track, "track"))
    yield _or_not(name, "conditions", ", ".join(filter(None, conditions)))
    yield _set_up(about, past, name)
    laps = stint_of(then) if past.may_time else None
    best = laps.best_s if laps is not None else None
    usual = laps.usual_s if laps is not None else None
    if not past.may_time:
        yield text_row("not timed: that day did not allow it", f"{name} laps", "laps")
    else:
        said = [f"best {lap_words(best)}"] if best is not None else []
        said += [f"median {lap_words(usual)}"] if usual is not None else []
        yield _or_not(name, "laps", ", ".join(said))
    yield _or_not(name, "gearing", sprockets_of(then.setup))
    yield _or_not(name, "tyres", then.tyres or "")
    yield _fuel(about, past, name)
    yield from _notes(past, name)


def _set_up(about: About, past: PastSession, name: str) -> Row:
    """Say which set-up was taken there, and what of it the first session to come has otherwise."""
    then = past.session
    took = f"profile {then.taken_from}" if then.taken_from else ""
    mode = f"riding mode {then.setup.mode}" if then.setup.mode else ""
    damping = f"damping {then.setup.damping}" if then.setup.damping else ""
    other = differences(then.setup, about.setup)
    said = [one.label for one in other[:_NAMED]]
    more = f" and {len(other) - _NAMED} more" if len(other) > _NAMED else ""
    aside = (
        f"the first session has otherwise: {', '.join(said)}{more}"
        if other
        else "the first session has the same"
    )
    text = ", ".join(filter(None, (took, mode, damping))) or f"as written down in session {then.number}"
    key = f"{name} set-up"
    return Row(
        "set-up", printable(text), aside=printable(aside), kind="link", opens=Ref("session", past.id), key=key
    )


def _fuel(about: About, past: PastSession, name: str) -> Row:
    """Say what was filled on that day, and what its kilometres took by the rate learnt on the track."""
    then = [
        one for one in about.history.past if one.date == past.date and one.venue == past.venue and one.ridden
    ]
    added = [one.session.fuel_added.to("l") for one in then if one.session.fuel_added is not None]
    km = [one.km for one in then]
    learnt = fuel_learnt(about.history, TRACK, past.session.setup.mode)
    said = []
    known = [one for one in km if one is not None]
    if learnt is not None and known and len(known) == len(km):
        used = learnt.learnt.rate_l_per_100km * sum(known) / 100.0
        said.append(f"about {used:.1f} L used on {sum(known):.0f} km, by the rate {learnt.where}")
    if added:
        said.append(f"{sum(added):.1f} L filled in {count_words(len(added), 'filling')}")
    said += [count_words(len(then))] if said else []
    return _or_not(name, "fuel", "; ".join(said))


def _notes(past: PastSession, name: str) -> Iterator[Row]:
    line = [past.entry.said] if past.entry.said else []
    own = [one.text for _, one in sorted(past.session.notes.items()) if one.text]
    of_day = [past.day.note] if past.day is not None and past.day.note else []
    for number, note in enumerate([*line, *own, *of_day]):
        yield text_row(note, f"{name} note {number}", "note")


def shown(value: object, what: str) -> str:
    return f"{what} {value}" if value is not None else ""


def _or_not(name: str, label: str, text: str) -> Row:
    return text_row(text, f"{name} {label}", label) if text else not_known(label, "", f"{name} {label}")


def sprockets_of(setup: SetUp) -> str:
    front, rear = setup.front_sprocket, setup.rear_sprocket
    return f"{front}/{rear}" if front is not None and rear is not None else ""

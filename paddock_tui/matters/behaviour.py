"""What the bike did: shake, weave, a wheel that locks or tucks. Sessions without it close it, not hope."""

from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.matters.behaviour_rules import debriefed
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.incidents import symptoms
from paddock_tui.matters.order import answered_at, is_early, is_later, ridden_at
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, HOLD, NOTE, SERIOUS, Severity
from paddock_tui.records.differences import SetUpDifference, differences, same_value
from paddock_tui.records.session_parts import Symptom
from paddock_tui.records.setup import SetUp
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.shown_words import is_named, shown

FORGOTTEN_DAYS = 5
"""Riding days without it after which a behaviour is history."""

WITHOUT_ALONE = 3
"""Debriefed sessions without it that close a behaviour against which nothing was changed."""

_SHAKES = ("bars wobble", "weaves")
_SHAKE_NAMED = ("landing a wheelie", "crest", "kerb", "gust")
_LOCKS = ("front locks",)
_SLIPS = ("tucks", "rear locks")
_QUICK = ("advanced", "race")

_SHORT = {
    "bars wobble": "The bars shook",
    "weaves": "The bike weaved",
    "front locks": "The front wheel locked",
    "rear locks": "The rear wheel locked",
    "tucks": "The front tucked",
}


def _opens(kind: str, what: tuple[str, ...], outing: Outing, seen: Seen) -> Iterator[Opened]:
    """Open what was felt, each of its words once a session, at its worst; not answered counts as grade 2.

    What was changed since the last ride is the step that it may have come with, where it is new.
    """
    for word in what:
        felt = list(symptoms(outing, word))
        if felt:
            before = seen.bike(outing.bike)
            changed = () if word in before.felt else _changed(before.setup, outing.session.setup)
            number, worst = max(felt, key=lambda one: one[1].grade or 2)
            named = all(one.cause in (*_SHAKE_NAMED, "first laps", "cold tyre") for _, one in felt)
            done = all(_is_answered(one, outing) for _, one in felt)
            told = [answered_at(one, outing.session) for _, one in felt] if done else []
            yield opened(
                kind,
                outing.session.bike,
                outing,
                ("symptoms", number, "done"),
                what=word,
                subject=word.replace(" ", "-"),
                grade=0 if named else worst.grade or 2,
                answered=done,
                answers=tuple(place for place in told if place is not None),
                last=outing.session.date,
                step=tuple((difference.kind, difference.key, difference.old) for difference in changed),
            )


def _is_answered(one: Symptom, outing: Outing) -> bool:
    written = (one.found or "").strip() and (one.done or "").strip()
    return bool(written) and not is_early(one, outing.session)


def _changed(before: SetUp | None, after: SetUp) -> tuple[SetUpDifference, ...]:
    return tuple(one for one in differences(before, after) if one.known) if before is not None else ()


def _countered(one: Opened, outing: Outing) -> bool:
    """Return whether the step that brought it is taken back whole, or something was changed against it."""
    holder = outing.session.setup
    back = bool(one.step) and all(same_value(_value(holder, kind, key), old) for kind, key, old in one.step)
    # More damper alone answers no shake: it hides what shakes.
    reasons = (
        because.why or ""
        for table in outing.session.because.values()
        for key, because in table.items()
        if "damper" not in key.split("-")
    )
    return back or any(is_named(one.what, reason) for reason in reasons)


def _value(setup: SetUp, kind: str, key: str) -> object:
    table = getattr(setup, kind, None)
    return table.get(key) if isinstance(table, Mapping) else getattr(setup, key, None)


def _carried(one: Opened, outing: Outing) -> Opened:
    """Count what speaks for it being gone: debriefed sessions of the same surface, and riding days."""
    if outing.session.bike != one.whom:
        return one
    if not one.answered and _countered(one, outing):
        one = attrs.evolve(one, answered=True, without=0, answers=())
    if not outing.ridden:
        return one
    if any(symptoms(outing, one.what)):
        return attrs.evolve(
            one, without=0, since_answers=0, days=0, last=outing.session.date, count=one.count + 1
        )
    another = outing.session.date is not None and outing.session.date != one.last
    without = debriefed(outing) and outing.column == one.column
    # What was ridden before the answer was given speaks for no cure.
    after = all(is_later(ridden_at(outing.session), place) for place in one.answers)
    return attrs.evolve(
        one,
        without=one.without + without,
        since_answers=one.since_answers + (without and after),
        days=one.days + another,
        last=outing.session.date if another else one.last,
    )


def _closes(one: Opened, outing: Outing) -> bool:
    after = _carried(one, outing)
    cured = after.answered and after.since_answers >= 1
    return cured or after.without >= WITHOUT_ALONE or after.days >= FORGOTTEN_DAYS


def _shake(one: Opened, now: Present) -> Said | None:
    if one.grade == 0 or (now.session.rider is not None and one.rider != now.session.rider):
        severity: Severity = NOTE
    elif one.grade == 3:
        severity = SERIOUS if one.answered else HOLD
    elif one.grade == 2:
        severity = SERIOUS
    else:
        severity = NOTE if now.group in _QUICK else CAUTION
    return Said(
        severity,
        f"{_SHORT[one.what]}, {now.when(one)}, {_how_open(one)}.",
        "Shake and weave come from bearings, tyres, wheels and load before any setting, and grow with speed.",
        "Tick head bearings, front tyre, axle and pinch bolts, damper mount: enter what was found, done and "
        "by whom. Take back the step that brought it. More damper alone is no answer.",
        _facts(one),
    )


def _lock(one: Opened, now: Present) -> Said | None:
    return Said(
        NOTE if one.grade == 0 else SERIOUS,
        f"{_SHORT[one.what]}, {now.when(one)}, {_how_open(one)}.",
        "A front wheel that stops turning has the bike down within a bike's length.",
        "Help back first: front ABS, less engine braking; look at tyre, pressure and pads, brake earlier and "
        "softer. Enter what was found and changed against it.",
        _facts(one),
    )


def _slip(one: Opened, now: Present) -> Said | None:
    return Said(
        _slip_severity(one, now),
        f"{_SHORT[one.what]}, {now.when(one)}, {_how_open(one)}.",
        "It came without a warning once; on the same tyre, surface and setting it comes again.",
        "Take back the step that brought it; look at tyre and pressure. Enter what was found and changed "
        "against it.",
        _facts(one),
    )


def _slip_severity(one: Opened, now: Present) -> Severity:
    if one.grade == 0:
        return NOTE
    # Twice, shut off for it, or new since a step: serious for anybody.
    if one.grade >= 2 or one.count > 1 or one.step:
        return SERIOUS
    base = NOTE if now.group in _QUICK else CAUTION
    return Severity(base + (now.column == "wet"))


def _how_open(one: Opened) -> str:
    """Say whether it was answered: then a ride without it is what is missing."""
    return "answered, open until ridden without it" if one.answered else "and is not answered"


def _facts(one: Opened) -> str:
    grade = {0: "cause named", 1: "noticed", 2: "shut off for it", 3: "nearly down"}[one.grade]
    step = f"; new since {', '.join(label_of(key) for _, key, _ in one.step[:3])}" if one.step else ""
    return f"{shown(one.what)} {one.stamp}; {grade}; {'answered' if one.answered else 'not answered'}{step}"


def _shake_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _opens("bars-shake-or-weave", _SHAKES, outing, seen)


def _lock_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _opens("front-wheel-locked", _LOCKS, outing, seen)


def _slip_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _opens("tuck-or-rear-lock", _SLIPS, outing, seen)


_CLOSED_BY = (
    "a debriefed session without it on the same surface after the step that brought it was taken back or "
    "something was changed against it, or three such sessions; five riding days without it make it history"
)

for _id, _least, _what_opens, _words, _guard in (
    (
        "bars-shake-or-weave",
        CAUTION,
        _shake_opens,
        _shake,
        "landing a wheelie, crest, kerb, gust named: a note; to another rider of the bike a note",
    ),
    ("front-wheel-locked", SERIOUS, _lock_opens, _lock, "first laps named: a note"),
    ("tuck-or-rear-lock", NOTE, _slip_opens, _slip, "first laps named: a note"),
):
    declare(
        MatterKind(
            _id,
            "bike",
            _least,
            "suspension",
            _CLOSED_BY,
            _what_opens,
            _words,
            closes=_closes,
            carried=_carried,
            guard=_guard,
            at="session:symptoms",
            afterwards=False,
        )
    )

"""What nothing found rests on: no answer taken away ever makes it look better, and seven are enough."""

import datetime as dt
from collections.abc import Iterator
from typing import Any

from paddock_tui.facts.essentials import ESSENTIALS
from paddock_tui.facts.essentials.paths import rests_on
from paddock_tui.records.fields import specs
from paddock_tui.records.paths import Path, spell
from paddock_tui.records.session import Session
from paddock_tui.rules import HOLD, Review
from tests.every import every
from tests.examples import one_in
from tests.rules.case import Raises
from tests.rules.cases import CASES
from tests.rules.cases.aids import NO_AIDS
from tests.rules.situations import (
    SESSION,
    WHOLE,
    Change,
    Data,
    changed,
    files,
    look,
    put,
    went_before,
    without,
)
from tests.rules.stories.story import QUIET

NEVER_ESSENTIAL = (
    # The records that they name are there all the same.
    "session:day",
    "session:tyres",
    "session:warmers",
    "session:number",
    "session:start",
    "session:track",
    "session:setup.adjusters",
    "session:setup.damping",
    "bike:name",
    "bike:suspension",
    "bike:adjusters",
    "bike:damping",
    "bike:controls.abs.effects",
    "bike:controls.pit-limiter.off",
    "bike:controls.pit-limiter.outside_modes",
    "bike:modes.open.use",
    "bike:modes.showers",
    "bike:controls.traction.off",
    "bike:controls.wheelie.off",
    "bike:controls.abs.off",
    "rider:name",
    "rider:initials",
    "day:date",
    "day:limits.noise",
    "venue:name",
)
"""What is judged where it is known, and is no reason to wait: names, suspension, track temperature, plans."""


def leaves(data: Data, at: Path = ()) -> Iterator[Path]:
    """List where the values of a table stand."""
    for key, value in data.items():
        if isinstance(value, dict):
            yield from leaves(value, (*at, key))
        else:
            yield (*at, key)


ALL = [(role, path) for role, data in WHOLE.items() for path in leaves(data)]
OWED = [(role, path) for role, path in ALL if not f"{role}:{'.'.join(path)}".startswith(NEVER_ESSENTIAL)]


@every(("role", "path"), OWED)
def test_without_one_answer_it_is_never_no_findings(role: str, path: Path) -> None:
    found = look(put(role, ".".join(path), None))
    assert found.verdict != "NO FINDINGS", f"{role}:{spell(path)}"


def test_what_is_never_essential_keeps_nothing_waiting() -> None:
    for role, path in set(ALL) - set(OWED):
        if (role, path[:1]) in (("session", ("date",)), ("day", ("date",))):
            continue
        found = look(put(role, ".".join(path), None))
        assert not [one for one in found.missing if one.id in ESSENTIALS], (role, path)


# Taking away ---------------------------------------------------------------------------------------------

FIRST = [(rule, cases.raising[0]) for rule, cases in CASES.items()]


def worst_by_subject(found: Review) -> dict[tuple[str, str], int]:
    return {(one.rule, one.subject): int(one.severity) for one in found.findings if one.about == "danger"}


def lowered(held: dict[tuple[str, str], int], after: Review) -> set[tuple[str, str]]:
    """List what was held against going out and is found less bad now."""
    now = worst_by_subject(after)
    return {key for key in held.keys() & now.keys() if now[key] < held[key]}


SHARE = one_in(120)
"""Of how many values each rule takes one away, so that all of them are taken away somewhere."""


@every(("rule", "case"), FIRST, ids=lambda rule: str(rule))
def test_no_value_taken_away_lowers_what_is_found_or_ends_in_no_findings(rule: str, case: Raises) -> None:
    before = look(*case.changes, **case.more)
    made = files(*case.changes)
    held = worst_by_subject(before)
    told = [(role, path) for role, path, _ in case.changes]
    owed = [(role, path) for role, data in made.items() for path in leaves(data) if rests_on(role, path)]
    for role, path in owed[list(CASES).index(rule) % SHARE :: SHARE]:
        after = look(*case.changes, put(role, ".".join(path), None), **case.more)
        assert not lowered(held, after), (rule, role, path)
        # Who takes out what the finding itself stands on does so knowingly.
        its_own = any(role == one and path[: len(at)] == at for one, at in told)
        if before.verdict != "NO FINDINGS" and not its_own:
            assert after.verdict != "NO FINDINGS", (rule, role, path)


# Copying -------------------------------------------------------------------------------------------------


AS_BEFORE = ("surface", "track", "warmers", "checks", "pressures", "incidents")
"""What is the same around the copy."""


def copy_of(data: Data) -> Data:
    """Copy what is carried into the next session: the set-up and who rides what."""
    carried = {key for key, (_, spec) in specs(Session).items() if spec.carry}
    return {key: value for key, value in data.items() if key in carried}


@every(("rule", "case"), FIRST, ids=lambda rule: str(rule))
def test_copying_a_set_up_never_loses_a_danger(rule: str, case: Raises) -> None:
    before = look(*case.changes, **{**case.more, "going_out": True})
    of_set_up = {
        (one.rule, one.subject): int(one.severity)
        for one in before.findings
        if one.about == "danger" and one.where is not None and one.where.path[:1] == ("setup",)
    }
    if not of_set_up:
        return
    data = files(*case.changes)["session"]
    kept = {key: data[key] for key in AS_BEFORE if key in data}
    whole: Data = {**copy_of(data), **kept, "date": data.get("date"), "number": 4}
    copied = {key: value for key, value in whole.items() if value is not None}
    after = worst_by_subject(look(*case.changes, ("session", (), copied), **{**case.more, "going_out": True}))
    lost = {key for key, worst in of_set_up.items() if after.get(key, -1) < worst}
    assert not lost, (rule, lost)


# Seven answers -------------------------------------------------------------------------------------------

MORNING: Data = {
    name: {"status": "ok"}
    for name in ("walked-round", "controls-free", "wheels-secured", "pads", "rider-fit")
}
FIRST_OUTING: Data = {**QUIET, "checks": MORNING, "happened": None}
ANSWERS: tuple[tuple[str, Any], ...] = (
    ("surface", "dry"),
    ("fatigue", 2),
    ("checks.walked-round", {"status": "ok"}),
    ("pressures.cold", {"front": "2.10 bar", "rear": "1.90 bar"}),
    ("checks.fuel-enough", {"status": "ok"}),
    ("dash.read", dt.time(10, 36)),
)
"""The answers in the session to come; the seventh says in the last outing that nothing happened."""


ASKED_ANEW = ("surface", "checks", "pressures", "dash", "filled_to_brim")


def second_outing(answers: int, *, answered: bool = True) -> Review:
    """Judge the second outing of a day after so many answers, and that the last one was answered."""
    bare = {key: value for key, value in SESSION.items() if key not in ASKED_ANEW}
    changes = (("session", (), bare), *(put("session", path, value) for path, value in ANSWERS[:answers]))
    last = {**FIRST_OUTING, "happened": "nothing" if answered else None}
    return look(*changes, history=went_before(last))


def test_from_the_second_outing_of_a_day_seven_answers_are_enough() -> None:
    assert len(ANSWERS) + 1 == 7
    for count in range(len(ANSWERS)):
        assert second_outing(count).verdict != "NO FINDINGS"
    assert second_outing(len(ANSWERS), answered=False).verdict == "NOT YET"
    done = second_outing(len(ANSWERS))
    assert (done.verdict, done.missing) == ("NO FINDINGS", ())


def test_a_ridden_session_is_asked_for_nothing() -> None:
    found = look(without("session", "checks"), put("session", "parked", dt.time(11, 0)))
    assert found.missing == ()


def test_a_bike_without_electronics_owes_no_dash() -> None:
    found = look(*NO_AIDS, without("session", "dash"))
    assert (found.verdict, found.missing) == ("NO FINDINGS", ())


def test_a_to_do_of_hold_grade_keeps_it_waiting_without_a_start_and_is_a_hold_when_due() -> None:
    changes: tuple[Change, ...] = (put("session", "work.1", {"what": "wheel out"}),)
    waiting = look(*changes, without("session", "start"))
    assert (waiting.verdict, [one.id for one in waiting.missing]) == ("NOT YET", ["wheel-work-not-checked"])
    due = look(*changes, now=dt.datetime(2026, 5, 16, 10, 30))
    assert due.verdict == "HOLD"
    assert [one.severity for one in due.findings if one.rule == "wheel-work-not-checked"] == [HOLD]


def test_the_whole_situation_is_not_changed_by_any_of_this() -> None:
    assert changed(WHOLE) == dict(WHOLE)

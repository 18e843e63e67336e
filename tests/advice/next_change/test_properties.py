"""What holds of any next change: range, closed adjusters, help in danger, what helped, the order of files."""

import datetime as dt
import random

import attrs
from hypothesis import given
from hypothesis import strategies as st

from paddock_tui.advice.about import ENDS
from paddock_tui.advice.next_change import next_change
from paddock_tui.facts.past import History
from paddock_tui.quantities import Quantity
from paddock_tui.records.differences import differences
from paddock_tui.records.fields import value_at
from paddock_tui.records.paths import Path
from paddock_tui.records.session_parts import ANSWERS, SYMPTOMS
from paddock_tui.rules.core import SetValue
from tests.advice.next_change.cases import BEFORE, SETUP, about, advised, felt, hot, often, sag
from tests.advice.next_change.offers import broken, offered
from tests.advice.next_change.test_situations import answers, looked_at
from tests.advice.next_change.told import SITUATIONS
from tests.advice.next_change.told.dangers import DANGERS
from tests.advice.next_change.told.given import (
    AUTOMATIC,
    FROM,
    PARKED,
    accepted,
    failing,
    last,
    setup,
    there_and_back,
    timetable,
    turned,
)
from tests.every import every
from tests.examples import examples
from tests.rules.situations import Change, Data, put, went_before

adjusters = st.fixed_dictionaries({name: st.integers(0, 24) for name in SETUP["adjusters"]})
levels = st.fixed_dictionaries(
    {"traction": st.integers(0, 10), "front-abs": st.integers(1, 5), "engine-braking": st.integers(1, 5)}
)
heights = st.tuples(st.integers(0, 9), st.integers(0, 9))
offsets = st.fixed_dictionaries({"front": st.integers(-4, 4), "drive": st.integers(-4, 4)})
symptoms = st.lists(
    st.tuples(st.sampled_from(SYMPTOMS), st.sampled_from(("", *ANSWERS)), st.sampled_from(["front", "rear"])),
    min_size=1,
    max_size=3,
)
chances = st.sets(st.sampled_from(["automatic", "fixed", "stepped", "accepted", "open danger", "unfelt"]))


def written(found: list[tuple[str, str, str]]) -> Data:
    """Write symptoms as a session's file does."""
    tables: Data = {}
    for place, (what, answer, end) in enumerate(found, 1):
        tables[str(place)] = {"what": what, "end": end, **({"answer": answer} if answer else {})}
    return tables


@st.composite
def outings(draw: st.DrawFn) -> tuple[tuple[Change, ...], History | None]:
    """Draw a session that was ridden, and the one before it."""
    now, then = (
        {
            **SETUP,
            "adjusters": draw(adjusters),
            "controls": {**SETUP["controls"], **draw(levels)},
            **dict(zip(("fork_height", "rear_height"), (f"{mm} mm" for mm in draw(heights)), strict=True)),
        }
        for _ in range(2)
    )
    held = draw(chances)
    felt_now = draw(symptoms) + ([("no change felt", "", "front")] if "unfelt" in held else [])
    changes: list[Change] = [put("session", "setup", now), put("session", "symptoms", written(felt_now))]
    changes += [
        sag(end, draw(st.integers(10, 60)), preload=now["adjusters"][f"{end}-preload"]) for end in ENDS
    ]
    if "automatic" in held:
        changes += [*AUTOMATIC, put("session", "setup.offsets", draw(offsets))]
    if "fixed" in held:
        changes.append(put("bike", "modes.open.fixes", {"traction": 5, "front-abs": 3}))
    if "accepted" in held:
        changes.append(
            accepted(draw(st.sampled_from(["traction", "front-abs", "engine-braking", "wheelie"])))
        )
    if "stepped" in held:
        changes.append(FROM)
    before: Data = {"setup": then, "copied_from": "before-2"}
    if "open danger" in held or "unfelt" in held:
        what = "weaves" if "open danger" in held else "no change felt"
        before |= {"did": "noted", "symptoms.1": {"what": what, "grade": 3}}
    return tuple(changes), went_before(BEFORE, BEFORE, {**BEFORE, **before})


@examples(60)
@given(outings())
def test_nothing_offered_is_out_of_range_closed_or_less_help_in_danger(
    drawn: tuple[tuple[Change, ...], History | None],
) -> None:
    changes, history = drawn
    changed = about(*changes, history=history)
    assert broken(changed, next_change(changed)) == []


def test_no_situation_is_answered_out_of_range_closed_or_with_less_help_in_danger() -> None:
    wrong = {
        one.name: found for one in SITUATIONS if (found := broken(looked_at()[one.name], answers()[one.name]))
    }
    assert wrong == {}


def test_what_helped_here_is_not_taken_back() -> None:
    harsh = felt("harsh on single bumps")
    plain = advised(turned(front_compression=8), harsh)
    assert offered(plain)[0] == (("setup", "adjusters", "front-compression"), 10)

    found = advised(turned(front_compression=8), harsh, history=there_and_back(2.2))
    assert (("setup", "adjusters", "front-compression"), 10) not in offered(found)
    assert any("tried that way here before" in one for one in found.proposal.passed_over)

    said = {"because": {"adjusters": {"front-compression": {"verdict": "better"}}}}
    called = last(setup=setup(front_compression=8), copied_from="before-2", **said)
    found = advised(turned(front_compression=8), harsh, history=called)
    assert (("setup", "adjusters", "front-compression"), 10) not in offered(found)
    assert any("it would take back what helped here" in one for one in found.proposal.passed_over)


@every(
    ("what", "answer", "cause", "kind", "says"),
    [
        ("harsh on single bumps", "", "undo", "ASK", "it helped in session before-"),
        ("harsh on single bumps", "yes", "undo", "CHANGE", "new since this step"),
        ("bars wobble", "", "danger", "CHANGE", "but a danger came with it"),
    ],
)
def test_going_back_from_a_help_is_asked_and_in_danger_done_and_said(
    what: str, answer: str, cause: str, kind: str, says: str
) -> None:
    history = there_and_back(2.2)
    *_, third, _ = history.past
    from_third = put("session", "copied_from", third.id)
    history = attrs.evolve(history, past=history.past[:3])
    found = advised(from_third, turned(front_compression=8), felt(what, answer), history=history)

    assert (found.cause, found.proposal.kind.name) == (cause, kind)
    assert says in found.proposal.why


def helped_to(step: SetValue, named: tuple[str, str], now: object, history: History) -> History:
    """Put two sessions before all others: from what a step sets to what stands now; it was called better."""
    kind, key = named
    stands = str(now) if isinstance(now, Quantity) else now
    old = {**BEFORE, "setup": set_in(SETUP, step.path[1:], step.value)}
    new = {**BEFORE, "setup": set_in(SETUP, step.path[1:], stands), "copied_from": "helps-1"}
    first, second = went_before(old, {**new, "because": {kind: {key: {"verdict": "better"}}}}).past
    helps = attrs.evolve(first, id="helps-1"), attrs.evolve(second, id="helps-2")
    return attrs.evolve(history, past=(*helps, *history.past))


def set_in(table: Data, path: Path, value: object) -> Data:
    """Give a table with one value of it changed."""
    if len(path) == 1:
        return {**table, path[0]: value}
    return {**table, path[0]: set_in(table.get(path[0], {}), path[1:], value)}


def test_nothing_that_helped_here_is_taken_back_unless_asked_or_for_a_danger_and_said() -> None:
    """Whatever a situation proposes, it is another answer where the way from there to here helped before.

    Starting pressures follow the conditions: they are no part of it.
    """
    tried = 0
    for one in SITUATIONS:
        move = answers()[one.name].proposal.move if one.kind == "CHANGE" else None
        for step, named in zip(move.puts, move.about, strict=True) if move is not None else ():
            if step.path[1].endswith("_start"):
                continue
            tried += 1
            now = value_at(looked_at()[one.name].session, step.path)
            helps = helped_to(step, named, now, one.history or often())
            found = next_change(attrs.evolve(one, history=helps).about())
            if (step.path, step.value) in offered(found):
                end = {"danger": "but a danger came with it", "accepted": "but the risk came with it"}
                said = end.get(found.cause, "and you take it back")
                assert (
                    "it helped in session " in found.proposal.why or "helped here (" in found.proposal.why
                ), one.name
                assert said in found.proposal.why, one.name
    assert tried > 30


def test_the_order_of_files_and_of_what_stands_in_them_does_not_matter() -> None:
    draw = random.Random(3)

    def shuffled(given: Data) -> Data:
        keys = list(given)
        draw.shuffle(keys)
        return {key: shuffled(given[key]) if isinstance(given[key], dict) else given[key] for key in keys}

    for one in SITUATIONS:
        again = next_change(one.about(order=shuffled))
        first = answers()[one.name]
        assert (again.cause, again.proposal) == (first.cause, first.proposal), one.name


def test_a_danger_that_a_step_brought_is_taken_back_to_the_set_up_before() -> None:
    for one in DANGERS:
        if one.cause != "danger" or one.kind != "CHANGE":
            continue
        given = looked_at()[one.name]
        before = given.history.past[-1].session.setup
        stepped = {each.path: each.old for each in differences(before, given.session.setup)}
        for path, value in offered(next_change(given))[: len(one.puts)]:
            assert str(stepped[path]) in (str(value), f"{value}.0"), one.name


def test_what_failed_twice_on_such_tyres_is_not_offered_at_another_venue() -> None:
    away = (BEFORE, failing(11, "before-1"), BEFORE, failing(10, "before-3"))
    far = went_before(*away, venue="far")
    here = went_before(BEFORE, BEFORE, BEFORE)
    history = attrs.evolve(here, past=(*far.past, *here.past))
    dives = (felt("dives"), hot("2.40 bar", "2.20 bar"))

    assert offered(advised(*dives, history=history)) == []
    once = attrs.evolve(here, past=(*far.past[:2], *here.past))
    assert offered(advised(*dives, history=once)) != []


def test_what_was_expected_is_held_against_what_came() -> None:
    because = put(
        "session",
        "because.adjusters.front-compression",
        {"why": "dives, front", "expect": "less dive"},
    )
    step = (FROM, turned(front_compression=10), because)
    assert advised(*step, felt("dives"), history=last()).learnt == (
        "front compression 12 -> 10 clicks (firmer): expected less dive; you wrote dives again",
    )
    assert advised(*step, history=last()).learnt == (
        "front compression 12 -> 10 clicks (firmer): expected less dive; it was not felt again",
    )


def test_a_trial_that_a_mode_undid_is_said_to_be_none() -> None:
    setups = {**SETUP, "damping": "automatic"}
    closed = (
        FROM,
        put("session", "setup", {**setups, "adjusters": {**SETUP["adjusters"], "front-rebound": 8}}),
    )
    found = advised(*closed, history=last(setup=setups)).learnt
    assert found == (
        "front rebound 12 -> 8 clicks (firmer): no trial, front rebound does nothing in damping mode "
        "automatic; damping mode by-hand frees it",
    )


@every(
    ("starts", "felt_too", "now", "says"),
    [
        (
            (12, 13, 14),
            (),
            PARKED,
            "to settle front rebound 12 -> 10 clicks (firmer): 1 of the 3 outings left, without it",
        ),
        ((10, 12, 13), (), PARKED, ""),
        ((), (), PARKED, ""),
        ((12, 13, 14), (felt("weaves", "yes"),), PARKED, ""),
        # What has started is gone, and of another day nothing is left.
        ((12, 13, 14), (), PARKED.replace(hour=12, minute=30), ""),
        ((12, 13, 14), (), PARKED + dt.timedelta(days=1), ""),
    ],
)
def test_outings_that_would_settle_a_change_are_named_where_three_are_left(
    starts: tuple[int, ...], felt_too: tuple[Change, ...], now: dt.datetime, says: str
) -> None:
    quick = {str(number): f"1:43.{number}00" for number in range(1, 7)}
    step = (FROM, turned(front_rebound=10), put("session", "laps", quick), *timetable(*starts))
    same_day = went_before(BEFORE, BEFORE, BEFORE)
    found = advised(*step, *felt_too, history=same_day, now=now).learnt
    assert [one for one in found if "settle" in one] == ([says] if says else [])


def test_a_gain_that_the_outings_left_cannot_tell_is_left_to_what_one_likes() -> None:
    step = (FROM, turned(front_rebound=10), *timetable(12, 13, 14))
    assert advised(*step, now=PARKED).learnt == (
        "front rebound 12 -> 10 clicks (firmer): keep what you like, cause not known: "
        "the 3 outings left cannot tell it",
    )

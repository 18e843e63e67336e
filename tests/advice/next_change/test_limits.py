"""The limits of the next change: each decides, and the figure that its owner changed stands nowhere."""

import re

import attrs
import pytest

from paddock_tui.advice.about import ENDS, End
from paddock_tui.advice.next_change import Advised
from paddock_tui.advice.sag import sag as bench_sag
from paddock_tui.facts.past import History
from paddock_tui.facts.sag import wanted_sag
from paddock_tui.limits import LIMITS, Limit
from paddock_tui.limits.next_change import NEXT_CHANGE
from paddock_tui.limits.sag import TRAVEL_LEFT
from paddock_tui.rules import Finding, review
from tests.advice.next_change.cases import BEFORE, about, advised, felt, hot, sag
from tests.advice.next_change.told.given import FROM, PARKED, failing, last, timetable, turned
from tests.advice.next_change.told.guards_pressures import STANDS_UP
from tests.advice.next_change.told.steps import STEP, TWO_LAPS
from tests.every import every
from tests.rules.situations import Change, put, went_before, without


@attrs.frozen
class LimitCase:
    """Values of a limit on its two sides, and a situation in which it matters."""

    low: object
    high: object
    changes: tuple[Change, ...]
    history: History | None = None

    def answer(self, limit: Limit, value: object) -> Advised:
        """Give the next change with a limit set to a value."""
        now = put("garage", f"limits.{limit.rule}.{limit.name}", value)
        return advised(*self.changes, now, history=self.history, now=PARKED)


HARSH = felt("harsh on single bumps")
UNDER = hot("2.36 bar", "2.20 bar")
THREE_LAPS = {**TWO_LAPS, "3": "1:45.300"}
AWAY = attrs.evolve(
    went_before(BEFORE, BEFORE, BEFORE),
    past=(
        *went_before(BEFORE, failing(11, "before-1"), BEFORE, failing(10, "before-3"), venue="far").past,
        *went_before(BEFORE, BEFORE, BEFORE).past,
    ),
)
STORIES = {
    # 120 mm of travel, of which 84 are 70 %.
    "travel_used_under": LimitCase(0.6, 0.8, (HARSH, put("session", "front_travel_used", "84 mm"))),
    # 132 mm are a tenth more than there is.
    "travel_read_over": LimitCase(0.05, 0.15, (HARSH, put("session", "front_travel_used", "132 mm"))),
    # 41 mm ask for 17 of 15 turns.
    "preload_kept_free": LimitCase(0.05, 0.1, (felt("dives"), turned(front_preload=6), sag("front", 41.0))),
    "sessions_to_learn": LimitCase(3, 4, (HARSH,)),
    "gauge_errs": LimitCase("0.04 bar", "0.08 bar", (hot("2.46 bar", "2.20 bar"),)),
    "outings_left": LimitCase(3, 4, (FROM, turned(front_rebound=10), *timetable(12, 13, 14))),
    "times_failed": LimitCase(2, 3, (felt("dives"), hot("2.40 bar", "2.20 bar")), AWAY),
    "near_target": LimitCase("0.02 bar", "0.06 bar", (STANDS_UP, UNDER)),
    # It moves by 0.05 bar.
    "start_step": LimitCase("0.02 bar", "0.1 bar", (STANDS_UP, UNDER)),
    # 24 C after 15 C.
    "like_track": LimitCase("8 C", "10 C", STEP, last(track="15 C")),
    "laps_until_hot": LimitCase(3, 4, (hot("2.60 bar", "2.20 bar"), put("session", "laps", THREE_LAPS))),
    "laps_that_tell": LimitCase(3, 4, (*STEP, put("session", "laps", THREE_LAPS))),
    "minutes_that_tell": LimitCase(
        "10 min", "15 min", STEP, last(laps={}, ridden_laps=2, ridden_time="12 min")
    ),
}
MINE = {one.name: one for one in LIMITS.values() if one.rule == NEXT_CHANGE}


def test_each_limit_of_the_next_change_has_its_story() -> None:
    assert STORIES.keys() == MINE.keys()


@every("name", STORIES)
def test_what_the_owner_sets_decides(name: str) -> None:
    story, limit = STORIES[name], MINE[name]
    assert repr(story.answer(limit, story.low)) != repr(story.answer(limit, story.high))


def test_a_limit_that_was_changed_is_said_as_it_is_now() -> None:
    story, limit = STORIES["sessions_to_learn"], MINE["sessions_to_learn"]
    held = repr(story.answer(limit, 4))
    assert "the first 4 sessions on a bike are for learning it" in held
    assert re.search(r"\b(2|two) sessions", held) is None


@every(
    ("name", "value", "now", "before"),
    [
        ("like_track", "6 C", "the track was more than 6 C warmer or colder", "8 C"),
        ("laps_until_hot", 4, "3 laps: the tyres were not hot yet", ""),
        ("laps_that_tell", 4, "3 clean laps: too few to tell what the step did", ""),
        ("minutes_that_tell", "15 min", "the session before was too short to tell", ""),
        ("near_target", "0.05 bar", "the front tyre is on its hot target", ""),
        ("start_step", "0.1 bar", "stands where the calculator puts it", ""),
    ],
)
def test_what_an_outing_tells_is_said_by_the_owners_limit(
    name: str, value: object, now: str, before: str
) -> None:
    held = repr(STORIES[name].answer(MINE[name], value))
    assert now in held
    assert not before or before not in held


@pytest.mark.parametrize(("left", "cause"), [("1 mm", "table"), ("4 mm", "none")])
def test_all_travel_is_used_to_the_next_change_where_the_rule_says_so(left: str, cause: str) -> None:
    """117 mm of 120 are used: 3 mm are left."""
    changed = put("garage", f"limits.{TRAVEL_LEFT.rule}.{TRAVEL_LEFT.name}", left)
    found = advised(HARSH, put("session", "front_travel_used", "117 mm"), changed)
    assert found.cause == cause


def findings(*changes: Change) -> list[Finding]:
    """Give what the rule of rider sag says of the same session before it is ridden."""
    to_come = (
        without("session", name) for name in ("laps", "parked", "did", "symptoms", "pressures", "look")
    )
    made = about(*changes, *to_come).situation
    return [one for one in review(made).findings if one.rule == "rider-sag-out-of-its-window"]


AIMS = [
    ((), "30 mm"),
    ((put("bike", "front.technician_rider_sag", "26 mm"),), "26 mm"),
    ((put("bike", "front.travel", "200 mm"),), "53 mm"),
    ((put("garage", "limits.rider-sag-out-of-its-window.track_most", "32 mm"),), "26 mm"),
]


@every(("changes", "aim"), AIMS)
def test_rule_bench_and_next_change_aim_at_the_same_sag(changes: tuple[Change, ...], aim: str) -> None:
    """A sag of 62 mm is outside every window here; what is set is its middle, or the technician's figure."""
    told = (felt("dives"), sag("front", 62.0), *changes)
    looked = about(*told)
    (raised,) = findings(*told)

    assert f"Wind preload on at the front toward {aim}, measure again" in raised.remedy.text
    assert str(bench_sag(looked, "front").filled["wanted_rider"].value) == aim
    assert aim in advised(*told).proposal.why


@every("end", ENDS)
@every("top_out", ["fitted", None])
def test_where_no_table_serves_nobody_aims_at_one(end: End, top_out: str | None) -> None:
    looked = about(felt("dives"), sag(end, 62.0), put("bike", f"{end}.top_out_springs", top_out))
    bike = looked.situation.bike
    assert bike is not None

    assert wanted_sag(getattr(bike, end), False, looked.situation.limits) is None
    assert "wanted_rider" not in bench_sag(looked, end).filled
    assert findings(sag(end, 62.0), put("bike", f"{end}.top_out_springs", top_out)) == []

"""All whole stories together: how many, how few false alarms, and what taking values away does to them."""

import functools
import sys
from collections import Counter
from collections.abc import Iterator
from typing import Any

from paddock_tui.facts.essentials.paths import rests_on
from paddock_tui.facts.past import History
from paddock_tui.facts.unplaced import lacking, may_concern
from paddock_tui.limits.core import LIMITS
from paddock_tui.limits.next_change import NEXT_CHANGE
from paddock_tui.records.session import Session
from paddock_tui.rules import CAUTION, RULES, Review
from tests.every import every
from tests.examples import one_in
from tests.rules.cases import CASES
from tests.rules.limit_rows import ROWS
from tests.rules.situations import (
    SESSION,
    Change,
    files,
    look,
    look_for,
    put,
    raised,
    situation,
    went_before,
)
from tests.rules.stories import judged, remembered
from tests.rules.stories.story import Story
from tests.rules.test_essentials import leaves, lowered, worst_by_subject

MOST_FALSE = 1 / 20
"""Findings at caution or above in clean stories, as a share of those stories."""

WHOLE = [one for one in judged.STORIES if one.before] + list(remembered.STORIES)
"""Stories of two to five sessions: those that went before, and the one to come."""

CLEAN = [one for one in WHOLE if one.verdict == "NO FINDINGS"]
SHARE = one_in(30)
"""Of how many values each story takes one away, so that all of them are taken away somewhere."""


def changes_of(story: Story | remembered.Story) -> tuple[Change, ...]:
    return story.changes if isinstance(story, Story) else story.now


def reviewed(story: Story | remembered.Story, *more: Change) -> Review:
    """Judge the outing to come of a story, changed."""
    given = dict(story.more)
    if isinstance(story, Story) and "history" not in given:
        given["history"] = went_before(*story.before, hot_read=False)
    return look(*changes_of(story), *more, **given)


@functools.cache
def as_told(name: str) -> Review:
    """Judge a story as it is told."""
    return reviewed(next(one for one in WHOLE if one.name == name))


def test_there_are_sixty_whole_stories_and_twenty_five_of_them_are_clean() -> None:
    assert all(1 <= len(one.before) <= 4 for one in WHOLE)
    assert len(WHOLE) >= 60
    assert len(CLEAN) >= 25


def test_clean_stories_raise_at_most_one_false_alarm_in_twenty() -> None:
    alarms: Counter[str] = Counter()
    for story in CLEAN:
        alarms.update(one.rule for one in reviewed(story).findings if one.severity >= CAUTION)
    sys.stdout.write(f"{len(CLEAN)} clean stories, false alarms by rule: {dict(alarms)}\n")
    assert sum(alarms.values()) <= MOST_FALSE * len(CLEAN), dict(alarms)


@every("story", list(enumerate(WHOLE)), ids=lambda one: one[1].name)
def test_no_value_taken_away_from_a_story_ends_in_no_findings_or_lowers_a_finding(
    story: tuple[int, Story | remembered.Story],
) -> None:
    number, told = story
    before = as_told(told.name)
    if before.verdict == "NO FINDINGS":
        return
    named = {(role, path) for role, path, _ in changes_of(told)}
    held = worst_by_subject(before)
    rested = [
        (role, path)
        for role, data in files(*changes_of(told)).items()
        for path in leaves(data)
        if (rests_on(role, path) or path[0] == "adjusters")
        and not any(role == one and path[: len(at)] == at for one, at in named)
    ]
    for role, path in rested[number % SHARE :: SHARE]:
        after = reviewed(told, put(role, ".".join(path), None))
        assert not lowered(held, after), (role, path)
        assert after.verdict != "NO FINDINGS", (role, path)


ONLY_TRACE = ("lever", "look.front.seen", "look.rear.seen")
"""What opens a matter and is the only trace of it: once it is taken out nobody can know that it was there.

That is the rider's own act, which stands in the journal and is undone in one key; where a trace is left (a
number, a time, "noted") the verdict waits for the word.
"""

PLACES = ("date", "number", "start", "bike", "rider", "tyres", "kind")
"""What says which outing it was, of whom and of what."""

SHARE_OF_PLACES = one_in(3)
"""Of how many of these each story takes one away; another one of the next."""

SHARE_OF_USUAL = one_in(90)
"""Of how many values that an earlier outing has in common with all others each story takes one away."""


def written(data: dict[str, Any], at: str = "") -> Iterator[tuple[str, Any]]:
    """List the values of an earlier outing, each by its dotted path."""
    for key, value in data.items():
        if isinstance(value, dict):
            yield from written(value, f"{at}{key}.")
        else:
            yield f"{at}{key}", value


EARLIER = [one for one in WHOLE if "history" not in one.more]


@every("story", list(enumerate(EARLIER)), ids=lambda one: one[1].name)
def test_no_value_taken_away_from_an_earlier_outing_ends_in_no_findings_or_lowers_a_finding(
    story: tuple[int, Story | remembered.Story],
) -> None:
    number, told = story
    before = as_told(told.name)
    if before.verdict == "NO FINDINGS":
        return
    held = worst_by_subject(before)
    here = situation(files(*changes_of(told))).session
    assert here is not None
    for place, outing in enumerate(told.before):
        own = dict(written(outing))
        usual = sorted({path for path, _ in written(SESSION)} - {*own, *PLACES})
        said = PLACES[number % SHARE_OF_PLACES :: SHARE_OF_PLACES]
        for path in (*own, *said, *usual[number % SHARE_OF_USUAL :: SHARE_OF_USUAL]):
            less = (*told.before[:place], {**own, path: None}, *told.before[place + 1 :])
            given = as_kept(went_before(*less, hot_read=False), here)
            after = look(*changes_of(told), **{**told.more, **given})
            assert not lowered(held, after), (place, path)
            assert path in ONLY_TRACE or after.verdict != "NO FINDINGS", (place, path)


def as_kept(history: History, here: Session) -> dict[str, Any]:
    """Give a history as the desk gives it: sessions that the record does not place stand beside it."""
    untold = [one for one in history.past if lacking(one.session) and may_concern(one.session, here)]
    kept = [one for one in history.past if one.session.date is not None and one.session.bike == here.bike]
    beside = tuple(one for one in untold if one not in kept)
    return {"history": History(tuple(kept), history.tyre_sets, history.riders), "unplaced": beside}


THREE = ("the third outing of a dry day", "in the van both ways", "two riders, one bike")
MOST_SHORT = 3
"""So many silent cases of a rule without a declared limit are told in each story."""

Short = tuple[tuple[Change, ...], dict[str, Any]]


def short_of(rule: str) -> list[Short]:
    """List situations at or just short of what a rule raises: rows of its limits, else its silent cases."""
    rows = [(row.changes, row.more) for row in ROWS if row.rule == rule and row.severity in ("", "note")]
    silent = [(one.changes, one.more) for one in CASES[rule].silent if one.changes or one.more]
    return rows or silent[:MOST_SHORT]


JUDGED = [rule for rule in RULES if short_of(rule)]


def test_every_rule_with_a_limit_has_a_row_just_short_of_it_and_next_to_every_other_a_silent_case() -> None:
    assert {one.rule for one in LIMITS.values()} - {NEXT_CHANGE} <= set(JUDGED)
    assert set(RULES) - set(JUDGED) == NEVER_SHORT


NEVER_SHORT = {"reference-not-found", "two-laptops-disagree"}
"""Rules of which no situation is nearly one that they raise: what they speak of is there or not."""


OF_WHAT_WAS_BEFORE = {
    "change-without-an-old-value",
    "help-lowered",
    "service-due",
    "tyre-past-its-cycles",
}
"""Rules that are just short of it before any outing: those of a story would be over it."""


@every("rule", JUDGED)
def test_a_rule_just_short_of_its_threshold_raises_no_alarm_in_three_clean_stories(rule: str) -> None:
    three = [one for one in judged.CLEAN if one.name in THREE]
    assert len(three) == len(THREE)
    for story in three:
        for changes, more in short_of(rule):
            before = () if rule in OF_WHAT_WAS_BEFORE else story.before
            given = {"history": went_before(*before, hot_read=False), **story.more, **more}
            found = look_for(rule, *story.changes, *changes, **given)
            alarms = [severity for _, severity in raised(found, rule) if severity != "note"]
            assert not alarms, (story.name, changes)

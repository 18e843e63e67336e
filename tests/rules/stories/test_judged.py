"""Stories of several outings: exactly what is found, the exact verdict, and how few alarms are false."""

from collections import Counter

from paddock_tui.rules import CAUTION
from tests.every import every
from tests.rules.stories.judged import STORIES
from tests.rules.stories.story import Story

MOST_FALSE = 1 / 20
"""Findings at caution or above in ordinary days, as a share of those days."""


@every("story", STORIES, ids=lambda story: story.name)
def test_a_story_is_judged_exactly_so(story: Story) -> None:
    found = story.review()
    alarms = [one for one in found.findings if one.severity >= CAUTION and one.about == "danger"]
    assert {(one.rule, one.subject, str(one.severity)) for one in alarms} == story.found
    assert found.verdict == story.verdict, [one.label for one in found.missing]


def test_ordinary_days_raise_next_to_no_alarm() -> None:
    alarms: Counter[str] = Counter()
    ordinary = [story for story in STORIES if story.clean]
    for story in ordinary:
        alarms.update(one.rule for one in story.review().findings if one.severity >= CAUTION)
    assert len(ordinary) >= 24
    by_rule = f"{len(ordinary)} ordinary days, false alarms by rule: {dict(alarms)}"
    assert sum(alarms.values()) <= MOST_FALSE * len(ordinary), by_rule


def test_no_two_stories_share_a_name() -> None:
    names = [story.name for story in STORIES]
    assert len(set(names)) == len(names)

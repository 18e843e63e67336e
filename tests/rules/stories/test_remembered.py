"""Stories of two to five sessions: exactly this is found of the last one at caution and above."""

from paddock_tui.rules import CAUTION
from tests.every import every
from tests.rules.situations import look
from tests.rules.stories.remembered import STORIES, Story

CLEAN = [one for one in STORIES if not one.found]


@every("story", STORIES, ids=lambda one: one.name)
def test_a_story_ends_as_it_should(story: Story) -> None:
    judged = look(*story.now, **story.more)
    found = {(one.rule, one.subject, str(one.severity)) for one in judged.findings if one.severity >= CAUTION}
    assert (found, judged.verdict) == (story.found, story.verdict)


def test_stories_have_two_to_five_sessions_and_many_of_them_are_clean() -> None:
    assert len({one.name for one in STORIES}) == len(STORIES) >= 30
    assert all(1 <= len(one.before) <= 4 for one in STORIES)
    assert len(CLEAN) * 3 >= len(STORIES)

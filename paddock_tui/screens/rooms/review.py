"""The review: verdict, findings, what is not judged and what is to do."""

from paddock_tui.desk.edits.remedies import mending
from paddock_tui.pages.review import finding_key, review_page
from paddock_tui.pages.rows import Page
from paddock_tui.screens.action import Action, needs_subject, to
from paddock_tui.screens.room import Room
from paddock_tui.screens.subject import SubjectContext, of_subject


def _page(about: SubjectContext) -> Page:
    problems = (*about.assembled.problems, *about.assembled.notes)
    return review_page(about.asked.review, about.heading, problems, _previews(about))


def _previews(about: SubjectContext) -> dict[str, str]:
    """Say for each finding that values can mend what its remedy would do."""
    said: dict[str, str] = {}
    judged = about.asked.review
    for finding in judged.findings:
        step = mending(about.desk.files, finding, about.ref, about.assembled.situation.refs)
        if step is not None:
            said[finding_key(finding)] = about.desk.previewed(step, about.ref, judged).words()
    return said


ROOM = Room(
    id="review",
    page=of_subject(_page),
    about="subject",
    action=Action(
        "review",
        "r",
        "review",
        "verdict, findings, not judged, to do",
        needs_subject,
        hint=11,
        do=to("review"),
    ),
)

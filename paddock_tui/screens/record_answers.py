"""What a record's page answers: what is found about it; of the day at hand, when one goes out."""

from paddock_tui.desk import Desk
from paddock_tui.pages.answers import AnswerWords, with_answer
from paddock_tui.pages.rows import Page
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Review


def record_answers(
    desk: Desk, page: Page, record: Ref | None, about: Ref | None, judged: Review, clock: str
) -> AnswerWords:
    """Answer for a record, `judged` being the review of the session or profile `about`."""
    part = record is not None and _is_part(desk, record, about)
    whole, short = with_answer(page, record, judged, is_part=part)
    return clock if clock and record is not None and _is_day_of(desk, record, about) else whole, short


def _is_part(desk: Desk, record: Ref, about: Ref | None) -> bool:
    """Return whether a record is judged with a session or a profile; lists and limits are with each."""
    if about is None:
        return False
    return record.kind in ("checklist", "garage") or record in desk.assembled(about).situation.refs.values()


def _is_day_of(desk: Desk, record: Ref, about: Ref | None) -> bool:
    return record.kind == "day" and about is not None and desk.files.data(about).get("day") == record.id

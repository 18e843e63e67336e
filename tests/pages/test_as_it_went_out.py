"""A ridden session shows the verdict that it went out with beside what is known of it now."""

import datetime as dt

from paddock_tui.pages.review import review_page
from paddock_tui.pages.rows import Row
from paddock_tui.records.went_out_with import WentOutWith
from paddock_tui.rules import Review


def rows(out: WentOutWith) -> tuple[Row, ...]:
    page = review_page(Review(), "h", went_out=out)
    (section,) = [one for one in page.sections if one.title == "as it went out"]
    return section.rows


def test_the_findings_of_then_stand_worst_first() -> None:
    found = {"dash-not-read": {"dash": "caution"}, "leak-not-mended": {"bike": "hold"}}

    shown = rows(WentOutWith(dt.time(9, 20), "HOLD", found))

    assert [(row.label, row.value) for row in shown] == [
        ("09:20", "HOLD"),
        ("hold", "leak not mended: bike"),
        ("caution", "dash not read: dash"),
    ]


def test_without_a_stamp_no_verdict_was_kept() -> None:
    assert [row.value for row in rows(WentOutWith())] == ["no verdict saved"]


def test_a_session_to_come_went_out_with_nothing() -> None:
    assert [one.title for one in review_page(Review(), "h").sections] == ["findings"]

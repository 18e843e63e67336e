"""A garage from before anybody was asked what was left open: one finding, one list, one step; the sample."""

import datetime as dt
import re
from pathlib import Path

from paddock_tui.desk.day.gone_through import going_through
from paddock_tui.pages.review import from_before, review_page
from paddock_tui.records.paths import Ref
from paddock_tui.rules import CAUTION, HOLD, Review
from tests.desk.opened import NEXT, at_desk

LONG_AGO = "sessions/2026/2026-05-16-1-magpie.toml"
LEFT_OPEN = """
[incidents.1]
what = "airbag fired"

[incidents.2]
what = "warning lamp"
lamp = "other"

[incidents.3]
what = "leak"
fluid = "fuel"

[work.91]
what = "oil"
torqued = true
"""


def alarms(judged: Review) -> set[tuple[str, str, str]]:
    """List what is found at caution and above."""
    return {(one.rule, one.subject, str(one.severity)) for one in judged.findings if one.severity >= CAUTION}


def from_then(garage: Path) -> Path:
    """Make the sample one from before: nobody was asked anything on return, no verdict was kept."""
    for file in garage.glob("sessions/**/*.toml"):
        text = re.sub(r"^(did|happened) = .*\n", "", file.read_text(encoding="utf-8"), flags=re.M)
        text = re.sub(r"^\[out[^\]]*\]\n(?:[^\[\n].*\n)*", "", text, flags=re.M)
        file.write_text(text, encoding="utf-8")
    own = garage / "garage.toml"
    text = own.read_text(encoding="utf-8")
    own.write_text(re.sub(r"^\[before\]\n(?:[^\[\n].*\n)*", "", text, flags=re.M), encoding="utf-8")
    left = garage / LONG_AGO
    left.write_text(left.read_text(encoding="utf-8") + LEFT_OPEN, encoding="utf-8")
    return garage


def test_what_a_garage_held_before_counts_in_one_finding_is_listed_and_gone_through_in_one_step(
    garage: Path,
) -> None:
    desk = at_desk(from_then(garage))
    found = {one.rule: one for one in desk.review(NEXT).findings}
    listed = from_before(desk.assembled(NEXT).situation.facts())

    assert found["open-from-before"].message == f"{len(listed)} from before: r."
    assert len(listed) >= 3
    assert [one.severity for one in listed] == sorted((one.severity for one in listed), reverse=True)
    assert found["open-from-before"].severity == listed[0].severity
    assert not {one.kind for one in listed} & set(found)
    assert found["leak-not-mended"].severity == HOLD
    page = review_page(desk.review(NEXT), "", before=listed)
    section = next(one for one in page.sections if one.title == f"{len(listed)} from before")
    assert [(row.ref, row.path) for row in section.rows] == [(one.ref, one.path) for one in listed]
    assert all(row.ref is not None for row in section.rows)

    desk.do(going_through(desk.files, dt.date(2026, 6, 19), "IS"))
    desk.settled()
    after = {one.rule for one in desk.review(NEXT).findings}
    assert "open-from-before" not in after
    assert "leak-not-mended" in after, "what holds is answered by itself"
    assert not {one.kind for one in listed} & after

    desk.undo()
    desk.settled()
    assert "open-from-before" in {one.rule for one in desk.review(NEXT).findings}


def test_one_answered_where_it_stands_leaves_the_list(garage: Path) -> None:
    desk = at_desk(from_then(garage))
    before = from_before(desk.assembled(NEXT).situation.facts())
    lamp = next(one for one in before if one.kind == "lamp-not-explained")
    assert lamp.ref == Ref("session", "2026-05-16-1-magpie")
    file = garage / LONG_AGO
    text = file.read_text(encoding="utf-8")
    answer = 'found = "stand lamp"\ndone = "nothing to do"\nby = "IS"\ntest = "off"\n'
    file.write_text(text.replace('lamp = "other"\n', f'lamp = "other"\n{answer}'), encoding="utf-8")

    desk.poll()
    left = from_before(desk.assembled(NEXT).situation.facts())
    assert lamp.kind not in {one.kind for one in left}


def test_the_sample_as_it_stands_opened_once(garage: Path) -> None:
    desk = at_desk(garage)
    stands = {one: one.read_bytes() for one in garage.rglob("*.toml")}
    judged = desk.review(NEXT)

    assert {
        (one.rule, one.subject, str(one.severity)) for one in judged.findings if one.severity >= CAUTION
    } == {
        ("little-traction-help-in-the-wet", "traction", "serious"),
        ("little-traction-help-in-the-wet", "slide", "caution"),
    }
    assert judged.verdict == "CARE"
    other = desk.review(Ref("session", "2026-05-16-4-otter"))
    assert {
        (one.rule, one.subject, str(one.severity)) for one in other.findings if one.severity >= CAUTION
    } == {
        ("slicks-in-the-wet", "front", "hold"),
        ("all-aids-near-least", "controls", "serious"),
        ("dry-set-up-in-the-wet", "wet-package", "caution"),
        ("freeing-end-not-known", "engine-braking", "caution"),
        ("sharp-map-in-the-wet", "power", "caution"),
        ("noise-near-the-limit", "noise", "caution"),
    }
    assert other.verdict == "HOLD"
    assert not from_before(desk.assembled(NEXT).situation.facts())
    assert {one: one.read_bytes() for one in garage.rglob("*.toml")} == stands

"""Sessions that lost their date, number, start, bike or rider keep what they opened, and are asked about."""

import re
from pathlib import Path

import pytest

from paddock_tui.records.paths import Ref
from paddock_tui.rules import Review
from tests.desk.opened import NEXT, at_desk, typed
from tests.every import every

LAST = "sessions/2026/2026-06-20-2-magpie.toml"
OTHERS = "sessions/2026/2026-06-20-2-otter.toml"
FALL = '\n[incidents.8]\nwhat = "fall"\nmoving = true\nat = 10:20:00\nhead_contact = true\n'


def written(garage: Path, name: str, *lines: str, without: str = "", more: str = "") -> None:
    """Write lines on top of a file and tables at its end, without the line of one key."""
    file = garage / name
    text = re.sub(rf"^{without} = .*\n", "", file.read_text(encoding="utf-8"), flags=re.M) if without else ""
    text = text or file.read_text(encoding="utf-8")
    keys = [line.partition(" ")[0] for line in lines]
    text = re.sub(rf"^({'|'.join(keys)}) = .*\n", "", text, flags=re.M) if keys else text
    file.write_text("\n".join((*lines, text)) + more, encoding="utf-8")


def judged(garage: Path, ref: Ref = NEXT) -> Review:
    return at_desk(garage).review(ref)


def asked(found: Review) -> list[tuple[str, tuple[str, ...]]]:
    """List what is asked about sessions that the record does not place."""
    return [(str(one.ref), one.path) for one in found.missing if one.id.startswith("not-placed")]


def held(found: Review) -> set[tuple[str, str, int]]:
    return {(one.rule, one.subject, int(one.severity)) for one in found.findings}


@every("key", ["date", "bike", "number", "start", "rider"])
def test_what_an_earlier_session_opened_stays_open_without_what_places_it(garage: Path, key: str) -> None:
    written(garage, LAST, 'lever = "to the bar"', without=key, more=FALL)
    found = judged(garage)
    rules = {one.rule for one in found.findings}

    assert {"brake-lever-not-firm", "fall-not-inspected", "concussion-suspected", "helmet-hit"} <= rules
    if key in ("date", "bike", "number"):
        assert (f"session/{Path(LAST).stem}", (key,)) in asked(found)


@pytest.mark.parametrize("key", ["date", "rider"])
def test_a_head_that_was_hit_on_another_bike_is_asked_after_without_its_day_or_its_rider(
    garage: Path, key: str
) -> None:
    written(garage, OTHERS, 'rider = "ines"', more=FALL)
    written(garage, OTHERS, without=key)
    found = judged(garage)

    assert "helmet-hit" in {one.rule for one in found.findings}
    assert asked(found) == [(f"session/{Path(OTHERS).stem}", (key,))]


def test_a_session_without_its_number_comes_after_all_others_of_its_day(garage: Path) -> None:
    written(garage, LAST, 'lever = "to the bar"')
    before = held(judged(garage))
    desk = at_desk(garage)
    desk.do(typed(desk, NEXT, ("number", "")))

    assert {one[0] for one in held(desk.review(NEXT))} == {one[0] for one in before}


def test_what_is_only_planned_or_of_another_bike_and_rider_is_not_asked_after(garage: Path) -> None:
    plan = '# planned\nkind = "track day"\nbike = "magpie"\nrider = "ines"\n'
    (garage / "sessions/2026/2026-06-20-9-magpie.toml").write_text(plan, encoding="utf-8")
    written(garage, OTHERS, without="date")

    assert asked(judged(garage)) == []


def test_it_is_no_longer_asked_after_once_it_is_placed_or_retired(garage: Path) -> None:
    written(garage, LAST, 'lever = "to the bar"', without="date")
    lost = Ref("session", Path(LAST).stem)
    desk = at_desk(garage)
    assert asked(desk.review(NEXT))

    desk.do(typed(desk, lost, ("date", "2026-06-20")))
    assert asked(desk.review(NEXT)) == []
    desk.do(typed(desk, lost, ("date", ""), ("retired", "2026-06-20")))
    assert asked(desk.review(NEXT)) == []

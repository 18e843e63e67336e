"""What is known of a bike, and of the items of lists, from other reviews changes none."""

import datetime as dt
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import attrs
import pytest
from hypothesis import given

from paddock_tui.desk.situations import assemble
from paddock_tui.facts import checklist_items, core
from paddock_tui.facts.situation import Situation
from paddock_tui.rules import Review, review
from paddock_tui.store.passing import PassingFiles
from tests.bench._career import write_career
from tests.examples import examples
from tests.pages.opened import SAMPLE
from tests.rules.situations import BIKE_DOWN, BIKE_UP, Change, files, situation
from tests.rules.test_properties import changes


def _forget() -> None:
    core._BIKES.clear()
    checklist_items._PREPARED.clear()


@pytest.fixture(autouse=True)
def forgotten() -> Iterator[None]:
    """Begin with nothing known of a bike, and leave nothing known."""
    _forget()
    yield
    _forget()


def _afresh(of: Situation) -> tuple[Review, Any]:
    """Judge a situation, and ask for its lists, with nothing known from another."""
    _forget()
    anew = attrs.evolve(of)
    return review(anew), anew.facts().get("checked")


def _situations(root: Path, now: dt.datetime) -> Iterator[Situation]:
    files = PassingFiles(root)
    with files.looked_at_only():
        for kind in ("session", "profile"):
            for ref in files.listing(kind):
                yield assemble(files, ref, now).situation
                yield assemble(files, ref, now, going_out=True).situation


def _judged_one_after_the_other(found: list[Situation]) -> None:
    told = [(review(one), one.facts().get("checked")) for one in found]
    assert any(known is not None and known.left for _, known in core._BIKES.values())
    assert checklist_items._PREPARED
    for one, (judged, lists) in zip(found, told, strict=True):
        fresh, fresh_lists = _afresh(one)
        assert judged == fresh
        assert lists == fresh_lists


def test_judged_after_many_others_every_session_of_the_sample_is_as_alone() -> None:
    _judged_one_after_the_other(list(_situations(Path(SAMPLE), dt.datetime(2026, 5, 16, 9, 0))))


def test_judged_after_many_others_every_session_of_a_career_is_as_alone(tmp_path: Path) -> None:
    career = write_career(tmp_path / "career", 12)
    _judged_one_after_the_other(list(_situations(career.root, career.at)))


@examples(20)
@given(changes(), changes())
def test_judged_after_another_session_on_that_bike_any_is_as_alone(
    one: tuple[Change, ...], other: tuple[Change, ...]
) -> None:
    _forget()
    before = situation(files(*one))
    after = attrs.evolve(situation(files(*other)), bike=before.bike)
    # What is known of a bike is used from its second review on.
    for _ in range(2):
        review(attrs.evolve(before))
    judged = review(after)
    assert judged == _afresh(after)[0]
    again = review(attrs.evolve(before))
    assert again == _afresh(before)[0]


def test_what_is_known_of_a_bike_holds_for_no_other_record_of_it() -> None:
    down = situation(files(("bike", (), BIKE_DOWN)))
    up = situation(files(("bike", (), BIKE_UP)))
    each = (down, up, attrs.evolve(down, bike=up.bike), attrs.evolve(up, bike=down.bike))
    warm = [review(attrs.evolve(one)) for one in (*each, *each)]
    assert len(core._BIKES) == 2
    assert warm == [_afresh(one)[0] for one in (*each, *each)]


def test_no_more_bikes_are_remembered_however_many_are_judged() -> None:
    made = situation(files(("bike", (), BIKE_UP)))
    for _ in range(3 * core._MOST_BIKES):
        assert made.bike is not None
        made = attrs.evolve(made, bike=attrs.evolve(made.bike))
        review(made)
        assert len(core._BIKES) <= core._MOST_BIKES

"""Every published figure is either checked here or says why it is not."""

from pathlib import Path

from tests.calc.test_reached import reached_places
from tests.every import every
from tests.outside.account import STATUSES, Topic, called_by, figures, table, topics

DEVELOPERS = Path(__file__).parent.parent.parent / "DEVELOPERS.md"


def named(topic: Topic) -> str:
    return topic.module.__name__.rpartition(".")[2]


def test_every_figure_is_accounted_for_once() -> None:
    ids = [id_ for topic in topics() for id_, _ in topic.uses()]

    assert sorted(ids) == sorted(one.id for one in figures())
    assert len(figures()) == 333


def test_a_row_is_trusted_as_far_as_its_figure_is() -> None:
    listed = {one.id: one.status for one in figures()}
    told = {row.id: row.status.partition(";")[0] for topic in topics() for row in topic.rows}

    assert {id_: status for id_, status in told.items() if listed[id_] != status} == {}
    assert set(listed.values()) == set(STATUSES)


@every("topic", topics(), ids=named)
def test_what_is_not_checked_says_why_in_words(topic: Topic) -> None:
    reasons = {**topic.not_used, **topic.partly}

    assert all(len(reason.split()) >= 5 for reason in reasons.values()), reasons
    assert set(topic.partly) <= {row.id for row in topic.rows}


@every("topic", topics(), ids=named)
def test_what_is_used_elsewhere_names_a_test_that_is_there(topic: Topic) -> None:
    assert all(callable(getattr(topic.module, name, None)) for name in topic.elsewhere.values())


def test_the_account_that_developers_read_is_this_one() -> None:
    assert "\n".join(table()) in DEVELOPERS.read_text(encoding="utf-8")


def test_what_is_checked_is_computed_by_what_a_rider_can_reach() -> None:
    """Each checked row calls the program, and what it calls of the calculations is reached from a page."""
    lost = {}
    for topic in topics():
        for row in topic.rows:
            called = called_by(row.computed)
            unreached = {one for one in called if one[0].startswith("paddock_tui.calc.")} - reached_places()
            if not called or unreached:
                lost[row.id] = sorted(unreached) or "calls nothing of the program"

    assert lost == {}

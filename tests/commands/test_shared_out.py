"""Work shared out among processes: all of it comes, in whatever order; what one did not tell is not there."""

import os
import signal
import sys
import threading
from collections.abc import Iterator

import pytest

from paddock_tui.commands.shared_out import pieces, processors, shared_out
from tests.commands.begun import Begun

pytestmark = pytest.mark.filterwarnings("ignore:.*fork.*:DeprecationWarning")
"""The idle threads of other tests hold no lock."""


@pytest.fixture
def begun(monkeypatch: pytest.MonkeyPatch) -> Begun:
    """Note what is begun."""
    return Begun(monkeypatch)


def test_pieces_follow_one_another_and_the_later_on_a_line_the_smaller() -> None:
    for lines in ([0], [1], [2], [7], [1000], [], [3, 0, 4], [500, 1, 90, 409]):
        for ways in (1, 2, 3, 8):
            found = pieces(lines, ways)
            assert [part for piece in found for part in piece] == list(range(sum(lines)))
            assert len(found) <= ways
    lengths = [len(one) for one in pieces([10_000], 4)]
    assert lengths == sorted(lengths, reverse=True)
    assert len(set(lengths)) == 4


def test_a_piece_that_begins_with_a_line_has_nothing_to_go_through_first() -> None:
    assert pieces([5_000, 5_000], 2) == [range(5_000), range(5_000, 10_000)]
    first, second, third = pieces([4_000, 4_000, 4_000], 3)
    assert len(first) == len(second) == len(third)
    begins, ends = pieces([6_000, 6_000, 6_000], 2)
    assert 9_000 < len(begins) < 9_600
    assert begins.stop == ends.start


def _told(piece: range) -> Iterator[tuple[int, tuple[int, str]]]:
    return ((part, (os.getpid(), "x" * 5_000 * part)) for part in piece)


def test_every_part_is_told_by_a_process_of_its_own_piece(begun: Begun) -> None:
    among = [range(40), range(40, 41), range(41, 60)]

    found = dict(shared_out(_told, among))

    assert sorted(found) == list(range(60))
    assert all(len(text) == 5_000 * part for part, (_, text) in found.items())
    whose = [{found[part][0] for part in piece} for piece in among]
    assert [len(one) for one in whose] == [1, 1, 1]
    assert os.getpid() not in set.union(*whose)
    assert begun.all_are_gone(3)


def _fails(piece: range) -> Iterator[tuple[int, object]]:
    for part in piece:
        if part == 7:
            os.kill(os.getpid(), signal.SIGKILL)
        if part == 12:
            raise ValueError
        if part == 22:
            yield part, lambda: None  # which nobody can pass on
        yield part, part


def test_what_a_process_did_not_tell_before_it_died_is_not_there(begun: Begun) -> None:
    found = dict(shared_out(_fails, [range(10), range(10, 20), range(20, 30)]))

    assert sorted(found) == [*range(7), 10, 11, 20, 21]
    assert begun.all_are_gone(3)


def test_no_process_outlives_whoever_stops_listening(begun: Begun) -> None:
    told = shared_out(_told, [range(400), range(400, 800)])
    next(told)
    with pytest.raises(KeyboardInterrupt):
        told.throw(KeyboardInterrupt)  # type: ignore[attr-defined]
    assert begun.all_are_gone(2)


def test_none_is_begun_beside_another_thread_or_where_nothing_can_be(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(threading, "active_count", lambda: 1)
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr(os, "sched_getaffinity", lambda _pid: {0, 1, 2}, raising=False)
    assert processors() == 3
    monkeypatch.setattr(os, "sched_getaffinity", lambda _pid: set(range(200)), raising=False)
    assert processors() == 8
    monkeypatch.setattr(threading, "active_count", lambda: 2)
    assert processors() == 1
    monkeypatch.setattr(threading, "active_count", lambda: 1)
    monkeypatch.delattr(os, "fork")
    assert processors() == 1

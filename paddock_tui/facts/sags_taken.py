"""Readings of sag along a history: the last whole ones, by end, load and rider."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from paddock_tui.facts.past import Along, History, PastSession
from paddock_tui.records.session_parts import SagReading


class SagTaken(NamedTuple):
    """A whole reading of sag, and the session that it stands in."""

    reading: SagReading
    past: PastSession


_SagsTaken = Mapping[tuple[str, str, str | None, bool], tuple[PastSession, ...]]
"""The two last sessions with a whole reading by end, load and rider, and with no rider named whoever rode."""


def is_whole(reading: SagReading) -> bool:
    """Return whether all three lengths of a reading of sag are known."""
    return None not in (reading.extended, reading.pushed, reading.lifted)


def _sag_taken(so_far: _SagsTaken, one: PastSession) -> _SagsTaken:
    new = {
        key: (one, *so_far.get(key, ())[:1])
        for end, loads in one.session.sag.items()
        for load, reading in loads.items()
        if is_whole(reading)
        for key in ((end, load, one.rider, False), (end, load, None, True))
    }
    return {**so_far, **new} if new else so_far


_SAGS: Along[_SagsTaken] = Along("sag", {}, _sag_taken)


def sag_of_rider(history: History, end: str, load: str, rider: str | None) -> SagTaken | None:
    """Return the last whole reading of sag that was taken with a rider."""
    return next(sags_of_rider(history, end, load, rider), None)


def sags_of_rider(history: History, end: str, load: str, rider: str | None) -> Iterator[SagTaken]:
    """Give the last whole reading of sag that was taken with a rider, then the one before it."""
    return _taken(history, (end, load, rider, False))


def last_sag(history: History, end: str, load: str) -> SagTaken | None:
    """Return the last whole reading of sag, whoever it was taken with."""
    return next(_taken(history, (end, load, None, True)), None)


def _taken(history: History, key: tuple[str, str, str | None, bool]) -> Iterator[SagTaken]:
    end, load, *_ = key
    return (SagTaken(one.session.sag[end][load], one) for one in _SAGS.of(history).get(key, ()))

"""When a session counts as ridden, and its laps: one rule each, for records and rows read without them."""


def was_ridden(*, parked: bool, laps: bool, went_out: bool, hot: bool) -> bool:
    """Return whether an outing was ridden, from what stands in its record.

    Parked or a lap, timed or counted, say it by themselves. A hot pressure says it of a bike that went out:
    alone it may be a reading off the warmers, typed on the wrong row, and nobody has been out.
    """
    return parked or laps or (went_out and hot)


def laps_ridden(counted: int | None, timed: int) -> int:
    """Return the laps of an outing: as they were counted, else those with a time."""
    return timed if counted is None else counted

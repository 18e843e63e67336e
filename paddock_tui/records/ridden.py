"""When a session counts as ridden: the one rule, for the records and for the rows read without them."""


def was_ridden(*, parked: bool, laps: bool, went_out: bool, hot: bool) -> bool:
    """Return whether an outing was ridden, from what stands in its record.

    Parked or a lap, timed or counted, say it by themselves. A hot pressure says it of a bike that went out:
    alone it may be a reading off the warmers, typed on the wrong row, and nobody has been out.
    """
    return parked or laps or (went_out and hot)

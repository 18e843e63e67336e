"""The clock between two sessions: what is due when, counted from parking and back from going out.

Order and minutes are paddock practice, unpublished: hot pressures first, before anything is said to anybody;
then feel, a look at the tyres, one change, fuel; kit ten minutes before, the dash after the last ignition-on.
"""

import attrs

HOT_BY_MIN, FEEL_BY_MIN, LOOK_BY_MIN, CHANGE_BY_MIN, FUEL_BY_MIN = 3, 5, 10, 20, 30
"""Minutes after parking by which each is done. Common practice, no source."""

DRESS_MIN, DASH_MIN, WARMERS_OFF_MIN = 10, 3, 1
"""Minutes before going out. Common practice, no source."""

SOAK_MIN = 60
"""Minutes that tyre warmers take from cold, 45 at the least. Common practice, no source."""

WARMERS_BACK_MIN = 2
"""Minutes after parking by which warmers go back on hot tyres. Common practice, no source."""


@attrs.frozen
class Due:
    """One thing to do: what, and by which minute of the day."""

    what: str
    minute: int


def between(out_minute: int, parked_minute: int | None = None, *, warmers: bool = False) -> tuple[Due, ...]:
    """List what is due before going out, in the order of the clock; minutes are of the day.

    After parking the tyres are hot and need no soak. Where the time between is short, what counts from
    parking is due by the time to dress.
    """
    dress = out_minute - DRESS_MIN
    found: list[Due] = []
    if parked_minute is not None:
        first = (("hot pressures", HOT_BY_MIN), ("feel", FEEL_BY_MIN), ("look", LOOK_BY_MIN))
        then = (("change", CHANGE_BY_MIN), ("fuel", FUEL_BY_MIN))
        found += [Due(what, min(parked_minute + after, dress)) for what, after in (*first, *then)]
    else:
        found.append(Due("fuel", dress))
    if warmers:
        on = out_minute - SOAK_MIN if parked_minute is None else min(parked_minute + WARMERS_BACK_MIN, dress)
        found.append(Due("warmers", on))
        found.append(Due("warmers off", out_minute - WARMERS_OFF_MIN))
    found += [Due("dress", dress), Due("dash", out_minute - DASH_MIN)]
    return tuple(sorted(found, key=lambda due: due.minute))

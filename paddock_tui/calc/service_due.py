"""When service is due: by hours run, by distance, by months gone, whichever comes first."""

import datetime as dt

from paddock_tui.calc.errors import above, within


def hours_to_go(every_h: float, last_h: float, now_h: float) -> float:
    """Return the engine hours until the next service."""
    interval = above("hours between services", every_h, 0.0, 100_000.0, "h")
    done = within("hours at the last service", last_h, 0.0, 100_000.0, "h")
    return done + interval - within("engine hours", now_h, 0.0, 200_000.0, "h")


def km_to_go(every_km: float, last_km: float, now_km: float) -> float:
    """Return the kilometres until the next service."""
    interval = above("distance between services", every_km, 0.0, 2_000_000.0, "km")
    done = within("distance at the last service", last_km, 0.0, 2_000_000.0, "km")
    return done + interval - within("distance", now_km, 0.0, 4_000_000.0, "km")


def due_date(last: dt.date, every_months: float) -> dt.date:
    """Date of the next service; a month that is too short ends it on its last day."""
    import calendar

    months = round(within("months between services", every_months, 1.0, 240.0, "months"))
    year, month = divmod(last.year * 12 + last.month - 1 + months, 12)
    day = min(last.day, calendar.monthrange(year, month + 1)[1])
    return dt.date(year, month + 1, day)

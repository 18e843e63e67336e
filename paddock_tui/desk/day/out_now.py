"""Which bikes are out, and which go out next: with two riders on one day there may be two of each."""

import datetime as dt

from paddock_tui.desk.day.moments import over_midnight
from paddock_tui.desk.lookup import Glance, on_dates, order
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles


def out_now(files: GarageFiles, now: dt.datetime) -> tuple[Ref, ...]:
    """List today's sessions that went out and are not back, each bike's last one."""
    return _of_each_bike(files, [one for one in _waiting(files, now) if "went_out" in files.data(one.ref)])


def going_next(files: GarageFiles, now: dt.datetime) -> tuple[Ref, ...]:
    """List today's sessions that have not gone out yet, each bike's first one."""
    open_ = [one for one in _waiting(files, now) if "went_out" not in files.data(one.ref)]
    return _of_each_bike(files, open_[::-1])[::-1]


def _waiting(files: GarageFiles, now: dt.datetime) -> list[Glance]:
    night = now - dt.timedelta(days=1)
    near = (one for one in on_dates(files, night.date(), 2) if not one.ridden)
    return sorted((one for one in near if _is_now(files, one, now)), key=order)


def _is_now(files: GarageFiles, one: Glance, now: dt.datetime) -> bool:
    return one.date == now.date() or over_midnight(files.data(one.ref), now)


def _of_each_bike(files: GarageFiles, seen: list[Glance]) -> tuple[Ref, ...]:
    """Keep the last one of each bike."""
    return tuple({str(files.data(one.ref).get("bike")): one.ref for one in seen}.values())

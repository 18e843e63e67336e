"""Which bikes are out, and which go out next: with two riders on one day there may be two of each."""

import datetime as dt

from paddock_tui.desk.lookup import Glance, glances, order
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
    today = (one for one in glances(files, now.year) if one.date == now.date())
    return sorted((one for one in today if not one.ridden), key=order)


def _of_each_bike(files: GarageFiles, seen: list[Glance]) -> tuple[Ref, ...]:
    """Keep the last one of each bike."""
    return tuple({str(files.data(one.ref).get("bike")): one.ref for one in seen}.values())

"""Any other record: a bike, a rider, a day, a tyre set, a venue."""

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.day.after import who_rode
from paddock_tui.desk.day.countdown import clock_of, ridden_until
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.facts.past import PastSession
from paddock_tui.limits.pressures import OFF_TARGET_CAUTION
from paddock_tui.pages.advised import advised
from paddock_tui.pages.countdown import clock_section
from paddock_tui.pages.day import day_page
from paddock_tui.pages.day_picture import day_section
from paddock_tui.pages.record import record_page
from paddock_tui.pages.rows import Page
from paddock_tui.pages.tyre_picture import tyre_sections
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Ref
from paddock_tui.records.timetable import group_today
from paddock_tui.records.tyres import TyreSet
from paddock_tui.screens.beside import beside_record
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext
from paddock_tui.screens.subject import gone, units_of


def make_page(asked: PageContext) -> Page | None:
    ref = asked.place.record
    if ref is None:
        return None
    if asked.is_reading:
        return _record(asked.desk, ref, asked.subject)
    beside = beside_record(asked.desk, ref, asked.subject, asked.assembled)
    page = advised(_record(asked.desk, ref, asked.subject), ref, beside)
    loaded = asked.desk.files.read(ref)
    if loaded is None or not isinstance(loaded.record, TyreSet):
        return page
    about = asked.desk.about(asked.subject, asked.assembled)
    now = PastSession(about.id_of("session") or "", about.session)
    within = about.situation.limits[OFF_TARGET_CAUTION]
    above = tyre_sections(ref.id, loaded.record, about.history.and_then(now), within)
    return attrs.evolve(page, sections=(*above, *page.sections))


def _record(desk: Desk, ref: Ref, subject: Ref | None) -> Page:
    loaded = desk.files.read(ref)
    if loaded is None:
        return gone(ref)
    if ref.kind == "day" and isinstance(loaded.record, RidingDay):
        data = desk.files.data(subject) if subject is not None else {}
        rider, bike = (word if isinstance(word := data.get(key), str) else None for key in ("rider", "bike"))
        group = group_today(loaded.record, rider, bike)
        now = desk.now() if _is_today(desk, ref) else None
        ridden = ridden_until(desk.files, now.date(), rider or "", bike or "") if now is not None else None
        page = day_page(loaded, units_of(desk, loaded.record), group, now, ridden)
        today = clock_of(desk.files, desk.session_in_hand(), now) if now is not None else None
        due = clock_section(today, desk.now())
        line = day_section(desk.files, ref, loaded.record, desk.now(), today)
        # Today what is due comes first: the timetable below it fills a screen, with what is past on top.
        first = tuple(one for one in (due, line) if one is not None)
        return attrs.evolve(page, sections=(*first, *page.sections))
    return record_page(loaded, bike_of(desk.files, ref), units_of(desk, loaded.record))


def _is_today(desk: Desk, day: Ref) -> bool:
    return desk.files.data(day).get("date") == desk.now().date()


def _is_over(desk: Desk, day: Ref) -> bool:
    """Return whether a day is past, or is today and was ridden already."""
    loaded = desk.files.read(day)
    held = loaded.record if loaded is not None else None
    if not isinstance(held, RidingDay) or held.date is None or held.date > desk.now().date():
        return False
    return held.date < desk.now().date() or bool(who_rode(desk, day, held))


def shows_record(ref: Ref) -> bool:
    return ref.kind not in ("session", "profile")


def go_to_day(host: Host) -> None:
    if host.place.room == "record" and host.place.record is not None and host.place.record.kind == "day":
        host.go(
            attrs.evolve(host.place, room="after" if _is_over(host.desk, host.place.record) else "before")
        )
        return
    named = host.desk.files.data(host.place.subject).get("day") if host.place.subject else None
    ref = Ref("day", named) if isinstance(named, str) else None
    if ref is None or host.desk.files.path_of(ref) is None:
        host.board.say("this session has no day yet: s, then enter on its day")
        return
    action, row = host.board.page.leads or ("", ())
    if action == "day" and row[0] == str(ref):
        host.jump(ref, row[1:-1])
    else:
        host.open(ref)

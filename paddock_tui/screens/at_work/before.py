"""Before the day: what it needs, for each rider and bike; `v` makes the first session."""

from paddock_tui.desk.day.before import day_to_come, first_session, who_goes
from paddock_tui.pages.before import STARTS, BeforeMemory
from paddock_tui.pages.rows import Page
from paddock_tui.records.day import RidingDay
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.room import PageContext


def _named(record: Ref | None) -> Ref | None:
    return record if record is not None and record.kind == "day" else None


def make_page(asked: PageContext) -> Page:
    return asked.state.of(BeforeMemory).page(asked.desk, _named(asked.place.record))


def make_day(host: Host) -> None:
    """Make the first session of the rider and bike under the cursor, or of the first that has none."""
    desk, rows = host.desk, host.board.page.rows()
    ref = day_to_come(desk, _named(host.place.record))
    loaded = desk.files.read(ref) if ref is not None else None
    day = loaded.possible if loaded is not None else None
    cursor = host.board.cursor_row
    wanted = [row.key for row in (cursor, *rows) if row is not None and row.key.startswith(STARTS)]
    going = who_goes(desk, ref, day) if ref is not None and isinstance(day, RidingDay) else ()
    made = next((one for one in going if wanted and f"{STARTS}{one.rider} {one.bike}" == wanted[0]), None)
    if ref is None or made is None:
        host.board.say("no first session to make here: g, then n makes one")
        return
    _, step = first_session(desk, ref, made)
    host.attempt(step.sentence() if isinstance(step, InputError) else step)

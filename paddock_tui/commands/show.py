"""`show`: a garage, or one of its records, as plain text."""

from paddock_tui.commands.common import NOT_DONE, OK, columns, find_ref, open_desk, say
from paddock_tui.pages.garage import garage_page
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.record import record_page
from paddock_tui.records.bike import Bike
from paddock_tui.records.paths import Ref


def show(folder: str, wanted: str | None, *, paths: bool = False) -> int:
    """Print the garage's contents, or one record; status 3 where its file cannot be read."""
    desk = open_desk(folder)
    if wanted is None:
        say(plain_page(garage_page(desk), columns()))
        return OK
    ref = find_ref(desk, wanted)
    loaded = desk.files.read(ref)
    if loaded is None:
        return NOT_DONE
    named = getattr(loaded.record, "bike", None)
    bike = desk.files.read(Ref("bike", named)) if isinstance(named, str) else None
    known = bike.record if bike is not None and isinstance(bike.record, Bike) else None
    rider = getattr(loaded.record, "rider", None)
    page = record_page(loaded, known, desk.units(rider if isinstance(rider, str) else None))
    say(plain_page(page, columns(), paths=paths))
    return NOT_DONE if loaded.record is None else OK

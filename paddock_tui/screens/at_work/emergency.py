"""The emergency page on the screen: typed like any other row, but written to the rider's own file alone."""

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.emergency import emergency, emergency_standing, put
from paddock_tui.entry.typing_kinds import chosen
from paddock_tui.pages.emergency import EMERGENCY, emergency_page, key_of, riders_page
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.emergency import shapes
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.screens.digits import begun, followed
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.screens.room import PageContext
from paddock_tui.store.emergency import NotThisFile, riders_of_files, write_text
from paddock_tui.widgets import messages
from paddock_tui.widgets.cursor import next_open


@attrs.define
class EmergencySteps:
    """What this run changed, to be taken back until it ends: rider, text before, text after."""

    done: list[tuple[str, str | None, str | None]] = attrs.field(factory=list)
    undone: list[tuple[str, str | None, str | None]] = attrs.field(factory=list)


def riders(desk: Desk, subject: Ref | None) -> list[tuple[Ref, str]]:
    """List the riders with their names, the one looked at first."""
    named = desk.files.data(subject).get("rider") if subject is not None else None
    found = []
    for ref in desk.files.listing("rider"):
        loaded = desk.files.read(ref)
        record = loaded.record if loaded is not None else None
        if isinstance(record, Rider) and record.retired is not None and ref.id != named:
            continue
        found.append((ref, (isinstance(record, Rider) and record.name) or ref.id))
    return sorted(found, key=lambda one: one[0].id != named)


def make_page(asked: PageContext) -> Page:
    desk, today = asked.desk, asked.desk.now().date()
    everybody = riders(desk, asked.subject)
    ref = asked.place.record
    name = next((name for one, name in everybody if one == ref), None)
    if ref is None or ref.kind != "rider" or name is None:
        known = {one.id for one in desk.files.listing("rider")}
        said = [(one, name, emergency_standing(desk.root, one.id, today)) for one, name in everybody]
        return riders_page(said, [one for one in riders_of_files(desk.root) if one not in known])
    try:
        return emergency_page(ref.id, name, emergency(desk.root, ref.id), today)
    except NotThisFile as error:
        return emergency_page(ref.id, name, None, today, str(error))


def go(host: Host) -> None:
    """Go to the page of the only rider, or to the choice among several."""
    everybody = riders(host.desk, host.place.subject)
    record = everybody[0][0] if len(everybody) == 1 else None
    host.go(attrs.evolve(host.place, room=EMERGENCY, record=record))


def hears(host: Host, message: messages.RowMessage) -> bool:
    """Take the keys on the page's rows; whether the message was for one of them."""
    row, about = message.row, key_of(message.row)
    if about is None:
        return _in_list(host, row, message)
    if isinstance(message, messages.Accepted):
        _accepted(host, row, message.text)
    elif isinstance(message, messages.Editing):
        followed(host, row, message.text, lambda row, text: _accepted(host, row, text))
    elif isinstance(message, messages.Digit):
        begun(host, row, shapes()[about[1]][2], message.text, lambda row, text: _accepted(host, row, text))
    elif isinstance(message, messages.Toggled):
        _agreed(host, about[0], row.known is False) if about[1] == "consent" else host.board.edit()
    elif isinstance(message, messages.Cleared):
        _agreed(host, about[0], False) if about[1] == "consent" else _put(host, about, None)
    elif isinstance(message, messages.Stepped):
        host.board.say(f"{row.label} has no steps: enter edits it")
    else:
        return False
    return True


def _in_list(host: Host, row: Row, message: messages.RowMessage) -> bool:
    """Open the page of the rider under the cursor, or of the one whose number is typed."""
    rows = [one for one in host.board.page.rows() if one.kind == "link"]
    if isinstance(message, messages.Chosen) and row.kind == "link":
        _open(host, row.key)
    elif isinstance(message, messages.Digit) and 0 < int(message.text) <= len(rows):
        _open(host, rows[int(message.text) - 1].key)
    return True


def _open(host: Host, rider: str) -> None:
    host.go(attrs.evolve(host.place, room=EMERGENCY, record=Ref("rider", rider)))


def _accepted(host: Host, row: Row, text: str) -> None:
    """Keep what was typed, or say what is wrong with it."""
    about = key_of(row)
    assert about is not None
    if about[1] == "consent":
        _agreed(host, about[0], text.strip().casefold().startswith("y"))
        return
    found = shapes()[about[1]][2].read(chosen(row.choices, text)) if text.strip() else None
    if isinstance(found, InputError):
        _wrong(host, found.sentence())
    else:
        _put(host, about, found)


def _agreed(host: Host, rider: str, agrees: bool) -> None:
    """Note that the rider agrees; what stands there goes with an agreement that is taken back."""
    if agrees:
        _put(host, (rider, "consent"), host.desk.now().date())
        return

    def answered(_: str) -> str:
        _put(host, (rider, "consent"), None)
        return ""

    words = "the whole page goes with it: enter deletes it, escape leaves it"
    host.ask(Question(words, answered, declined="nothing was changed", confirms=True))


def _put(host: Host, about: tuple[str, str], value: object) -> None:
    try:
        before, after = put(host.desk.root, *about, value)
    except NotThisFile as error:
        _wrong(host, str(error))
        return
    steps = host.state.of(EmergencySteps)
    if before != after:
        steps.done.append((about[0], before, after))
        steps.undone.clear()
    host.board.done()
    host.draw()
    if value is not None:
        _go_on(host, about)
    host.board.say("saved on this laptop alone, u undoes while the program runs")


def _go_on(host: Host, about: tuple[str, str]) -> None:
    """Go to the next row that nobody filled in; once the rider agreed to the first one."""
    page = host.board.page
    at = next((at for at, row in enumerate(page.rows()) if key_of(row) == about), -1)
    left = next_open(page, -1 if about[1] == "consent" else at)
    if left is not None:
        host.board.go(page.rows()[left].identity)


def _wrong(host: Host, why: str) -> None:
    if host.board.is_typing:
        host.board.refuse(why)
    else:
        host.board.say(why)


def undo(host: Host) -> None:
    """Take back the last change of an emergency page of this run."""
    steps = host.state.of(EmergencySteps)
    if not steps.done:
        host.board.say("nothing of this page was changed since the program started: g, then u")
        return
    rider, before, after = steps.done[-1]
    if _written(host, rider, after, before, "undone"):
        steps.undone.append(steps.done.pop())


def redo(host: Host) -> None:
    """Do again what was taken back here."""
    steps = host.state.of(EmergencySteps)
    if not steps.undone:
        host.board.say("nothing to do again: y follows u")
        return
    rider, before, after = steps.undone[-1]
    if _written(host, rider, before, after, "done again"):
        steps.done.append(steps.undone.pop())


def _written(host: Host, rider: str, old: str | None, new: str | None, word: str) -> bool:
    try:
        write_text(host.desk.root, rider, old, new)
    except NotThisFile as error:
        host.board.say(str(error))
        return False
    host.draw()
    host.board.say(word)
    return True

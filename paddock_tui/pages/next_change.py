"""The next change as a page: what comes before, the one proposal, what waits, and what is decided."""

from collections.abc import Iterator, Mapping

import attrs

from paddock_tui.advice.next_change import CAUSES, Advised, Kind, Proposal
from paddock_tui.desk.answers import Reading
from paddock_tui.desk.debrief.rows import CHANGE
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import field_row
from paddock_tui.records.bike import Bike
from paddock_tui.records.common import Units
from paddock_tui.records.differences import SetUpDifference, differences
from paddock_tui.records.fields_of_record import field_at
from paddock_tui.records.paths import Ref
from paddock_tui.records.session import Session
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

CAUTION = "a starting point: the manual, a technician and your own feel come first; one change, the same laps"

ANSWER = "answer "
"""What the key of a row begins with that answers a question."""

PROPOSED, OWN = "proposed", "own"


@attrs.frozen
class Coming:
    """The session made from the ridden one, what the review says of how it was changed, and the bike."""

    loaded: Loaded
    method: str = ""
    bike: Bike | None = None


def next_change_page(
    advised: Advised, ridden: Loaded, coming: Coming | None, heading: str, units: Units
) -> Page:
    """Make the page of a ridden session; `coming` is the session made from it, where there is one."""
    sections = [
        Section("the next change", tuple(_proposal(advised, ridden.ref, PROPOSED))),
    ]
    if advised.waiting:
        waiting = [
            row for place, one in enumerate(advised.waiting, 1) for row in _waiting(one, ridden.ref, place)
        ]
        sections.append(Section("waits behind it", tuple(waiting), "one at a time tells most"))
    sections.append(_decided(ridden, coming, units))
    if advised.learnt:
        sections.append(Section("what came of the last step", tuple(_lines(advised.learnt, "learnt"))))
    sections.append(Section("comes before any change", tuple(_looked(advised))))
    return Page(f"next change · {heading}", tuple(sections), judged=False, caution=CAUTION)


def next_change_awaited(read: Reading, heading: str) -> Page:
    """Make the page of a session whose earlier ones are still being read: no change is named before."""
    said = Row("", f"{read.words()}, then the one next change stands here", kind="text", key=PROPOSED)
    section = Section("the next change", (said,))
    return Page(f"next change · {heading}", (section,), judged=False, caution=CAUTION)


def _why_this(advised: Advised) -> tuple[str, ...]:
    """Say which cause spoke, and why each that comes before it did not."""
    spoke = next((one.label for one in CAUSES if one.id == advised.cause), advised.cause)
    return (
        f"spoke: {spoke}",
        *(f"{one.label}: {one.reason}" for one in advised.silent),
    )


def _lines(texts: tuple[str, ...], key: str) -> Iterator[Row]:
    for place, text in enumerate(texts):
        yield Row("", printable(text), kind="text", key=f"{key} {place}")


def _looked(advised: Advised) -> Iterator[Row]:
    yield from _lines(advised.beside, "beside")
    for one in advised.looked_at:
        mark = {True: "ok", False: "put right first", None: "not assessed"}[one.right]
        said = one.said if one.right and one.said.startswith("ok") else f"{mark}: {one.said}"
        yield Row(one.what, said, kind="text", key=f"looked {one.what}", known=one.right is not None)


def _proposal(advised: Advised, ref: Ref, key: str) -> Iterator[Row]:
    one, working = advised.proposal, tuple(printable(line) for line in _why_this(advised))
    offer = one.move.puts if one.move is not None else ()
    takes = "v takes it into the next session" if one.kind is Kind.CHANGE else ""
    if one.kind is Kind.SAME:
        takes = (
            "v makes the next session the same, with this aim"
            if one.aim
            else "v makes the next session the same"
        )
    yield Row(
        one.kind.value, printable(one.text), aside=takes, kind="text", key=key, offer=offer, working=working
    )
    said = (
        ("for", one.symptom),
        ("why", one.why),
        ("expect", one.expect),
        ("watch", one.watch),
        ("aim", one.aim),
    )
    for label, text in said:
        if text:
            yield Row(label, printable(text), kind="text", key=f"{key} {label}", offer=offer, working=working)
    yield from _answers(one, ref)
    for place, text in enumerate(one.passed_over):
        if text.rstrip(".").casefold() != one.text.rstrip(".").casefold():
            yield Row("passed over", printable(text), kind="text", key=f"{key} passed {place}")


def _answers(one: Proposal, ref: Ref) -> Iterator[Row]:
    if one.question is None or not one.answer_at:
        return
    ref = Ref("session", one.answer_of) if one.answer_of else ref
    for place, (word, meaning) in enumerate(one.question.answers, 1):
        yield Row(
            str(place),
            meaning,
            aside="enter",
            kind="link",
            ref=ref,
            path=one.answer_at,
            key=f"{ANSWER}{word}",
        )
    if one.question.none is not None:
        path, word = one.question.none
        label = str(len(one.question.answers) + 1)
        yield Row(
            label, "none of these", aside="enter", kind="link", ref=ref, path=path, key=f"{ANSWER}{word}"
        )


def _waiting(one: Proposal, ref: Ref, place: int) -> Iterator[Row]:
    offer = one.move.puts if one.move is not None else ()
    yield Row(
        one.kind.value, printable(one.text), aside=one.symptom, kind="text", key=f"waits {place}", offer=offer
    )
    yield from _answers(one, ref)


def _decided(ridden: Loaded, coming: Coming | None, units: Units) -> Section:
    """Show what the next session changes, with its reasons to be edited; several are allowed, and said so."""
    own = Row("your own", "enter: change it on the set-up page of the next session", kind="link", key=OWN)
    if coming is None:
        none = Row("", "there is no next session yet: v, or n", kind="text", key="none yet")
        return Section("decided", (none, own))
    title = f"decided: session {coming.loaded.ref.id}"
    before, after = ridden.record, coming.loaded.record
    if not isinstance(before, Session) or not isinstance(after, Session):
        return Section(title, (own,))
    found = [one for one in differences(before.setup, after.setup, coming.bike) if one.known]
    words = _in_words(coming.loaded)
    if not found and not words:
        return Section(title, (Row("", "nothing yet: the same again", kind="text", key="same"), own))
    rows = [Row("in words", printable(text), kind="text", key="decided in words") for text in words]
    for one in found:
        key = f"decided {one.kind} {one.key}"
        rows.append(Row(printable(one.label), printable(one.words), kind="text", key=key))
        rows += _reasons(coming.loaded, one, units)
    return Section(title, (*rows, own), printable(coming.method))


def _in_words(coming: Loaded) -> list[str]:
    """List the changes that were written down at the return, in the rider's words; nothing is set by them."""
    notes = coming.record.notes.values() if isinstance(coming.record, Session) else ()
    texts = (note.text or "" for note in notes)
    return [text.removeprefix(CHANGE) for text in texts if text.startswith(CHANGE)]


def _reasons(coming: Loaded, one: SetUpDifference, units: Units) -> Iterator[Row]:
    for word in ("why", "expect"):
        field = field_at("session", ("because", one.kind, one.key, word), coming.record, None)
        if field is not None:
            yield field_row(coming, field, units)


def proposal_of(advised: Advised, row: Row | None) -> Proposal:
    """Return the proposal that a row stands for: the one, or one that waits behind it."""
    if row is not None and row.key.startswith("waits "):
        return advised.waiting[int(row.key.removeprefix("waits ")) - 1]
    return advised.proposal


def answers_of(rows: tuple[Row, ...], row: Row) -> Mapping[str, Row]:
    """Return the answers that a digit stands for beside a row: those of the same question, by number."""
    mine: dict[str, Row] = {}
    for one in rows:
        if not one.key.startswith(ANSWER) or one.label == "1":
            if row in mine.values():
                break
            mine = {}
        if one.key.startswith(ANSWER):
            mine[one.label] = one
    return mine if row in mine.values() else {}

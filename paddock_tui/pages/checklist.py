"""The checklist page: the lists that apply to the session, their items as they stand, the one at hand."""

from collections.abc import Iterable, Iterator, Mapping

import attrs

from paddock_tui.facts import Situation
from paddock_tui.facts.checklists import (
    OPEN,
    TO_FIX,
    AtHand,
    Checked,
    ItemState,
    ListState,
    at_hand,
    day_place,
)
from paddock_tui.facts.packing import Served
from paddock_tui.matters.fold import day_words
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.values import trouble_at
from paddock_tui.records.checklist import DAY_STAGES
from paddock_tui.records.packing import PACKING
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.garage import Loaded
from paddock_tui.text import printable

KEYS = "1 ok, 2 to fix, 3 not applicable, backspace: open again; the whole list: 4 on paper, 5 by inspection"
"""What the keys do on a row of this page."""


def checklist_page(
    situation: Situation,
    heading: str,
    loaded: Iterable[Loaded] = (),
    served: Mapping[str, Served] | None = None,
) -> Page:
    """Make the page; `loaded` are the records that keep the answers, for what cannot be read there.

    `served` says how each thing that is packed served on earlier days.
    """
    checked = checked_of(situation)
    hand = hand_of(situation, checked)
    files = {one.ref: one for one in loaded}
    why_not = _why_not(situation)
    sections = [
        Section(
            printable(one.name),
            tuple(_list_rows(one, situation, files, hand, why_not, served or {})),
            _counts(one),
            at_hand=hand is not None and one.stage == hand.stage,
        )
        for one in checked.lists
    ]
    if checked.others:
        rows = tuple(_item_row(item, situation, files, "") for item in checked.others)
        sections.append(Section("answered, on none of these lists", rows))
    sections += _left_out(situation, bool(checked.lists))
    said = f"{hand.stage}: {hand.why}" if hand is not None else "checklist, no stage at hand"
    return Page(f"{said} · {heading}", tuple(sections))


def first_open(situation: Situation) -> tuple[str, ...] | None:
    """Return the identity of the first open item of the stage at hand, to begin at; None without one."""
    checked = checked_of(situation)
    hand = hand_of(situation, checked)
    for one in checked.lists:
        if hand is not None and one.stage == hand.stage and one.open:
            return _item_row(one.open[0], situation, {}, "").identity
    return None


def checked_of(situation: Situation) -> Checked:
    """Return the lists of a situation; none where there is no session."""
    found = situation.facts().get("checked")
    return found if isinstance(found, Checked) else Checked()


def hand_of(situation: Situation, checked: Checked) -> AtHand | None:
    """Return the stage at hand; None where nothing is open in what is due."""
    if situation.session is None:
        return None
    return at_hand(
        checked.lists,
        situation.session,
        situation.tyres,
        situation.earlier,
        situation.source,
        situation.now.date(),
    )


def _why_not(situation: Situation) -> str:
    """Say why the day's answers cannot be kept; empty where they can."""
    if situation.session is None:
        return ""
    place = day_place(situation.session, situation.day)
    return place if isinstance(place, str) else ""


def _counts(one: ListState) -> str:
    words = [f"{len(one.open)} open of {len(one.items)}"]
    if one.to_fix:
        words.append(f"{len(one.to_fix)} to fix")
    return ", ".join(words)


def _list_rows(
    one: ListState,
    situation: Situation,
    files: dict[Ref, Loaded],
    hand: AtHand | None,
    why_not: str,
    served: Mapping[str, Served],
) -> Iterator[Row]:
    if hand is not None and hand.stage == one.stage:
        yield Row("", f"at hand: {hand.why}", kind="heading", key=f"at hand {one.id}")
    shut = why_not if one.stage in DAY_STAGES else ""
    if shut:
        yield Row("", shut, kind="heading", key=f"shut {one.id}")
    for item in one.items:
        row = _item_row(item, situation, files, shut)
        was = served[item.id].words() if one.stage == PACKING and item.id in served else ""
        aside = printable("; ".join(filter(None, (was, item.goes, row.aside))))
        yield attrs.evolve(row, aside=aside) if aside != row.aside else row


def _item_row(item: ItemState, situation: Situation, files: dict[Ref, Loaded], shut: str) -> Row:
    ref = situation.refs.get("day" if item.in_day else "session")
    path: Path = (*item.path, "status") if item.path else ()
    return Row(
        label=item.status,
        value=printable(item.text),
        aside=printable(_said(item)),
        kind="check",
        ref=ref if path else None,
        path=path,
        shut=shut,
        trouble=_trouble(files.get(ref) if ref is not None else None, path),
        severity=(item.to_fix or "caution") if item.status == TO_FIX else "",
        known=item.status != OPEN,
        key="" if path else item.id,
    )


def _said(item: ItemState) -> str:
    """Say who answered when, or what the record says about it."""
    if item.said:
        return item.said
    words = [item.to_fix or "caution, no list says how bad"] if item.status == TO_FIX else []
    if item.since_day is not None:
        words.append(f"still open since {day_words(item.since_day)}")
    elif item.since is not None:
        words.append(f"session {item.since}")
    check = item.check
    words += [f"{check.at:%H:%M}"] if check.at is not None else []
    words += [check.by] if check.by is not None else []
    return " ".join(words)


def _trouble(loaded: Loaded | None, path: Path) -> str:
    """Say what stands in the file where an answer cannot be read."""
    found = trouble_at(loaded, path) if loaded is not None and path else None
    return printable(f"cannot be read: {found.found}; expected {found.expected}") if found else ""


def _left_out(situation: Situation, any_lists: bool) -> Iterator[Section]:
    """Say which lists are shown nowhere, and why nothing is shown."""
    lost = sorted(
        key for key, one in situation.checklists.items() if one.stage is None and one.retired is None
    )
    rows = [Row("", f"{key}: no stage, so it is shown nowhere", kind="text", key=key) for key in lost]
    session = situation.session
    if session is not None and session.kind == "road" and session.day is None:
        rows.append(
            Row("", "On the road without a day, the day's lists have no place.", kind="text", key="road")
        )
    if not any_lists and not rows:
        rows.append(Row("", "There is no checklist in this garage yet.", kind="text", key="none"))
    if rows:
        yield Section("left out" if any_lists else "no list", tuple(rows))

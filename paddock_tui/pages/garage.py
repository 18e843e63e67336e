"""The garage page: its days and sessions, newest first, everything else, and problems of what was read."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

from paddock_tui.desk import Desk
from paddock_tui.desk.lookup import Glance, glance, order
from paddock_tui.pages.problems import problem_rows
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.pages.setup import short_date
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import FOLDERS, GARAGE, Ref
from paddock_tui.store.data import lookup
from paddock_tui.store.presence import others
from paddock_tui.text import printable

_TITLES = {
    "day": "days",
    "bike": "bikes",
    "rider": "riders",
    "venue": "venues",
    "tyres": "tyre sets",
    "profile": "profiles",
    "checklist": "checklists",
}


def garage_page(desk: Desk, *, retired: bool = False, now: str = "") -> Page:
    """List what is in a garage. Retired records are left out unless asked for; `now` is said at the top."""
    sessions = tuple(_session_rows(desk, retired))
    note = now or ("" if sessions else "none yet")
    sections = [Section("sessions", (*sessions, _new_row("session", "session")), note)]
    for kind, title in _TITLES.items():
        rows = tuple(_record_rows(desk, kind, retired))
        sections.append(Section(title, (*rows, _new_row(kind, title)), "" if rows else "none yet"))
    problems = tuple(problem_rows(problems_read(desk)))
    heading = garage_heading(desk)
    present = others(desk.root, desk.now())
    if present:
        heading = f"{heading} · open too: {printable(', '.join(map(str, present)))}"
    if problems:
        count = "1 problem" if len(problems) == 1 else f"{len(problems)} problems"
        heading = f"{heading} · {count}, see below"
        sections.append(Section("problems", problems, "enter corrects"))
    return Page(heading, tuple(sections), judged=False)


def garage_heading(desk: Desk) -> str:
    """Name the garage by its own name, else by its folder's."""
    name = lookup(desk.files.data(GARAGE), ("name",))
    words = name if isinstance(name, str) else desk.files.root.resolve().name
    return f"garage · {printable(words)}"


def _new_row(kind: str, title: str) -> Row:
    return Row(f"new {title.removesuffix('s')}", kind="add", adds=(kind,), known=False, key=f"new {kind}")


def problems_read(desk: Desk) -> Iterator[InputError]:
    """List what could not be read in everything that the page opens."""
    for kind in ("garage", *FOLDERS):
        refs = (GARAGE,) if kind == "garage" else desk.files.listing(kind)
        for ref in refs:
            loaded = desk.files.read(ref)
            yield from loaded.troubles if loaded is not None else ()
    yield from desk.files.strays()


def _session_rows(desk: Desk, retired: bool) -> Iterator[Row]:
    in_hand = desk.session_in_hand()
    seen: list[Glance] = []
    for ref in desk.files.listing("session"):
        data = desk.files.data(ref)
        if "retired" in data and not retired:
            continue
        found = glance(ref, {key: value for key, value in data.items() if key != "retired"})
        if found is not None:
            seen.append(found)
        else:
            yield Row(ref.id, "its date is not known, or it cannot be read", ref=ref, opens=ref, kind="link")
    for one in sorted(seen, key=order, reverse=True):
        data = desk.files.data(one.ref)
        coming = "to come" if one.date >= desk.now().date() else "not ridden"
        state = "in hand" if one.ref == in_hand else "ridden" if one.ridden else coming
        state = "retired" if "retired" in data else state
        state += _still_open(desk, one.ref) if one.ref == in_hand else ""
        yield Row(
            label=one.ref.id,
            value=printable(" · ".join(_said_of_session(one, data))),
            aside=state,
            kind="link",
            ref=one.ref,
            opens=one.ref,
            key=one.ref.id,
        )


def _still_open(desk: Desk, session: Ref) -> str:
    """Count what earlier sessions left open for the session in hand, with the day of the first."""
    found = desk.assembled(session).situation.facts().get("open_matters")
    before = [one for one in found if one.ref is not None] if isinstance(found, tuple) else []
    if not before:
        return ""
    since = min((one.since for one in before if one.since is not None), default=None)
    return f" · {len(before)} still open" + (f" since {since:%a}" if since is not None else "")


def _said_of_session(one: Glance, data: Mapping[str, Any]) -> Iterator[str]:
    """Say what the name of a session does not say already."""
    if not one.ref.id.startswith(one.date.isoformat()):
        yield f"{short_date(one.date)} {one.date.year}"
    if isinstance(data.get("start"), dt.time):
        yield f"{one.start:%H:%M}"
    for key in ("bike", "surface", "rider", "kind"):
        word = data.get(key)
        if isinstance(word, str) and not (key == "bike" and one.ref.id.endswith(f"-{word}")):
            yield word


def _record_rows(desk: Desk, kind: str, retired: bool) -> Iterator[Row]:
    refs = desk.files.listing(kind)
    for ref in reversed(refs) if kind == "day" else refs:
        data = desk.files.data(ref)
        if "retired" in data and not retired:
            continue
        aside = "retired" if "retired" in data else _said_of(ref, data)
        name = data.get("name")
        label = printable(name) if isinstance(name, str) and name.strip() else ref.id
        value = ref.id if label != ref.id else ""
        yield Row(label, value, aside=printable(aside), kind="link", ref=ref, opens=ref, key=ref.id)


def _said_of(ref: Ref, data: object) -> str:
    keys = {
        "day": ("organiser", "group"),
        "rider": ("group",),
        "profile": ("bike", "made_for"),
        "checklist": ("stage",),
        "tyres": (),
    }.get(ref.kind, ())
    if not isinstance(data, dict):
        return ""
    return " · ".join(str(data[key]) for key in keys if isinstance(data.get(key), str))

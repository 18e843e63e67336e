"""What the program says of keys, written with those of one's own: and nothing else is touched."""

import re
from collections.abc import Iterator
from pathlib import Path

import attrs

from paddock_tui.help import names
from paddock_tui.pages.actions import printed
from paddock_tui.pages.help import found_page, room_help
from paddock_tui.pages.own_keys import like_keys, own_keys, page_with, said_with
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.records.paths import Ref
from paddock_tui.screens.registry import ACTIONS
from tests.every import every
from tests.source import texts_of

ALL = [
    attrs.evolve(one, key=f"f{at}", usual=one.key) if one.key else one for at, one in enumerate(ACTIONS, 1)
]
"""Every action on a key that no text names: f1 and on, more than a keyboard has."""

OWN = own_keys(ALL)
FOLDER = Path(__file__).parents[2] / "paddock_tui"
SAID_IN = ("screens", "pages", "desk", "advice", "facts", "rules", "matters")
NAMES_A_KEY = re.compile(
    r"(?<![\w`'.+-])([a-z?/])(?:, then | then | undoes| reviews| shows| makes| takes | goes | comes | stamps"
    r"| proposes| opens| says | explains| sets | fixes | drops | follows| leads)"
    r"|: ([a-z]), then |: ([a-z])$|then ([b-z])(?:$| )"
)


def strings() -> Iterator[str]:
    """List the texts of the program that may be said, without docstrings."""
    for folder in SAID_IN:
        for file in sorted((FOLDER / folder).rglob("*.py")):
            yield from (text for _, text in texts_of(file))


def test_every_text_that_names_a_key_is_written_with_that_of_ones_own() -> None:
    found = [text for text in dict.fromkeys(strings()) if NAMES_A_KEY.search(text)]

    assert len(found) > 40
    left = [(text, said_with(text, OWN)) for text in found if NAMES_A_KEY.search(said_with(text, OWN))]
    assert left == []


@every(
    ("text", "said"),
    [
        ("there is no session here: {g}, then enter on one, or {n}", None),
        ("traction 3 -> 4, {u} undoes", None),
        ("traction 3 -> 4, alt+{u} undoes", None),
        ("nothing to do again: {y} follows {u}", None),
        ("changed by another program: 3 facts in day/x; {r} reviews", None),
        ("7 facts from another laptop: {r}", None),
        ("this session was ridden: {n} makes the next one, then {m}, wet package", None),
        ("put the cursor on a change of the ledger: {l}", None),
        ("take the wet package ({m}, wet package)", None),
        ("yes or no: y, n or space", ""),
        ("6.5 l then 4 l, a session that a rider takes", ""),
        ("lap 3, 45.1, is far from the others", ""),
        ("238 is 2.38 bar; it goes on", ""),
        ("f front, r rear", ""),
    ],
)
def test_a_message_is_written_with_own_keys_and_figures_and_articles_stay(
    text: str, said: str | None
) -> None:
    usual = re.sub(r"[{}]", "", text)

    assert said_with(usual, {}) == usual
    wanted = re.sub(r"\{(.)\}", lambda found: OWN[found[1]], text) if said is None else usual
    assert said_with(usual, OWN) == wanted


@every("name", names())
def test_the_prose_of_every_topic_names_no_usual_key_and_no_mark(name: str) -> None:
    text = (FOLDER / "help" / "topics" / f"{name}.md").read_text(encoding="utf-8")
    keys = {key for key in re.findall(r"`([^`\s])`", text) if key in OWN}
    for actions, wanted in ((ALL, OWN), (list(ACTIONS), {})):
        page = found_page(name, actions)
        assert page is not None
        said = " ".join(f"{row.label} {row.value} {row.aside}" for row in page.rows())
        assert not re.search("[\ue000\ue001]", said + page.heading)
        assert all(re.search(rf"(?<!\w){re.escape(wanted.get(key, key))}(?!\w)", said) for key in keys)
    room = room_help(name, ALL)
    assert not re.search("[\ue000\ue001]", " ".join(row.label + row.value for row in room.rows()))


def test_a_key_that_two_actions_exchanged_is_written_once() -> None:
    keys = {one.id: one for one in ACTIONS}
    undo, redo = keys["undo"], keys["redo"]
    swapped = own_keys(
        [attrs.evolve(undo, key=redo.key, usual=undo.key), attrs.evolve(redo, key=undo.key, usual=redo.key)]
    )

    assert said_with("nothing to do again: y follows u", swapped) == "nothing to do again: u follows y"
    assert printed(undo) == "u"


def test_letters_that_come_from_the_records_stay_as_their_owner_wrote_them() -> None:
    way = "left rocker: s, then r"
    row = Row("traction", "3", aside=f"{way}; u undoes", kind="ask", ref=Ref("session", "x"))
    page = Page("dash", (Section("rows", (row,), "s, then r"),))

    quoted = like_keys((way, "drive out of 7"), OWN)

    assert quoted == (way,)
    found = page_with(page, OWN, quoted)
    assert found.sections[0].rows[0].aside == f"{way}; {OWN['u']} undoes"
    assert said_with(f"note {way}: look: r", OWN, quoted) == f"note {way}: look: {OWN['r']}"

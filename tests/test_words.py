"""The words that users read: what must stand in no string of the program, and a caution that is never cut."""

import ast
import re
from collections.abc import Iterable, Iterator
from pathlib import Path

import paddock_tui
from paddock_tui.help.topics import words
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.review import SHORT_CAUTION
from paddock_tui.pages.rows import Page, Row
from paddock_tui.records.session_parts import SYMPTOMS_ONCE
from paddock_tui.records.shown_words import SHOWN
from paddock_tui.text import width
from tests.every import every
from tests.forbidden import FORBIDDEN
from tests.forbidden.dangers import Where
from tests.forbidden.literals import among, needed
from tests.source import nodes_of, texts_of, tree_of

PACKAGE = Path(paddock_tui.__file__).parent

STORED = frozenset(
    {*SHOWN, *SYMPTOMS_ONCE, "mended", "mend", "ledger", "bench", "dress", "key-on", "key-off"}
)
"""Words of files and of the program itself, which stand for what is said otherwise on every page."""

ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+|net")
"""Ids of rules and names of facts, which are kept as files and rules know them."""

SAMPLE = PACKAGE.parent / "sample_garage"
LOOKS = PACKAGE.parent / "tests" / "looks"
DAYS = PACKAGE.parent / "tests" / "desk" / "days"
SAID = PACKAGE.parent / "tests" / "rules" / "said"

_FREE_TEXT = re.compile(r"(?:text|note|said|aim|reason|expect|why|name|best_change) = \"(.*)\"")
"""Values of the sample that somebody wrote for others to read."""

_TOLD = re.compile(r"   (?!facts|parts|sets)|short: ")
"""Lines of what the rules say that reach a page."""

Said = tuple[str, int, str]
"""Where a text stands, its line, and the text."""


def strings() -> Iterator[Said]:
    """List every string that is no docstring, help, README, what rules say and the sample's words."""
    for path in sorted(PACKAGE.rglob("*.py")):
        name = path.relative_to(PACKAGE).as_posix()
        yield from ((name, line, text) for line, text in (*texts_of(path), *_joined(path)))
    for path in (*sorted(PACKAGE.rglob("*.md")), PACKAGE.parent / "README.md"):
        yield from _lines(path)
    for path in sorted(SAID.glob("*.txt")):
        yield from (one for one in _lines(path) if _TOLD.match(one[2]))
    for path in sorted(SAMPLE.rglob("*.toml")):
        for name, at, line in _lines(path):
            value, _, comment = line.partition(" # ") if not line.startswith("#") else ("", "", line)
            found = _FREE_TEXT.search(value)
            yield from ((name, at, text) for text in (found[1] if found else "", comment) if text)


def pages() -> Iterator[Said]:
    """List the lines of every page as it is drawn, at 80 columns and wider."""
    for path in sorted(LOOKS.glob("*.txt")):
        if "-40x20" not in path.name:
            yield from ((name, at, " ".join(line.rstrip("|").split())) for name, at, line in _lines(path))


def days() -> Iterator[Said]:
    """List what is printed on the days that are told, in ASCII."""
    for path in sorted(DAYS.glob("*.txt")):
        yield from _lines(path)


def _joined(path: Path) -> Iterator[tuple[int, str]]:
    """List texts with values in them whole, {} for each value: a phrase may stand across it."""
    for node in nodes_of(tree_of(path)):
        if isinstance(node, ast.JoinedStr):
            parts = (one.value if isinstance(one, ast.Constant) else "{}" for one in node.values)
            yield node.lineno, "".join(map(str, parts))


def _lines(path: Path) -> Iterator[Said]:
    lines = path.read_text(encoding="utf-8").splitlines()
    yield from ((path.relative_to(PACKAGE.parent).as_posix(), at, line) for at, line in enumerate(lines, 1))


def found_in(said: Iterable[Said], *wheres: Where) -> list[str]:
    """List what is said that no text may say, each with why."""
    places: dict[str, list[tuple[str, int]]] = {}
    for name, line, text in said:
        if text not in STORED and not ID.fullmatch(text):
            places.setdefault(text, []).append((name, line))
    whole = "\n".join(places)
    return [
        f"{name}:{line}: {text.strip()[:90]!r}: {danger}: {one.instead}"
        for danger, one in FORBIDDEN.items()
        if one.where in wheres
        for text in sorted(among(one.pattern, places, whole))
        if re.search(one.pattern, text)
        for name, line in places[text]
    ]


def test_no_text_that_a_pattern_finds_is_left_aside_before_the_search() -> None:
    texts = {text for one in FORBIDDEN.values() for text in (*one.finds, *one.leaves, one.instead)}
    whole = "\n".join(texts)
    for danger, one in FORBIDDEN.items():
        searched = among(one.pattern, texts, whole)
        assert {text for text in texts if re.search(one.pattern, text)} <= set(searched), danger


@every(
    ("pattern", "texts"),
    [
        ("abc", {"abc"}),
        (r"\ba(bcd|ef)\b", {"bcd", "ef"}),
        ("ab|c[de]f|ghi?", {"ab", "c", "gh"}),
        ("(ab)?cd+e", {"c"}),
        ("(abc)+d", {"abc"}),
        ("[Nn]othing (?!more)here", {"othing "}),
        ("ab|[cd]", None),
        ("(?i)ab", None),
        ("a?", None),
    ],
)
def test_a_pattern_tells_which_plain_texts_it_needs(pattern: str, texts: set[str] | None) -> None:
    assert needed(pattern) == texts


def test_no_string_says_what_misleads() -> None:
    assert found_in(strings(), "strings") == []


def test_no_page_says_what_misleads() -> None:
    assert found_in(pages(), "strings", "pages") == []
    assert found_in(days(), "strings") == []


def test_the_sample_points_at_no_machine_place_or_product() -> None:
    lines = (one for path in sorted(SAMPLE.rglob("*.toml")) for one in _lines(path))

    assert found_in(lines, "sample") == []


def test_no_page_shows_a_word_of_files_that_riders_say_otherwise() -> None:
    otherwise = [word for word, said in SHOWN.items() if word not in said]
    stored = re.compile(rf"\b(?:{'|'.join(map(re.escape, otherwise))})\b")

    assert [one for one in pages() if stored.search(one[2])] == []


@every("danger", list(FORBIDDEN))
def test_each_danger_is_found_and_right_uses_are_left_alone(danger: str) -> None:
    one = FORBIDDEN[danger]

    assert one.finds
    assert [text for text in one.finds if not re.search(one.pattern, text)] == []
    assert [text for text in (*one.leaves, one.instead) if re.search(one.pattern, text)] == []


@every("word", ["group", "call", "help", "riding mode", "preset", "hold", "care", "no findings", "to answer"])
def test_what_a_rider_cannot_know_is_explained(word: str) -> None:
    assert words()[word].count(". ") >= 1


def test_the_short_caution_is_never_cut() -> None:
    assert 10 < width(SHORT_CAUTION) <= 38


@every("size", [(40, 20), (60, 24), (80, 24), (120, 40)])
def test_each_page_that_judges_says_at_every_size_that_it_is_no_safety_check(size: tuple[int, int]) -> None:
    rows = tuple(
        Row("serious", "Traction control low for a wet track: 3 (range 0-10).", key=f"{n}") for n in range(9)
    )
    for findings in (rows, rows[:1], ()):
        page = Page("p", (), "CARE 9", findings=findings, judged=True, caution=SHORT_CAUTION)
        said = layout(page, View(*size)).text()
        assert "no safety check" in said or SHORT_CAUTION in said

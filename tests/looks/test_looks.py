"""Every page looks as committed; what changed is read in the difference of the texts."""

import re

import attrs
import pytest

from paddock_tui.desk import Desk
from paddock_tui.pages.folding import folded, opens
from paddock_tui.pages.layout import View, layout
from paddock_tui.pages.layout.panel import rows_width
from paddock_tui.pages.layout.pen import Line, text_of, with_units
from paddock_tui.pages.pictures.data import Pairs
from paddock_tui.pages.rows import FOLD, Page, Row
from paddock_tui.pages.rows import NOTHING as EMPTY
from paddock_tui.pages.session import ORDER
from paddock_tui.records.paths import Ref
from paddock_tui.screens.folds import lines_of, open_places
from paddock_tui.screens.place import Place
from paddock_tui.screens.registry import ROOMS, room_of
from paddock_tui.text import as_read
from paddock_tui.widgets.look import STYLES
from tests.every import every
from tests.looks import FOLDER, LOOKS, SIZES, Seen, drawn, laid_out, made_of, sizes_of
from tests.looks.pictures import renewed_pictures

RENEW = "read the difference, then write the looks anew: python -m tests.looks"


@every("name", LOOKS)
def test_a_page_looks_as_committed(name: str, desk: Desk) -> None:
    for wide, high in sizes_of(name):
        file = FOLDER / f"{name}-{wide}x{high}.txt"
        assert file.exists(), RENEW
        assert drawn(desk, LOOKS[name], (wide, high)) == file.read_text(encoding="utf-8"), RENEW


def test_every_room_has_a_look() -> None:
    assert {seen.place.room for seen in LOOKS.values()} == set(ROOMS)


LONGER = {
    ("checklist", (40, 20)): "each item of the list at hand is read whole, in two lines or three",
}
"""What takes more than two screens when it is opened, and why."""


@every("name", LOOKS)
def test_a_page_opens_on_two_screens_at_most(name: str, desk: Desk) -> None:
    for size in SIZES:
        shown = made_of(desk, LOOKS[name], size)
        page, is_open = folded(shown.whole, {}), opens(open_places(shown.review))

        hidden = [(one, row) for one in page.sections for row in one.hidden if is_open(row)]
        # Only the heading of a checklist that is not at hand stands for what is open, and says how much.
        assert all(row.kind == "check" and " open of " in one.rows[0].value for one, row in hidden), size
        lines, seen = sum(map(lines_of(page, size[0]), page.sections)), layout(page, View(*size)).body
        assert (lines > 2 * seen) == ((name, size) in LONGER), (size, lines, seen)


def test_the_session_page_begins_with_what_waits_and_goes_on_in_the_order_of_time(desk: Desk) -> None:
    shown = made_of(desk, LOOKS["session"])
    is_open = opens(open_places(shown.review))
    grades = [
        0 if any(map(is_open, one.rows)) else 1 if any(map(is_missed, one.rows)) else 2
        for one in shown.whole.sections
    ]
    titles = [one.title for one in shown.whole.sections]

    assert grades == sorted(grades)
    assert set(grades) == {0, 1, 2}
    for grade in (0, 1, 2):
        mine = [title for title, of in zip(titles, grades, strict=True) if of == grade]
        timed = [title for title, _ in ORDER if title in mine]
        assert [title for title in mine if title in timed] == timed


def is_missed(row: Row) -> bool:
    """Return whether a rule waits for the value of a row."""
    return row.kind == "field" and not row.known and row.value != EMPTY


def test_the_checklist_begins_with_the_list_at_hand(desk: Desk) -> None:
    shown = made_of(desk, LOOKS["checklist"])

    assert [one.title for one in shown.whole.sections if one.at_hand] == ["Wet swap"]
    assert shown.whole.sections[0].at_hand
    assert shown.at < 3


@every("name", LOOKS)
def test_a_terminal_of_ascii_alone_reads_every_sign(name: str, desk: Desk) -> None:
    shown = made_of(desk, LOOKS[name])
    for wide, high in sizes_of(name):
        signs, plain = (
            layout(shown.page, View(wide, high, shown.at, hints=shown.hints, plain=plain)).text()
            for plain in (False, True)
        )
        assert plain.isascii()
        assert plain.count("?") <= signs.count("?")
        assert max(map(len, plain.split("\n"))) <= wide


EVERY_SIZE = ((40, 20), (60, 24), (80, 24), (120, 40))
NARROW = 60
"""On a narrower screen a row with a bar says beside it its value alone; the rest stands under the cursor."""

WORDS = ("field", "link", "ask", "text", "check", "fold", "heading")
"""The kinds of rows that say something in words: pictures and tables cut cells in their own way."""


@every("name", LOOKS)
def test_nothing_is_cut_without_a_mark(name: str, desk: Desk) -> None:
    for size in EVERY_SIZE:
        laid = laid_out(desk, LOOKS[name], size)
        page = with_units(made_of(desk, LOOKS[name], size).page)
        wide = rows_width(size[0]) if room_of(LOOKS[name].place.room).panel else size[0]
        drawn: dict[int, str] = {}
        for line, row in zip(laid.lines, laid.owners, strict=True):
            if row is not None:
                drawn[row] = drawn.get(row, "") + squashed(text_of(line)[:wide])
        # What is only begun at the upper or the lower edge goes on beyond it, and the arrows count it.
        whole = sorted(drawn)[1 if laid.top else 0 : -1]
        lost = [
            (size, text)
            for at in whole
            if page.rows()[at].kind in WORDS and "…" not in drawn[at]
            for text in said_by(page.rows()[at])
            if squashed(text) not in drawn[at] and not (size[0] < NARROW and page.rows()[at].bar)
        ]
        assert lost == []
        head = text_of(laid.lines[0])
        assert squashed(page.heading) in squashed(head) or "…" in head


def test_adjusters_have_where_they_start_on_this_surface_beside_them(desk: Desk) -> None:
    pictures = [row.picture for row in made_of(desk, LOOKS["setup"]).whole.rows() if row.picture is not None]
    pairs = next(one for one in pictures if isinstance(one, Pairs))

    starts = {row[0]: row[list(pairs.heads).index("start")] for row in pairs.table}
    assert starts["front preload"] == "4"
    assert starts["rear preload"] == "1"
    assert {
        mark.word for pair in pairs.pairs for lane in (pair.front, pair.rear) if lane for mark in lane.marks
    } == {
        "now",
        "start",
        "last",
        "profile",
    }


UNJUDGED = ("emergency", "emergency-riders", "after", "board", "crew")
"""The looks of pages that say no verdict: a stranger's, a day's that is over, and those of several riders."""
HELD = "HOLD 1 (1 to answer) · 6 missing"
LEVER = Row(
    "hold",
    "The front brake lever is not firm.",
    kind="finding",
    severity="hold",
    more=(("why", "It will not stop the bike."), ("do", "Find out why; bleed it.")),
    short="front brake lever not firm",
    key="lever",
)


@every("name", LOOKS)
def test_a_hold_differs_from_everything_else_without_colour(name: str, desk: Desk) -> None:
    page = made_of(desk, LOOKS[name]).page
    if not page.verdict:
        assert name in UNJUDGED
        return
    found = (LEVER, *page.findings) if page.judged else page.findings
    held = attrs.evolve(page, verdict=HELD, findings=found, clock="HOLD: stay in", now="")
    for size, plain in ((40, 20), False), ((80, 24), False), ((80, 24), True):
        block, heavy, rule = ("#", "=", "-") if plain else ("█", "━", "─")
        view = View(*size, made_of(desk, LOOKS[name]).at, plain=plain)
        free, stays = layout(page, view), layout(held, view)
        assert not any(is_of_a_hold(line, heavy) for line in free.lines)

        head, *rest = stays.text().split("\n")
        assert head[0] == head[-1] == block
        assert len(head) == size[0]
        assert re.search("HOLD 1 . (DO NOT GO OUT|STAY IN)", head)
        assert any(style == "verdict-hold" for _, style in stays.lines[0])
        ruled = [line for line in free.text().split("\n") if re.match(f"[> ]?{rule}{rule}", line)]
        assert any(heavy * 2 in line for line in rest) or not ruled
        assert not any(re.match(f"[> ]?{rule}{rule}", line) for line in rest)
        assert "HOLD: stay in" in rest[-1]
        if page.judged:
            assert any(line.startswith(f" {block}") and "lever" in line for line in rest)


def is_of_a_hold(line: Line, heavy: str) -> bool:
    """Return whether a line looks as only those of a hold may: reversed, heavy, with its rail."""
    text = text_of(line)
    return bool(
        {style for _, style in line} & {"hold", "verdict-hold", "rail-hold"}
        or text[1:2] == "█"
        or re.match(f"[> ]?{heavy}{heavy}", text)
    )


def test_only_a_hold_and_the_caret_are_reversed() -> None:
    assert {name for name, rules in STYLES.items() if "reverse" in rules} == {"hold", "verdict-hold", "caret"}


def squashed(text: str) -> str:
    """Return a text without its spaces: it may be wrapped anywhere."""
    return "".join(text.split())


def said_by(row: Row) -> tuple[str, ...]:
    """Return what a row says in words."""
    return row.label, row.value, row.range, row.aside, row.shut, row.trouble


def test_no_look_is_left_of_a_page_that_is_gone() -> None:
    wanted = {FOLDER / f"{name}-{wide}x{high}.txt" for name in LOOKS for wide, high in sizes_of(name)}
    assert wanted == set(FOLDER.glob("*.txt")), RENEW


def test_every_picture_is_of_the_page_as_it_looks(desk: Desk) -> None:
    pictures = dict(renewed_pictures(desk))

    assert len(pictures) == 10
    for file, text in pictures.items():
        assert file.read_text(encoding="utf-8") == text, RENEW


QUESTIONS = {
    "garage": "What stands against going out next, and what is first?",
    "setup": "What stands against going out with this set-up?",
    "session": "What stands against going out, and what is first?",
    "checklist": "What stands against going out, and what is first?",
    "dash": "What stands against going out with what the dash shows?",
    "bench": "Which calculators can answer, and what does the first say?",
    "review": "What stands against going out, worst first?",
    "out": "What stands against going out now?",
    "return": "What was found on the way out; of a ridden session, what is found in it now?",
    "next": "What stands against going out; which one change is next stands below?",
    "last": "What stands against going out as the bike stands beside last time?",
    "ledger": "How many changes told anything?",
    "change": "What did this change do?",
    "record": "What is found about this record, else what is missing of it?",
    "why": "What does this row do?",
    "actions": "What can be done here?",
    "slip": "What stands against going out?",
    "compare": "How much differs, and what first?",
    "modes": "Which riding mode is in force, and which are made for this surface?",
    "brief": "How does this set-up differ from a start for this rider?",
    "limits": "Which thresholds are the owner's?",
    "guide": "What is still open, and what is first?",
    "today": "What was changed last?",
    "board": "Who goes out next, when, and what stands against it?",
    "before": "What is to be seen to before the day, worst first?",
    "after": "What is left of the day, worst first?",
    "emergency": "Who is called first?",
    "crew": "Which job is first, whose is it, when is it due?",
    "corners": "What stands against going out, and what is first?",
    "season": "What was this year, and what did it cost?",
    "help": "What is this page for?",
}
"""The one question of each room. Its answer stands on the second line, or is the first row."""

BY_ITS_FIRST_ROW = ("why", "actions", "brief", "board", "help", "review")
"""The rooms whose first row is the answer: a line that says it again would push it down."""


def begins_folded(page: Page) -> bool:
    """Return whether the heading of a folded section stands first: its count closes that line."""
    return bool(page.sections[0].rows) and page.sections[0].rows[0].kind == FOLD


WITHOUT_WHEN = (
    "emergency",  # whoever reads it may not know the program
    "emergency-riders",
    "board",  # its rows are times
    "crew",
    "setup-profile",  # a saved set-up goes out with no session
    "review-profile",
)
"""The looks in whose first three lines no time stands that the bike goes out or came in, and why."""


def test_each_room_has_one_question() -> None:
    assert set(QUESTIONS) == set(ROOMS)


@pytest.mark.parametrize("name", LOOKS)
def test_a_page_answers_in_its_first_three_lines_and_never_with_yes(name: str, desk: Desk) -> None:
    made = made_of(desk, LOOKS[name])
    page = made.page
    for wide, high in EVERY_SIZE:
        lines = layout(page, View(wide, high)).text().split("\n")[:3]
        answers = [as_read(one) for one in (page.answer, page.answer_mid, page.answer_short) if one]
        if answers:
            line = next((lines[1][: -len(one)] for one in page.when if lines[1].endswith(one)), lines[1])
            told, is_cut = squashed(line).removesuffix("…"), "…" in line
            assert any(
                squashed(one).startswith(told) and (is_cut or squashed(one) == told) for one in answers
            )
            assert len(told) > 10
        else:
            assert made.place.room in BY_ITS_FIRST_ROW or name == "emergency-riders"
            first = page.sections[0].rows[0]
            begun = squashed(lines[2]).lstrip(">▌█│")
            assert begun.startswith(squashed(f"{first.label}{first.value}")[:12])
        if name not in WITHOUT_WHEN and not (wide < 80 and begins_folded(page)):
            assert any(when in " ".join(lines) for when in page.when or (page.clock.partition(" · ")[0],))
        said = " ".join((page.answer, page.answer_mid, page.answer_short)).casefold()
        assert not re.search(r"\byes\b|\bmay go\b|\bready\b|\bsafe to\b|\bgood to go\b", said)


def test_the_review_of_the_next_session_fits_on_one_screen(desk: Desk) -> None:
    made = made_of(desk, LOOKS["review"])
    laid = layout(made.page, View(80, 24, made.at))

    said = laid.text()
    assert laid.top == 0
    assert "↓" not in said
    for finding in made.review.findings[:2]:
        assert finding.message in said
    assert all(one.label in said for one in made.review.missing)
    assert said.count("by 13:1") == len(made.review.to_do)


def test_in_the_dry_an_adjuster_starts_where_its_rider_last_had_it_there(desk: Desk) -> None:
    dry = Seen(Place("setup", Ref("session", "2026-05-16-3-magpie")))
    pictures = [row.picture for row in made_of(desk, dry).whole.rows() if row.picture is not None]
    pairs = next(one for one in pictures if isinstance(one, Pairs))

    starts = {row[0]: row[list(pairs.heads).index("start")] for row in pairs.table}
    assert (starts["front preload"], starts["rear preload"]) == ("6.5", "4")
    assert starts["front rebound"] == "not known"
    marks = {
        mark.word for one in pairs.pairs for lane in (one.front, one.rear) if lane for mark in lane.marks
    }
    assert marks == {"now", "start", "last", "profile"}

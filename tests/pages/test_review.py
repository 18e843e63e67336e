"""The review as a page: the verdict with its counts, findings, what was not judged, what is to do."""

import datetime as dt

from paddock_tui.facts.core import MissingFact
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.review import CAUTION_WORDS, due_words, review_page, verdict_line
from paddock_tui.records.errors import InputError
from paddock_tui.records.paths import Ref
from paddock_tui.records.session_parts import Acceptance
from paddock_tui.rules import (
    CAUTION,
    HOLD,
    NOTE,
    SERIOUS,
    Finding,
    NotJudged,
    Pending,
    Remedy,
    Review,
    Severity,
    Where,
)
from paddock_tui.rules.core import Topic
from paddock_tui.text import width
from tests.every import every


def finding(
    severity: Severity,
    about: Topic = "danger",
    accepted: Acceptance | None = None,
    message: str = "Something.",
) -> Finding:
    where = Where(Ref("session", "one"), ("surface",))
    return Finding(
        "service-due",
        "a",
        severity,
        about,
        where,
        message,
        "Why it is.",
        "fact",
        Remedy("Do it."),
        "s",
        accepted,
    )


ACCEPTED = Acceptance(reason="slow laps", by="AN")
UNJUDGED = (
    NotJudged("one", "", (MissingFact("the bike"), MissingFact("the rider"))),
    NotJudged("two", "x", (MissingFact("the bike"),)),
    NotJudged("two", "y", (MissingFact("the bike"),)),
)
TO_DO = (
    Pending("a", "read the dash", dt.datetime(2026, 5, 16, 10, 30), None, ""),
    Pending("b", "sign on", None, None, ""),
)


@every(
    ("review", "line"),
    [
        (Review(), "NO FINDINGS"),
        (Review((finding(NOTE),)), "NO FINDINGS"),
        (Review((finding(CAUTION, "method"),)), "NO FINDINGS"),
        (Review((finding(SERIOUS, "method"),)), "NO FINDINGS"),
        (Review((finding(CAUTION),)), "CARE 1 (0 to answer)"),
        (Review((finding(SERIOUS),)), "CARE 1 (1 to answer)"),
        (Review((finding(SERIOUS, accepted=ACCEPTED),)), "CARE 1 (0 to answer)"),
        (
            Review((finding(SERIOUS), finding(SERIOUS, accepted=ACCEPTED), finding(CAUTION), finding(NOTE))),
            "CARE 3 (1 to answer)",
        ),
        (Review((finding(HOLD), finding(HOLD), finding(SERIOUS))), "HOLD 2"),
        (Review((), UNJUDGED, TO_DO), "NO FINDINGS · 2 not assessed · 2 to do"),
        (
            Review((finding(CAUTION),), UNJUDGED, TO_DO),
            "CARE 1 (0 to answer) · 2 not assessed · 2 to do",
        ),
        (Review((finding(HOLD),), UNJUDGED), "HOLD 1 · 2 not assessed"),
        (Review(about_a_session=False), "not assessed: no session"),
        (Review((finding(HOLD),), about_a_session=False), "not assessed: no session"),
    ],
)
def test_the_verdict_line(review: Review, line: str) -> None:
    assert verdict_line(review) == line


def test_a_finding_is_a_row_that_leads_to_where_it_is_mended() -> None:
    row = review_page(Review((finding(SERIOUS, accepted=ACCEPTED),)), "h").sections[0].rows[0]

    assert (row.kind, row.severity, row.label, row.value) == ("finding", "serious", "serious", "Something.")
    assert row.aside == "Why it is. Do it. Accepted by AN: slow laps"
    assert (row.ref, row.path, row.key) == (Ref("session", "one"), ("surface",), "service-due/a")


def test_nothing_found_is_never_called_safe() -> None:
    (row,) = review_page(Review(), "h").sections[0].rows
    assert row.value == "Nothing found. That is not the same as safe."
    (row,) = review_page(Review((), UNJUDGED), "h").sections[0].rows
    assert row.value == "Nothing found in what could be judged; 2 rules could not judge."
    (row,) = review_page(Review((), UNJUDGED[:1]), "h").sections[0].rows
    assert row.value.endswith("1 rule could not judge.")


def test_the_missing_facts_that_would_let_most_rules_judge_come_first() -> None:
    (section,) = [
        one for one in review_page(Review((), UNJUDGED), "h").sections if one.title == "not assessed"
    ]

    assert [row.label for row in section.rows] == ["the bike", "the rider"]
    assert section.rows[1].value == "would let 1 rule judge"


def test_what_is_to_do_says_when() -> None:
    (section,) = [one for one in review_page(Review(to_do=TO_DO), "h").sections if one.title == "to do"]

    assert [(row.label, row.value) for row in section.rows] == [
        ("by 10:30", "read the dash"),
        ("before going out", "sign on"),
    ]
    assert due_words(TO_DO[1]) == "before going out"


def test_problems_and_keys_that_are_not_known_stand_apart() -> None:
    trouble, note = InputError("x", "y", "z", ("a",), 3, "f.toml"), InputError("k", "key", file="g.toml")

    page = review_page(Review(), "h", (trouble,), notes=(note,))

    titles = {section.title: section.rows for section in page.sections}
    assert titles["cannot be read"][0].label == "f.toml:3"
    assert titles["cannot be read"][0].value == "x: expected y; z"
    assert titles["names that are not known"][0].label == "g.toml"


@every("columns", [38, 40, 80])
def test_a_review_as_text_fits_and_says_the_caution(columns: int) -> None:
    long = "A message of seventy-eight cells that says what it is about and how far it goes"
    review = Review((finding(HOLD, message=long), finding(SERIOUS)), UNJUDGED, TO_DO)

    lines = list(plain_page(review_page(review, "session 3 · Sat 16 May 10:40 · fen · plain"), columns))

    assert all(width(line) <= columns for line in lines)
    assert " ".join(" ".join(lines).split()).endswith(CAUTION_WORDS)


def test_texts_from_files_are_printable_in_a_review() -> None:
    nasty = "\x1b[2J\u202e"
    accepted = Acceptance(reason=nasty, by=nasty)
    review = Review(
        (finding(SERIOUS, accepted=accepted, message=nasty),),
        to_do=(Pending("a", nasty, None, None, ""),),
        not_judged=(NotJudged("one", "", (MissingFact(nasty),)),),
    )

    text = "\n".join(plain_page(review_page(review, "h", (InputError(nasty, nasty, nasty, (), 1, nasty),))))

    assert "\x1b" not in text
    assert "\u202e" not in text

"""The review page: verdict, findings with why and remedy, what could not be judged, and what is to do."""

from collections.abc import Iterable, Iterator, Mapping

from paddock_tui.facts import Facts, MissingFact
from paddock_tui.facts.essentials import MissingEssential
from paddock_tui.matters import Matter
from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.problems import problem_rows
from paddock_tui.pages.rows import MISSING, TO_DO, Page, Row, Section
from paddock_tui.records.errors import InputError
from paddock_tui.records.verdict_words import CARE_WORD, HOLD_WORD, NONE_SAVED, NOT_YET_WORD
from paddock_tui.records.went_out_with import WentOutWith
from paddock_tui.rules import HOLD, Finding, Pending, Review, Severity
from paddock_tui.text import printable

CAUTION_WORDS = (
    "A starting point, not a guarantee of safety. The bike's manual, scrutineers, marshals, local rules "
    'and qualified people come first. "No findings" does not mean safe. In doubt turn the aids up, slow '
    "down, come in."
)

SHORT_CAUTION = "Not a safety check: the manual leads."
"""The caution of every page that judges, short enough never to be cut: at most 38 cells."""


def verdict_line(review: Review) -> str:
    """Write the verdict with its counts, the word first so that it is never what is cut."""
    if not review.about_a_session:
        return "not assessed: no session"
    word = review.verdict
    answer = f" ({review.to_answer} to answer)" if review.to_answer else " (0 to answer)"
    counts = {HOLD_WORD: f" {review.count(HOLD)}", CARE_WORD: f" {review.cares}{answer}"}
    missing = f"{len(review.missing)} missing"
    if word == NOT_YET_WORD:
        parts = [f"{word} {missing}: {printable(review.missing[0].label)}"]
    else:
        parts = [word + counts.get(word, "")] + [missing] * bool(review.missing)
    unjudged = len(review.missing_rules())
    if unjudged:
        parts.append(f"{unjudged} not assessed")
    if review.to_do:
        parts.append(f"{len(review.to_do)} to do")
    return " · ".join(parts)


def answer_words(review: Review, short: bool = False) -> str:
    """Answer what stands against going out, and what is first; never that it may be.

    `short` names the danger of a finding in its few words.
    """
    if not review.about_a_session:
        return ""
    holds = [one for one in review.findings if one.severity == HOLD]
    if holds:
        return f"NO: {_first(holds, short)}"
    owed = [one for one in review.findings if one.to_answer]
    if owed:
        return _first(owed, short) if short else f"First, {len(owed)} to answer: {_first(owed)}"
    if review.missing:
        return printable(f"First, {len(review.missing)} missing: {review.missing[0].label}")
    if review.to_do:
        first = review.to_do[0]
        return printable(f"First, {len(review.to_do)} to do: {first.what}, {due_words(first)}")
    unjudged = len(review.missing_rules())
    rest = f"{unjudged} {_rules(unjudged)} could not judge" if unjudged else "which is not the same as safe"
    return f"nothing that was found stands against it; {rest}"


def answer_in_few(review: Review) -> str:
    """Answer with the finding that is owed an answer in its few words; empty where none is."""
    owed = [one for one in review.findings if one.to_answer]
    if not owed or review.count(HOLD) or not review.about_a_session:
        return ""
    return f"First, {len(owed)} to answer: {owed[0].short}"


def says_first(review: Review) -> bool:
    """Return whether the answer is the first finding: then the list of findings begins with it."""
    first = review.findings[0]
    return first.severity == HOLD or first.to_answer


def _first(findings: list[Finding], short: bool = False) -> str:
    if short:
        words = findings[0].short
        return f"{words[:1].upper()}{words[1:]}" + (f" +{len(findings) - 1}" if len(findings) > 1 else "")
    more = f" (and {len(findings) - 1} more)" if len(findings) > 1 else ""
    return f"{message_line(findings[0])}{more}"


def review_page(
    review: Review,
    heading: str,
    problems: tuple[InputError, ...] = (),
    previews: Mapping[str, str] | None = None,
    notes: tuple[InputError, ...] = (),
    went_out: WentOutWith | None = None,
    before: tuple[Matter, ...] = (),
) -> Page:
    """Make the review page; `previews` say by finding what its remedy would do, where a key can do it.

    `notes` are the keys that nobody declared, `went_out` is what was known when a ridden session went out,
    `before` what counts in one finding and is open from before anybody was asked.
    """
    sections = [Section("findings", tuple(finding_rows(review, previews or {})) or (_nothing(review),))]
    if before:
        rows = tuple(_before_row(one) for one in before)
        sections.append(Section(f"{len(before)} from before", rows, "enter goes to where it is answered"))
    if went_out is not None:
        sections.append(Section("as it went out", tuple(_went_out_rows(went_out)), "judged then, not now"))
    if review.missing:
        sections += filter(None, (missing_section(review),))
    if rows := tuple(_missing_rows(review)):
        sections.append(Section("not assessed", rows, "enter these first"))
    if review.to_do:
        sections.append(_to_do_section(review))
    if problems:
        sections.append(Section("cannot be read", tuple(problem_rows(problems))))
    if notes:
        sections.append(Section("names that are not known", tuple(problem_rows(notes))))
    return Page(
        heading,
        tuple(sections),
        verdict_line(review),
        caution=CAUTION_WORDS,
        judged=False,
        caution_short=SHORT_CAUTION,
    )


def finding_rows(review: Review, previews: Mapping[str, str] | None = None) -> Iterator[Row]:
    """Make a row of each finding, worst first."""
    for finding in review.findings:
        yield finding_row(finding, (previews or {}).get(finding_key(finding), ""))


def finding_key(finding: Finding) -> str:
    """Return what tells a finding from all others of a review."""
    return f"{finding.rule}/{finding.subject}"


def finding_row(finding: Finding, preview: str = "") -> Row:
    """Make the row of a finding: severity as a word, the message, and why and remedy beside."""
    accepted = finding.accepted
    said = f"Accepted by {accepted.by or 'the rider'}: {accepted.reason}" if accepted is not None else ""
    key = f"f: {preview}." if preview else ""
    more = (("why", finding.why), ("do", finding.remedy.text), ("f", preview), ("said", said))
    return Row(
        label=str(finding.severity),
        value=message_line(finding),
        short=finding.short,
        range="said why" if accepted is not None else "to answer" if finding.to_answer else "",
        aside=printable(" ".join(part for part in (finding.why, finding.remedy.text, key, said) if part)),
        more=tuple((label, printable(text)) for label, text in more if text),
        kind="finding",
        severity=str(finding.severity),
        ref=finding.where.ref if finding.where else None,
        path=finding.where.path if finding.where else (),
        key=finding_key(finding),
    )


def from_before(facts: Facts) -> tuple[Matter, ...]:
    """Return what is open from before anybody was asked, worst first; empty without a session."""
    found = facts.get("from_before")
    return found if isinstance(found, tuple) else ()


def _before_row(one: Matter) -> Row:
    since = f"since {one.since:%Y-%m-%d}" if one.since is not None else ""
    return Row(
        str(one.severity),
        printable(one.message),
        kind="link",
        aside=printable(f"{since}. {one.remedy}"),
        severity=str(one.severity),
        ref=one.ref,
        path=one.path,
        key=f"before {one.kind}/{one.subject}",
    )


def missing_section(review: Review, said: Iterable[str] = ()) -> Section | None:
    """List the essentials that are not known, the first first: when each is due, how many rules wait.

    Those that a finding further up the page asks for, by its rule in `said`, are counted and not said again.
    """
    rules = frozenset(said)
    left = [one for one in review.missing if rules.isdisjoint((*one.rules, one.id))]
    above = len(review.missing) - len(left)
    note = f"no verdict without these{f'; {above} more above' if above else ''}"
    return Section("missing", tuple(_missing_row(one, review) for one in left), note) if left else None


def _missing_row(one: MissingEssential, review: Review) -> Row:
    due = next((due_words(item) for item in review.to_do if _covers(one, item)), "")
    waits = sum(count for fact, count in review.unlocking() if _asks_the_same(one, fact))
    return Row(
        due,
        printable(one.label),
        f"{waits} {_rules(waits)} wait{'s' * (waits == 1)}" if waits else "",
        kind="link",
        ref=one.ref,
        path=one.path,
        key=_key(one),
    )


def _covers(one: MissingEssential, item: Pending) -> bool:
    """Return whether a to-do asks for what an essential asks for: it is said once."""
    return item.rule in one.rules or item.rule == one.id


def _asks_the_same(one: MissingEssential, fact: MissingFact) -> bool:
    return bool(one.path) and (one.role, one.path) == (fact.role, fact.path)


def _went_out_rows(out: WentOutWith) -> Iterator[Row]:
    """Say the verdict that a session went out with, and its findings by rule and subject, worst first."""
    if out.verdict is None:
        yield Row("", NONE_SAVED, kind="text", key=NONE_SAVED)
        return
    at = f"{out.at:%H:%M}" if out.at is not None else "time not known"
    yield Row(at, printable(out.verdict), kind="text", key="verdict then")
    found = [(worst, rule, subject) for rule, one in out.findings.items() for subject, worst in one.items()]
    for worst, rule, subject in sorted(found, key=lambda one: (_RANK.get(one[0], 9), one[1:])):
        words = f"{rule.replace('-', ' ')}: {subject.replace('-', ' ')}"
        yield Row(printable(worst), printable(words), kind="text", key=f"then {rule}/{subject}")


_RANK = {str(one): -one for one in Severity}


def _key(one: MissingEssential) -> str:
    return f"{MISSING}{one.id}"


def missing_at(review: Review, row: Row) -> MissingEssential | None:
    """Return the essential that a row asks for; None for every other row."""
    return next((one for one in review.missing if row.key == _key(one)), None)


def _nothing(review: Review) -> Row:
    unjudged = len(review.missing_rules())
    words = (
        f"Nothing found so far; {len(review.missing)} missing: see below."
        if review.missing
        else f"Nothing found in what could be judged; {unjudged} {_rules(unjudged)} could not judge."
        if unjudged
        else ("Nothing found. That is not the same as safe.")
    )
    return Row("", words, kind="text", key="nothing")


def _missing_rows(review: Review) -> Iterator[Row]:
    """List the facts that rules wait for, without those that stand among the essentials already."""
    for missing, count in review.unlocking():
        if any(_asks_the_same(one, missing) for one in review.missing):
            continue
        yield Row(
            label=printable(missing.label),
            value=f"would let {count} {_rules(count)} judge",
            kind="text",
            path=missing.path,
            key=f"unjudged {missing.label}",
        )


def _rules(count: int) -> str:
    return "rule" if count == 1 else "rules"


def _to_do_section(review: Review) -> Section:
    """List what is to do and stands not among the essentials already; how many do is said."""
    left = [item for item in review.to_do if not any(_covers(one, item) for one in review.missing)]
    above = len(review.to_do) - len(left)
    rows = tuple(to_do_row(item) for item in left)
    return Section("to do", rows, f"{above} {'more ' * bool(left)}above" if above else "")


_TO_DO_CELLS = 58
"""What an open list takes beside when it is due, on one line of 80: its first item is cut."""


def to_do_row(pending: Pending) -> Row:
    """Make the row of a to-do, with when it is due."""
    return Row(
        label=due_words(pending),
        value=message_line(pending, _TO_DO_CELLS) if pending.quoted else printable(pending.what),
        kind="text",
        ref=pending.where.ref if pending.where else None,
        path=pending.where.path if pending.where else (),
        key=f"{TO_DO}{pending.rule}",
    )


def due_words(pending: Pending) -> str:
    """Say when a to-do is due."""
    return f"by {pending.due:%H:%M}" if pending.due is not None else "before going out"

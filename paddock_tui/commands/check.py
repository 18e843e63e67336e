"""`check`: the review of a session, or of everything, as text or as JSON."""

import datetime as dt
import json
import sys
from collections.abc import Iterable
from typing import Any

from paddock_tui.commands.common import (
    CARE,
    HOLD,
    NOT_DONE,
    OK,
    columns,
    complain,
    find_ref,
    open_desk,
    problem_lines,
    say,
)
from paddock_tui.desk import Desk
from paddock_tui.desk.assembling import Assembled
from paddock_tui.pages.plain import plain_page
from paddock_tui.pages.review import review_page, verdict_line
from paddock_tui.records.paths import Ref, spell
from paddock_tui.records.trouble import Trouble
from paddock_tui.rules import Finding, Review, Where, review
from paddock_tui.text import printable

_STATUS = {"CLEAR": OK, "CARE": CARE, "HOLD": HOLD}


def check(folder: str, session: str | None, at: dt.datetime | None, *, as_json: bool = False) -> int:
    """Print the review of one session; the status is the verdict, or 3 where it could not be read."""
    desk = open_desk(folder, at)
    ref = find_ref(desk, session) if session is not None else desk.session_in_hand()
    if ref is not None and ref.kind not in ("session", "profile"):
        ref = None
    if ref is None:
        if as_json:
            _print_json(None, Review(about_a_session=False), ())
        complain(("there is no session to check", "  name one with --session, or make one"))
        return NOT_DONE
    found = desk.assembled(ref)
    result = review(found.situation)
    problems = (*found.problems, *found.notes)
    if as_json:
        _print_json(ref, result, problems)
    else:
        say(plain_page(review_page(result, heading(desk, ref), problems), columns()))
    if found.lost:
        complain(f"{lost} cannot be read, so the verdict does not stand" for lost in found.lost)
        return NOT_DONE
    return _STATUS.get(result.verdict, OK)


def check_all(folder: str, at: dt.datetime | None, *, as_json: bool = False) -> int:
    """Read and review everything; status 0, or 3 where a file or a value could not be read."""
    desk = open_desk(folder, at)
    problems: list[Trouble] = []
    lost = False
    refs = list(desk.files.all())
    verdicts: list[tuple[Ref, Review]] = []
    for place, ref in enumerate(refs, 1):
        _progress(place, len(refs))
        loaded = desk.files.read(ref)
        if loaded is None:
            continue
        problems += [*loaded.troubles, *loaded.unknown]
        lost = lost or bool(loaded.troubles)
        if ref.kind in ("session", "profile") and loaded.record is not None:
            assembled: Assembled = desk.assembled(ref)
            verdicts.append((ref, review(assembled.situation)))
    if as_json:
        rows = [{"session": str(ref), "verdict": found.verdict} for ref, found in verdicts]
        print_dict({"verdicts": rows, "problems": [_problem(trouble) for trouble in problems]})
    else:
        say(f"{ref.id:<36} {verdict_line(found)}" for ref, found in verdicts if ref.kind == "session")
        say(_profile_lines(verdicts))
        say(problem_lines(problems))
        say((f"{len(refs)} records read, {len(problems)} problems",))
    return NOT_DONE if lost else OK


def heading(desk: Desk, ref: Ref) -> str:
    """Name a session for a heading: number, day, venue and bike, as far as they are known."""
    data = desk.files.data(ref)
    day = desk.files.data(Ref("day", str(data.get("day"))))
    venue = day.get("venue")
    parts = [f"session {data['number']}" if "number" in data else str(ref)]
    date, start = data.get("date"), data.get("start")
    if isinstance(date, dt.date):
        parts.append(f"{date.isoformat()}{f' {start:%H:%M}' if isinstance(start, dt.time) else ''}")
    parts += [str(word) for word in (venue, data.get("bike"), data.get("rider")) if isinstance(word, str)]
    return printable(" · ".join(parts))


def _profile_lines(verdicts: Iterable[tuple[Ref, Review]]) -> list[str]:
    return [
        f"{ref.id:<36} {finding.severity}: {finding.message}"
        for ref, found in verdicts
        if ref.kind == "profile"
        for finding in found.findings
        if finding.severity > 0
    ]


def _progress(done: int, of: int) -> None:
    if sys.stderr.isatty() and of > 50:
        sys.stderr.write(f"\r{done} of {of}" + ("\n" if done == of else ""))
        sys.stderr.flush()


def _print_json(ref: Ref | None, result: Review, problems: Iterable[Trouble]) -> None:
    print_dict(review_as_dict(ref, result, problems))


def review_as_dict(ref: Ref | None, result: Review, problems: Iterable[Trouble]) -> dict[str, Any]:
    """Give a review as plain data, in the order of the documented form."""
    severities = ("hold", "serious", "caution", "note")
    counts: dict[str, int] = {
        word: sum(1 for one in result.findings if str(one.severity) == word) for word in severities
    }
    return {
        "verdict": result.verdict,
        "session": ref.id if ref is not None else None,
        "counts": {**counts, "to_answer": result.to_answer},
        "findings": [_finding(finding) for finding in result.findings],
        "not_judged": _not_judged(result),
        "to_do": [
            {"what": item.what, "due": item.due.isoformat() if item.due is not None else None}
            for item in result.to_do
        ],
        "problems": [_problem(trouble) for trouble in problems],
    }


def _finding(finding: Finding) -> dict[str, Any]:
    accepted = finding.accepted
    return {
        "rule": finding.rule,
        "subject": finding.subject,
        "severity": str(finding.severity),
        "about": finding.about,
        "where": _place(finding.where),
        "message": finding.message,
        "why": finding.why,
        "facts": finding.facts,
        "remedy": finding.remedy.text,
        "source": finding.source,
        "accepted": None
        if accepted is None
        else {
            "reason": accepted.reason,
            "by": accepted.by,
            "at": accepted.at.isoformat() if accepted.at is not None else None,
        },
    }


def _not_judged(result: Review) -> list[dict[str, Any]]:
    missing: dict[str, list[str]] = {}
    for entry in result.not_judged:
        labels = missing.setdefault(entry.rule, [])
        labels += [one.label for one in entry.missing if one.label not in labels]
    return [{"rule": rule, "missing": labels} for rule, labels in missing.items()]


def _place(where: Where | None) -> str | None:
    return None if where is None else f"{where.ref}:{spell(where.path)}"


def _problem(trouble: Trouble) -> dict[str, Any]:
    return {
        "file": trouble.file,
        "line": trouble.line,
        "path": spell(trouble.path),
        "found": trouble.found,
        "expected": trouble.expected,
        "mend": trouble.mend,
    }


def print_dict(data: dict[str, Any]) -> None:
    """Print plain data as JSON; control characters come out escaped."""
    sys.stdout.write(json.dumps(data, indent=2, ensure_ascii=True) + "\n")

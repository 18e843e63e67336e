"""The review: every rule asked about one situation, and the verdict."""

import datetime as dt
from collections import Counter
from collections.abc import Sequence
from typing import Any

import attrs

from paddock_tui.facts.core import ABSENT, Facts, MissingFact, NotKnown, is_of_bike
from paddock_tui.facts.essentials import MissingEssential
from paddock_tui.facts.situation import Situation
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session_parts import Acceptance
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.verdict_words import NOT_JUDGED_WORD
from paddock_tui.rules.core import (
    CAUTION,
    COMPLETE,
    HOLD,
    RULES,
    SERIOUS,
    RaisedFinding,
    Remedy,
    Rule,
    Severity,
    Topic,
    call,
)
from paddock_tui.rules.short import short_message
from paddock_tui.rules.verdict import verdict_word


@attrs.frozen
class Where:
    """A place that a finding points at."""

    ref: Ref
    path: Path


@attrs.frozen
class Finding:
    """Something the review found, with the facts it stands on as readable text."""

    rule: str
    subject: str
    severity: Severity
    about: Topic
    where: Where | None
    message: str
    why: str
    facts: str
    remedy: Remedy
    source: str
    accepted: Acceptance | None = None
    parts: tuple[str, ...] = ()
    quoted: tuple[str, ...] = ()

    @property
    def short(self) -> str:
        """The danger in a few words, for a narrow line."""
        return short_message(self.rule, self.subject)

    @property
    def to_answer(self) -> bool:
        """Whether it is serious, about danger, and not accepted yet."""
        return self.severity == SERIOUS and self.about == "danger" and self.accepted is None


@attrs.frozen
class NotJudged:
    """A rule that could not judge, and every fact that is missing for it."""

    rule: str
    subject: str
    missing: tuple[MissingFact, ...]


@attrs.frozen
class Pending:
    """A to-do: what, for which rule, when it is due (None: before going out), and where it is entered.

    `quoted` is what of its message comes from the records.
    """

    rule: str
    what: str
    due: dt.datetime | None
    where: Where | None
    message: str
    severity: Severity = CAUTION
    quoted: tuple[str, ...] = ()


@attrs.frozen
class Review:
    """What a whole look at one situation gives; `missing` are the essentials that are not known."""

    findings: tuple[Finding, ...] = ()
    not_judged: tuple[NotJudged, ...] = ()
    to_do: tuple[Pending, ...] = ()
    passed: tuple[str, ...] = ()
    about_a_session: bool = True
    missing: tuple[MissingEssential, ...] = ()

    @property
    def verdict(self) -> str:
        """The word of `paddock_tui.rules.verdict`; 'not judged' where there is no session to go out for."""
        if not self.about_a_session:
            return NOT_JUDGED_WORD
        dangers = [finding.severity for finding in self.findings if finding.about == "danger"]
        return verdict_word(dangers, len(self.missing))

    def count(self, severity: Severity) -> int:
        """Count the findings of one severity."""
        return sum(1 for finding in self.findings if finding.severity == severity)

    @property
    def cares(self) -> int:
        """Count the serious findings and the cautions about danger."""
        return sum(1 for one in self.findings if one.about == "danger" and one.severity in (SERIOUS, CAUTION))

    @property
    def to_answer(self) -> int:
        """Count the serious findings that nobody accepted yet."""
        return sum(1 for finding in self.findings if finding.to_answer)

    def unlocking(self) -> tuple[tuple[MissingFact, int], ...]:
        """List the missing facts, first those that would let most rules judge."""
        counted = Counter(missing for entry in self.not_judged for missing in set(entry.missing))
        return tuple(sorted(counted.items(), key=lambda item: (-item[1], item[0].label)))

    def missing_rules(self) -> tuple[str, ...]:
        """List the rules that could not judge, each once."""
        return tuple(dict.fromkeys(entry.rule for entry in self.not_judged))


def review(situation: Situation) -> Review:
    """Ask every rule; the order of rules and records never changes the result."""
    COMPLETE.require()
    asking = _Asking(situation)
    whole = situation.session is not None
    findings: list[Finding] = []
    to_do: list[Pending] = []
    for registered in asking.rules.ordered:
        if registered.id in asking.not_asked or not (whole or registered.of_set_up):
            continue
        for finding in asking.ask(registered):
            due = _due(registered, situation)
            if registered.todo is not None and not due.now:
                what = registered.todo.what or finding.message.rstrip(".")
                about = (finding.where, finding.message, finding.severity, finding.quoted)
                to_do.append(Pending(registered.id, what, due.at, *about))
            else:
                findings.append(finding)
    kept = _with_acceptances(_absorbed(findings), situation)
    to_do.sort(key=_by_the_clock)
    missing = _missing(asking.facts, to_do) if whole else ()
    judged = (tuple(asking.not_judged), tuple(to_do), tuple(asking.passed))
    return Review(_ordered(kept), *judged, whole, missing)


def _by_the_clock(item: Pending) -> tuple[dt.datetime, int, int, str]:
    """Order what is to do by when it is due, of one minute the worst first."""
    return item.due or dt.datetime.max, -item.severity, RULES[item.rule].rank, item.rule


def _missing(facts: Facts, to_do: list[Pending]) -> tuple[MissingEssential, ...]:
    """List the essentials that are not known; what would be a hold once it is due is one of them."""
    asked = facts.get("missing_essentials")
    if asked is ABSENT or isinstance(asked, NotKnown):
        return ()
    named = {rule_id for one in asked for rule_id in one.rules}
    holds = [one for one in to_do if one.severity == HOLD and one.rule not in named]
    return (*asked, *(_as_missing(one) for one in holds))


def _as_missing(pending: Pending) -> MissingEssential:
    where = pending.where
    path, ref = (where.path, where.ref) if where is not None else ((), None)
    return MissingEssential(
        pending.rule, pending.what, ref.kind if ref else "", path, ref, rules=(pending.rule,)
    )


class _InOrder:
    """The rules in the order in which they are asked, and which of them need a fact."""

    def __init__(self, registered: tuple[Rule, ...]) -> None:
        self.registered = registered
        self.ordered = sorted(registered, key=lambda one: one.id)
        self._needing: dict[str, frozenset[str]] = {}

    def needing(self, fact: str) -> frozenset[str]:
        """Name the rules that need a fact which is the same whatever subject they are asked about."""
        found = self._needing.get(fact)
        if found is None:
            found = frozenset(one.id for one in self.registered if fact in one.asked.for_all)
            self._needing[fact] = found
        return found


_IN_ORDER = [_InOrder(())]


def _in_order() -> _InOrder:
    """Return the rules in their order, as they were put into it before while they are the same."""
    registered = tuple(RULES.values())
    if _IN_ORDER[0].registered != registered:
        _IN_ORDER[0] = _InOrder(registered)
    return _IN_ORDER[0]


class _Asking:
    """Asks rules about a situation. Most do not apply to most: what keeps one from it is looked at first."""

    def __init__(self, situation: Situation) -> None:
        self.facts = situation.facts()
        self.not_judged: list[NotJudged] = []
        self.passed: list[str] = []
        self._situation = situation
        self._limits = situation.limits
        self._bike = self.facts.get("bike")
        self.rules = _in_order()
        self.not_asked: set[str] = set()
        """Rules that need a fact which was absent for another."""

    def ask(self, registered: Rule) -> Sequence[Finding]:
        """Ask a rule about each of its subjects; what it finds."""
        if self._bike.__class__ is NotKnown and registered.per in ("control", "adjuster"):
            self.not_judged.append(NotJudged(registered.id, "", self._bike.missing))
            return ()
        subjects = self._subjects(registered)
        if not subjects:
            return ()
        facts, judged, unknown = self.facts, 0, 0
        found: list[Finding] = []
        for subject in subjects:
            values = facts.together(registered.asked, subject)
            if values is ABSENT:
                if self._never_applies(registered, subject):
                    return ()
                continue
            if isinstance(values, NotKnown):
                self.not_judged.append(NotJudged(registered.id, subject or "", values.missing))
                unknown += 1
                continue
            judged += 1
            for one in call(registered, values, self._limits):
                found.append(_finding(registered, one, subject, values, facts, self._situation))
        # One control that could not be judged keeps its rule from passing.
        if judged and not found and not unknown:
            self.passed.append(registered.id)
        return found

    def _subjects(self, registered: Rule) -> tuple[str | None, ...]:
        """Return what a rule is asked about, without what it never applies to on this bike."""
        known = self.facts.of_bike.left.get(registered.id) if self.facts.of_bike is not None else None
        if known is not None and known[0] is registered:
            return known[1]
        return self.facts.subjects(registered.per) if registered.per else (None,)

    def _never_applies(self, registered: Rule, subject: str | None) -> bool:
        """Note what keeps a rule from a subject; gives whether that keeps it from all of them."""
        one, facts = registered.asked.absent, self.facts
        # Others may ask it too meanwhile, of another situation: what is said here is looked at again.
        if one is None or not facts.is_absent(one.need, None if one.key is not None else subject):
            return False
        # Of a bike that is not known it is said of each rule about its controls that it could not judge.
        if one.key is not None and self._bike.__class__ is not NotKnown:
            self.not_asked |= self.rules.needing(one.need)
        if facts.of_bike is not None and is_of_bike(one.need):
            gone = None if one.key is not None else subject
            left = () if gone is None else tuple(each for each in self._subjects(registered) if each != gone)
            facts.of_bike.left[registered.id] = registered, left
        return one.key is not None


def _finding(
    registered: Rule,
    raised: RaisedFinding,
    subject: str | None,
    values: dict[str, Any],
    facts: Facts,
    situation: Situation,
) -> Finding:
    named = (
        raised.subject or subject or registered.path[-1:][0] if registered.path else raised.subject or subject
    )
    path = raised.path or tuple(key.format(subject=subject) for key in registered.path)
    ref = raised.ref or situation.refs.get(_role(raised.role or registered.role, situation))
    quoted = raised.facts
    if quoted is None:
        shown = (facts.shown(need, subject) for need in values)
        quoted = "; ".join(text for text in shown if text) or raised.message
    return Finding(
        rule=registered.id,
        subject=named or "session",
        severity=raised.severity if raised.severity is not None else registered.severity,
        about=registered.about,
        where=Where(ref, path) if ref is not None else None,
        message=raised.message,
        why=raised.why,
        facts=quoted,
        remedy=_within_the_mode(raised.remedy, facts),
        source=registered.source,
        parts=raised.parts,
        quoted=raised.quoted,
    )


def _within_the_mode(remedy: Remedy, facts: Facts) -> Remedy:
    """Keep a remedy from setting what the riding mode fixes: that mends nothing while the mode is in use.

    One that sets the riding mode as well has looked at what the new one fixes.
    """
    if any(put.path == ("setup", "mode") for put in remedy.puts):
        return remedy
    for put in remedy.puts:
        if put.role != "setup" or put.path[:2] != ("setup", "controls"):
            continue
        fixed = facts.get("fixed_by_mode", put.path[2])
        if fixed is not ABSENT and not isinstance(fixed, NotKnown) and fixed != put.value:
            label = label_of(put.path[2])
            return Remedy(f"{remedy.text} The riding mode fixes {label}: choose another one first.")
    return remedy


def _role(role: str, situation: Situation) -> str:
    return situation.setup_role if role in ("setup", "") else role


@attrs.frozen
class _Due:
    now: bool
    at: dt.datetime | None


def is_due(registered: Rule, situation: Situation) -> bool:
    """Return whether what a rule has to do is due by the clock of a situation."""
    return _due(registered, situation).now


def _due(registered: Rule, situation: Situation) -> _Due:
    """Return whether a to-do is due: by the clock on the session's own day only, else by going out."""
    session = situation.session
    if registered.todo is None or session is None:
        return _Due(True, None)
    at = None
    if session.date is not None and session.start is not None:
        start = dt.datetime.combine(session.date, session.start)
        at = start - dt.timedelta(minutes=registered.todo.minutes)
    same_day = session.date is not None and situation.now.date() == session.date
    return _Due(situation.going_out or (same_day and at is not None and situation.now >= at), at)


def _absorbed(findings: list[Finding]) -> list[Finding]:
    """Leave out what a stack of at least the same severity already says about its parts."""
    gone: set[int] = set()
    for stack in findings:
        absorbs = RULES[stack.rule].absorbs
        for place, part in enumerate(findings):
            if part.rule in absorbs and part.subject in stack.parts and part.severity <= stack.severity:
                gone.add(place)
    return [finding for place, finding in enumerate(findings) if place not in gone]


def _with_acceptances(findings: list[Finding], situation: Situation) -> list[Finding]:
    """Mark the serious findings that the rider accepted today while the facts read the same."""
    if situation.session is None:
        return findings
    sessions = (*situation.earlier, situation.session)
    marked: list[Finding] = []
    for finding in findings:
        held = [session.accepted.get(finding.rule, {}).get(finding.subject) for session in reversed(sessions)]
        matching = [one for one in held if one is not None and one.reason and one.facts == finding.facts]
        if finding.severity == SERIOUS and matching:
            marked.append(attrs.evolve(finding, accepted=matching[0]))
        else:
            marked.append(finding)
    return marked


def _ordered(findings: list[Finding]) -> tuple[Finding, ...]:
    """Put the worst first, danger before method, what is to answer before what is accepted, then by rank."""
    return tuple(
        sorted(
            findings,
            key=lambda one: (
                -one.severity,
                one.about != "danger",
                one.accepted is not None,
                RULES[one.rule].rank,
                one.rule,
                one.subject,
                str(one.where),
            ),
        )
    )

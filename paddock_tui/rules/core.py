"""What a rule is, and what it raises."""

from collections.abc import Callable
from functools import cached_property
from typing import Any, Literal, TypeVar

import attrs

from paddock_tui.facts.core import Needs, PerSubject, asked_for, parameters
from paddock_tui.limits import Limit
from paddock_tui.limits.core import COMMON
from paddock_tui.matters.severity import CAUTION as CAUTION
from paddock_tui.matters.severity import HOLD as HOLD
from paddock_tui.matters.severity import NOTE as NOTE
from paddock_tui.matters.severity import SERIOUS as SERIOUS
from paddock_tui.matters.severity import Severity as Severity
from paddock_tui.on_demand import Whole
from paddock_tui.records.edits import Value
from paddock_tui.records.paths import Path, Ref

Topic = Literal["danger", "method"]

HEAD, BRAKES, RIDER, TYRES, PRESSURES, FUEL, AIDS, SUSPENSION, EVENT, RECORDS = range(0, 100, 10)
"""What comes first among findings of one severity: a head that was hit, then what is mended first: brakes,
wheels, leaks and lamps before all else."""


@attrs.frozen
class SetValue:
    """One value that a remedy would set; `role` names the record ('setup': the session or the profile)."""

    path: Path
    value: Value
    role: str = "setup"


@attrs.frozen
class Remedy:
    """What mends a finding, in words, and as values to set where it can be an edit."""

    text: str
    puts: tuple[SetValue, ...] = ()


@attrs.frozen
class RaisedFinding:
    """What a rule says when it is raised. What is None is taken from the rule's declaration.

    `quoted` are the texts within the message that come from the records: where a line is too short for it
    all, these are cut, not the words around them.
    `ref` names another record than the one that plays the role: an earlier session, for one.
    """

    message: str
    why: str
    remedy: Remedy
    severity: Severity | None = None
    subject: str | None = None
    role: str | None = None
    path: Path | None = None
    parts: tuple[str, ...] = ()
    facts: str | None = None
    ref: Ref | None = None
    quoted: tuple[str, ...] = ()


Result = RaisedFinding | list[RaisedFinding] | None


@attrs.frozen
class ToDo:
    """What is to be done by a time: `minutes` before the start, else before going out.

    Where `what` is empty, each message of the rule says it.
    """

    what: str
    minutes: int = 10


@attrs.frozen
class Rule:
    """A registered rule: its id, what it needs, and what is declared of it."""

    id: str
    severity: Severity
    source: str
    about: Topic
    when: tuple[str, ...]
    needs: tuple[str, ...]
    function: Callable[..., Result]
    per: PerSubject | None
    gathers: frozenset[str]
    role: str
    path: Path
    absorbs: tuple[str, ...]
    limits: tuple[Limit, ...]
    todo: ToDo | None
    of_set_up: bool
    rank: int
    takes_limits: bool

    @cached_property
    def asked(self) -> Needs:
        """How each fact that it needs is asked for."""
        found = asked_for((*self.needs, *self.when), self.gathers)
        found.for_all = frozenset([one.need for one in found if one.key is not None])
        return found


RULES: dict[str, Rule] = {}

COMPLETE = Whole("rules", "paddock_tui.rules.registered")

F = TypeVar("F", bound=Callable[..., Result])


def rule(
    rule_id: str,
    severity: Severity,
    *,
    source: str = COMMON,
    about: Topic = "danger",
    per: PerSubject | None = None,
    when: tuple[str, ...] = (),
    gathers: tuple[str, ...] = (),
    at: str = "",
    absorbs: tuple[str, ...] = (),
    limits: tuple[Limit, ...] = (),
    todo: ToDo | None = None,
    of_set_up: bool = False,
    rank: int = SUSPENSION,
) -> Callable[[F], F]:
    """Register a function as a rule; its parameters are the facts that it needs, `limits` among them.

    `when` names facts that have to be known and there before the rule is asked, and that its findings
    quote, without being handed to it.
    `at` says where the mend is made, as 'role:path', `{subject}` standing for the subject. With `todo`
    what the rule raises is a to-do until it is due, and only then a finding. `of_set_up` says that it
    can judge a set-up with which nobody goes out yet, that is a profile: ranges and modes. `rank` says
    what is mended first within a severity.
    """

    def register(function: F) -> F:
        if rule_id in RULES:
            raise ValueError(f"two rules are called {rule_id}")
        names = parameters(function)
        role, _, path = at.partition(":")
        RULES[rule_id] = Rule(
            rule_id,
            severity,
            source,
            about,
            when,
            tuple(name for name in names if name != "limits"),
            function,
            per,
            frozenset(gathers),
            role,
            tuple(path.split(".")) if path else (),
            absorbs,
            limits,
            todo,
            of_set_up,
            rank,
            "limits" in names,
        )
        return function

    return register


def call(registered: Rule, values: dict[str, Any], limits: Any) -> list[RaisedFinding]:
    """Ask a rule, and give what it raises as a list; `values` may hold more than it takes."""
    given = (
        values if len(values) == len(registered.needs) else {name: values[name] for name in registered.needs}
    )
    result = (
        registered.function(**given, limits=limits)
        if registered.takes_limits
        else registered.function(**given)
    )
    if result is None:
        return []
    return result if isinstance(result, list) else [result]

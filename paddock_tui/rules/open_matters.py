"""What is still open becomes a finding of the session to come: one rule for each kind of matter."""

from collections.abc import Callable

from paddock_tui.limits import Limits
from paddock_tui.matters import KINDS, Matter, MatterKind
from paddock_tui.rules.core import (
    BRAKES,
    CAUTION,
    EVENT,
    HEAD,
    RIDER,
    SUSPENSION,
    TYRES,
    RaisedFinding,
    Remedy,
    Result,
    ToDo,
    rule,
)

_RANKS = {
    "head": HEAD,
    "brakes": BRAKES,
    "rider": RIDER,
    "tyres": TYRES,
    "suspension": SUSPENSION,
    "event": EVENT,
}


def _rule_of(kind: MatterKind) -> Callable[..., Result]:
    def of_kind(open_matters: tuple[Matter, ...], from_before: tuple[Matter, ...]) -> Result:
        return [_raised(one) for one in open_matters if one.kind == kind.id and one not in from_before]

    def with_limits(
        open_matters: tuple[Matter, ...], from_before: tuple[Matter, ...], limits: Limits
    ) -> Result:
        return of_kind(open_matters, from_before)

    found = with_limits if kind.limits else of_kind
    found.__doc__ = f"Open until: {kind.closed_by}."
    return found


def _raised(one: Matter) -> RaisedFinding:
    return RaisedFinding(
        message=one.message,
        why=one.why,
        remedy=Remedy(one.remedy),
        severity=one.severity,
        subject=one.subject,
        role=one.ref.kind if one.ref is not None else "session",
        path=one.path,
        facts=one.facts,
        ref=one.ref,
        quoted=one.quoted,
    )


for _kind in KINDS.values():
    rule(
        _kind.id,
        _kind.least,
        source=_kind.source,
        at=_kind.at,
        when=(*_kind.needs, *(() if _kind.afterwards else ("to_come",))),
        limits=_kind.limits,
        todo=ToDo(_kind.todo) if _kind.todo else None,
        rank=_RANKS[_kind.theme],
    )(_rule_of(_kind))


@rule("open-from-before", CAUTION, when=("to_come",), at="garage:before", rank=BRAKES)
def open_from_before(from_before: tuple[Matter, ...]) -> Result:
    """What a garage held before anybody was asked what was left open: as severe as the worst of it."""
    if not from_before:
        return None
    dates = sorted(one.since for one in from_before if one.since is not None)
    return RaisedFinding(
        message=f"{len(from_before)} from before: r.",
        why="They were written down before anybody was asked what became of them; none is forgotten.",
        remedy=Remedy(
            "The review lists them, worst first: enter goes to where each is answered. Or go through all "
            'but holds in one step with initials: m lists "answer what is older".'
        ),
        severity=max(one.severity for one in from_before),
        subject="before",
        facts=f"{len(from_before)} written down from {dates[0]} to {dates[-1]}",
    )

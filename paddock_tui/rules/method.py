"""Rules about method: changes from which nothing can be learnt; advice, never part of the verdict."""

from collections.abc import Mapping

from paddock_tui.facts.changes import Changes
from paddock_tui.facts.past import History
from paddock_tui.facts.suspension import AdjusterShown, what_of
from paddock_tui.limits import Limits
from paddock_tui.limits.suspension import (
    STEP_CLICKS,
    STEP_DAMPING_TURNS,
    STEP_HEIGHT,
    STEP_PRELOAD_TURNS,
    STEP_SHARE,
)
from paddock_tui.quantities import Quantity
from paddock_tui.records.differences import SetUpDifference
from paddock_tui.records.session import Session
from paddock_tui.records.shapes_of_bike import label_of
from paddock_tui.records.suspension import Adjuster
from paddock_tui.rules.core import CAUTION, RaisedFinding, Remedy, Result, rule


@rule("several-changes-at-once", CAUTION, about="method", when=("to_come",), at="setup:setup")
def several_changes_at_once(changes: Changes) -> Result:
    """More than one independent change since the session before."""
    count = len(changes.units)
    if count < 2:
        return None
    listed = "; ".join(changes.units[:6])
    return RaisedFinding(
        message=f"{count} changes since the session before: no cause can be told.",
        why=f"Better or worse, nobody will know which of them did it: {listed}.",
        remedy=Remedy("Keep the one that answers what was felt; take the others back to the written values."),
        subject="changes",
    )


@rule("several-aids-lowered", CAUTION, about="method", when=("to_come",), at="setup:setup.controls")
def several_aids_lowered(lowered: tuple[str, ...]) -> Result:
    """More than one aid brought down in one step."""
    if len(lowered) < 2:
        return None
    listed = ", ".join(label_of(name) for name in lowered)
    return RaisedFinding(
        message=f"{len(lowered)} aids were lowered in one step.",
        why=f"When something slides, nobody can tell which aid would have caught it: {listed}.",
        remedy=Remedy("Bring one of them down a step, the others back; the next one another session."),
        subject="aids",
        facts=f"lowered: {listed}",
    )


@rule("change-without-an-old-value", CAUTION, about="method", when=("to_come",), at="session:because")
def change_without_an_old_value(session: Session, source: Session | None, history: History) -> Result:
    """A reason for a change stands there, and nothing says what the value was before."""
    if source is None and not history.past:
        return None
    found = [
        (kind, key)
        for kind, reasons in session.because.items()
        for key, because in reasons.items()
        if (because.why or because.expect) and _old(source, kind, key) is None
    ]
    return [
        RaisedFinding(
            message=f"{_first(label_of(key.replace('_', '-')))} was changed, from what is not written.",
            why="Without the old value nobody can go back to it when the change was wrong.",
            remedy=Remedy(
                "Enter the old value in the session before, or count from the stop and start again."
            ),
            subject=key,
            path=("because", kind, key),
            facts=f"{kind} {key} changed; no earlier value",
        )
        for kind, key in found
    ]


@rule(
    "step-too-large",
    CAUTION,
    about="method",
    per="adjuster",
    when=("to_come",),
    at="setup:setup.adjusters.{subject}",
    limits=(STEP_CLICKS, STEP_DAMPING_TURNS, STEP_SHARE, STEP_PRELOAD_TURNS),
)
def step_too_large(
    subject: str,
    adjuster: Adjuster,
    adjuster_change: SetUpDifference,
    adjuster_value: AdjusterShown,
    adjuster_range: tuple[float, float],
    limits: Limits,
) -> Result:
    """A step so large that the right value may lie inside it."""
    step = _moved(adjuster_change)
    low, high = adjuster_range
    what = what_of(subject, adjuster)[1]
    large = limits[STEP_SHARE] * (high - low)
    if what == "preload" and adjuster.unit == "turn":
        most = limits[STEP_PRELOAD_TURNS]
    elif adjuster.unit == "click" and what != "preload":
        most = max(limits[STEP_CLICKS], large)
    elif adjuster.unit == "turn":
        most = max(limits[STEP_DAMPING_TURNS], large)
    else:
        return None
    if step <= most + 1e-9:
        return None
    return RaisedFinding(
        message=f"{_first(label_of(subject))} {adjuster_change.words} is a large step.",
        why="The right value may lie inside the step, and an overshoot feels like the wrong direction.",
        remedy=Remedy("Halve the step; when it was right, continue from there."),
    )


@rule(
    "height-step-too-large",
    CAUTION,
    about="method",
    when=("to_come",),
    at="setup:setup.fork_height",
    limits=(STEP_HEIGHT,),
)
def height_step_too_large(changes: Changes, limits: Limits) -> Result:
    """Fork or rear height moved far in one step."""
    found = [one for one in changes.every if one.key in ("fork_height", "rear_height")]
    return [
        RaisedFinding(
            message=f"{_first(one.label)} {one.words} is a large step.",
            why="A few millimetres change rake, trail and balance; more may steer as nobody expects.",
            remedy=Remedy("Halve the step, 2 mm at a time from there; check clearance at full bottoming."),
            subject=one.key,
            path=one.path,
            facts=str(one),
        )
        for one in found
        if _mm(one) > limits[STEP_HEIGHT] + 1e-9
    ]


@rule(
    "damping-before-sag-and-pressures", CAUTION, about="method", when=("to_come",), at="setup:setup.adjusters"
)
def damping_before_sag_and_pressures(
    damping_touched: tuple[SetUpDifference, ...], sag_on_record: bool, hot_on_record: bool
) -> Result:
    """Damping turned although sag or hot pressures are on no record."""
    lost = [
        word for word, there in (("rider sag", sag_on_record), ("hot pressures", hot_on_record)) if not there
    ]
    if not lost:
        return None
    listed = " and ".join(lost)
    return RaisedFinding(
        message=f"Damping was changed, and no {listed} on record.",
        why="Damping cannot cure a wrong height or a wrong tyre pressure; it hides them.",
        remedy=Remedy("Pressures first, then sag and preload; then rebound, then compression."),
        subject="damping",
        facts="; ".join([*(str(one) for one in damping_touched), f"no {listed}"]),
    )


def _old(source: Session | None, kind: str, key: str) -> object:
    if source is None:
        return None
    held = getattr(source.setup, kind, None) if kind != "setup" else source.setup
    return held.get(key) if isinstance(held, Mapping) else getattr(held, key, None)


def _moved(change: SetUpDifference) -> float:
    numbers = [float(one) for one in (change.old, change.new) if isinstance(one, int | float)]
    return abs(numbers[1] - numbers[0]) if len(numbers) == 2 else 0.0


def _mm(change: SetUpDifference) -> float:
    lengths = [one.to("mm") for one in (change.old, change.new) if isinstance(one, Quantity)]
    return abs(lengths[1] - lengths[0]) if len(lengths) == 2 else 0.0


def _first(text: str) -> str:
    return text[:1].upper() + text[1:]

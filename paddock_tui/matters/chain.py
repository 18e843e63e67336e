"""The chain: its slack is measured after whatever moved it, and against the book as the book asks."""

from collections.abc import Iterator

import attrs

from paddock_tui.limits.matters import SLACK_OVER, SLACK_UNDER_HOLD
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import HOLD, NOTE, SERIOUS, Severity
from paddock_tui.matters.work import changed_ends
from paddock_tui.records.differences import old_to_new

CHAIN = ("wheel out", "axle", "chain", "sprocket")
"""Work after which the chain may stand otherwise."""

_REAR_HEIGHT_MM = 3.0
"""Change of the rear height from which the chain's slack is another one."""

_MANUAL = "sprocket makers' and organisers' lists; the slack is the manual's"


def _chain_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    session = outing.session
    shown, written = _moved(outing, seen), _worked(outing)
    if (shown or written) and session.chain_slack is None:
        yield opened(
            "chain-slack-not-measured",
            session.bike,
            outing,
            ("chain_slack",),
            subject="chain",
            what="; ".join((*shown, *written)),
            derived=not written,
        )


def _moved(outing: Outing, seen: Seen) -> list[str]:
    """List what moved the chain since the bike was last ridden; the front wheel and the fork never do."""
    session = outing.session
    before = seen.bike(session.bike).values
    words = []
    for key, label, unit in (
        ("front_sprocket", "front sprocket", "teeth"),
        ("rear_sprocket", "rear sprocket", "teeth"),
        ("links", "links", ""),
    ):
        old, new = before.get(key), getattr(session.setup, key)
        if old is not None and new is not None and old != new:
            words.append(f"{label} {old_to_new(str(old), str(new), unit)}")
    old, height = before.get("rear_height"), session.setup.rear_height
    if isinstance(old, float) and height is not None and abs(height.to("mm") - old) >= _REAR_HEIGHT_MM - 1e-9:
        words.append(f"rear ride height {old_to_new(f'{old:g} mm', str(height))}")
    if "rear" in changed_ends(outing, seen):
        words.append("rear wheel out")
    return words


def _worked(outing: Outing) -> list[str]:
    work = outing.session.work.values()
    done = [one.what for one in work if one.what in CHAIN and one.end != "front"]
    return [f"{what} in the work done" for what in dict.fromkeys(done)]


def _measured(one: Opened, outing: Outing) -> bool:
    return outing.session.bike == one.whom and outing.session.chain_slack is not None


def _measured_alike(one: Opened, outing: Outing) -> bool:
    """Return whether it was measured again with the bike standing as it did then."""
    return _measured(one, outing) and (outing.session.chain_slack_stance or "") == one.cause


def _measured_since(one: Opened, outing: Outing) -> Opened:
    """Remember that it was measured again, however the bike stood: enough where the book does not say how."""
    return attrs.evolve(one, answered=True) if _measured(one, outing) else one


def _chain(one: Opened, now: Present) -> Said:
    return Said(
        SERIOUS,
        f"Chain slack not measured since: {one.what}.",
        "Too tight it binds the shock and eats bearings; too loose it jumps.",
        "Measure at the tightest point with axle, pivot and sprocket in line, to the manual's figure.",
        one.what,
        (one.what,),
    )


def _slack_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _slack_read("chain-slack-outside-the-book", outing)


def _slack_read(kind: str, outing: Outing) -> Iterator[Opened]:
    session = outing.session
    if session.chain_slack is not None:
        yield opened(
            kind,
            session.bike,
            outing,
            ("chain_slack",),
            subject="chain",
            value=session.chain_slack.to("mm"),
            what=str(session.chain_slack),
            cause=session.chain_slack_stance or "",
        )


def _slack(one: Opened, now: Present) -> Said | None:
    if now.bike is None or now.bike.drive.slack_least is None:
        return None
    drive = now.bike.drive
    if drive.slack_stance is not None and one.cause != drive.slack_stance:
        return None
    if drive.slack_stance is None and one.answered:
        return None
    least = now.bike.drive.slack_least.to("mm")
    most = drive.slack_most.to("mm") if drive.slack_most is not None else least
    under, over = least - one.value, one.value - most
    if under <= 1e-9 and over <= now.limits[SLACK_OVER] + 1e-9:
        return None
    tight = under > 1e-9
    severity: Severity = HOLD if tight and under > now.limits[SLACK_UNDER_HOLD] + 1e-9 else SERIOUS
    by = f"{under if tight else over:g} mm {'under' if tight else 'over'} the book"
    return Said(
        severity,
        f"Chain slack {one.what}, {now.when(one)}: {by}.",
        "A chain that is too tight binds the shock and can break; at full travel it has to have slack left."
        if tight
        else "A chain that loose can climb off the sprocket and lock the rear wheel.",
        "Set it to the manual's figure at the tightest point, axle torqued, and measure it again.",
        f"slack {one.what} {one.stamp}; book {least:g} to {most:g} mm",
    )


def _stance_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _slack_read("chain-slack-measured-otherwise", outing)


def _stance(one: Opened, now: Present) -> Said | None:
    drive = now.bike.drive if now.bike is not None else None
    if drive is None or drive.slack_stance is None or drive.slack_least is None:
        return None
    return _otherwise(one, drive.slack_stance) if one.cause != drive.slack_stance else None


def _otherwise(one: Opened, stance: str) -> Said:
    stood = f"measured {_on(one.cause)}" if one.cause else "nobody wrote how the bike stood"
    return Said(
        NOTE,
        f"Chain slack {one.what}: {stood}; the book's is {_on(stance)}.",
        "Standing otherwise the same chain has another slack: the two figures are not compared.",
        f"Measure it {_on(stance)}, and enter slack and how the bike stood.",
        f"slack {one.what} {one.stamp}; {stood}",
    )


def _on(stance: str) -> str:
    return f"on the {stance}" if stance.endswith("stand") else f"with the {stance}"


declare(
    MatterKind(
        "chain-slack-not-measured",
        "bike",
        SERIOUS,
        "suspension",
        "measured at the tight point",
        _chain_opens,
        _chain,
        closes=_measured,
        guard="fork protrusion and front wheel never",
        at="session:chain_slack",
        source=_MANUAL,
        todo="measure the chain slack at its tight point",
        afterwards=False,
    )
)
declare(
    MatterKind(
        "chain-slack-outside-the-book",
        "bike",
        SERIOUS,
        "suspension",
        "measured within the book's window, the bike standing as the book says",
        _slack_opens,
        _slack,
        closes=_measured_alike,
        carried=_measured_since,
        guard="standing otherwise than the book says: to be measured again; no figure of the book: silent",
        at="session:chain_slack",
        source=_MANUAL,
        afterwards=False,
        limits=(SLACK_UNDER_HOLD, SLACK_OVER),
        needs=("bike",),
    )
)
declare(
    MatterKind(
        "chain-slack-measured-otherwise",
        "bike",
        NOTE,
        "suspension",
        "measured with the bike standing as the book says",
        _stance_opens,
        _stance,
        closes=_measured,
        guard="no stance or no figure of the book; standing as the book says",
        at="session:chain_slack",
        source=_MANUAL,
        todo="measure the chain slack standing as the book says",
        afterwards=False,
        needs=("bike",),
    )
)

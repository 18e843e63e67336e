"""The chain: its slack is measured after whatever moved it."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, Seen, declare, opened
from paddock_tui.matters.severity import SERIOUS
from paddock_tui.matters.work import changed_ends

CHAIN = ("wheel out", "axle", "chain", "sprocket")
"""Work after which the chain may stand otherwise."""

_REAR_HEIGHT_MM = 3.0
"""Change of the rear height from which the chain's slack is another one."""


def _chain_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    session = outing.session
    words = _moved(outing, seen)
    if words and session.chain_slack is None:
        yield opened(
            "chain-slack-not-measured",
            session.bike,
            outing,
            ("chain_slack",),
            subject="chain",
            what="; ".join(words),
        )


def _moved(outing: Outing, seen: Seen) -> list[str]:
    """List what moved the chain since the bike was last ridden; the front wheel and the fork never do."""
    session = outing.session
    before = seen.values.get(session.bike or "", {})
    words = []
    for key, label in (
        ("front_sprocket", "front sprocket"),
        ("rear_sprocket", "rear sprocket"),
        ("links", "links"),
    ):
        old, new = before.get(key), getattr(session.setup, key)
        if old is not None and new is not None and old != new:
            words.append(f"{label} {old} -> {new}")
    old, height = before.get("rear_height"), session.setup.rear_height
    if isinstance(old, float) and height is not None and abs(height.to("mm") - old) >= _REAR_HEIGHT_MM - 1e-9:
        words.append(f"rear height {old:g} mm -> {height}")
    if "rear" in changed_ends(outing, seen):
        words.append("rear wheel out")
    done = [one.what for one in session.work.values() if one.what in CHAIN and one.end != "front"]
    return words + [f"{what} in the work done" for what in dict.fromkeys(done)]


def _measured(one: Opened, outing: Outing) -> bool:
    return outing.session.bike == one.whom and outing.session.chain_slack is not None


def _chain(one: Opened, now: Present) -> Said:
    return Said(
        SERIOUS,
        f"Chain slack not measured since: {one.what}.",
        "Too tight it binds the shock and eats bearings; too loose it jumps.",
        "Measure at the tightest point with axle, pivot and sprocket in line, to the manual's figure.",
        one.what,
        (one.what,),
    )


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
        guard="fork height and front wheel never",
        at="session:chain_slack",
        source="sprocket makers' and organisers' lists; the slack is the manual's",
        todo="measure the chain slack at its tight point",
        afterwards=False,
    )
)

"""Help that came down since the last ride on such a surface, and a set-up made for somebody else's weight."""

from collections.abc import Iterator

import attrs

from paddock_tui.limits.matters import HELP_LEVELS, HELP_SHARE
from paddock_tui.matters.behaviour_rules import debriefed
from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import CAUTION, NOTE

_SLIPS = ("slides on drive", "loose on entry", "front locks", "rear locks", "tucks")


def _lowered_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    before = seen.bike(outing.bike)
    last = before.helps.get(outing.column, {})
    for name, now in outing.helps.items():
        before_it = last.get(name)
        old = before_it.value if before_it is not None else None
        if (
            before_it is None
            or old is None
            or old - now.help <= 1e-9
            or (outing.column, name, now.help) in before.ridden
        ):
            continue
        levels = abs(old - now.help) * now.steps
        share = old - now.help >= outing.limits[HELP_SHARE] - 1e-9
        under = now.start is None or now.help < now.start - 1e-9
        if share and under and levels >= outing.limits[HELP_LEVELS] - 1e-9:
            yield opened(
                "help-lowered",
                outing.session.bike,
                outing,
                ("setup", "controls", name),
                subject=name,
                what=now.shown,
                value=now.help,
                cause=f"{_share(old)} to {_share(now.help)} of most help since session {before_it.of}",
                derived=True,
            )


def _share(held: float) -> str:
    return "off" if held < 0 else f"{held * 100:.0f} %"


def _lowered_closes(one: Opened, outing: Outing) -> bool:
    """Return whether a debriefed session went without a slide or lock, or the help came back."""
    if outing.session.bike != one.whom or outing.column != one.column:
        return False
    now = outing.helps.get(one.subject)
    if now is not None and now.help > one.value + 1e-9:
        return True
    slid = any(felt.what in _SLIPS for felt in outing.session.symptoms.values())
    return outing.id != one.of and debriefed(outing) and not slid


def _lowered_here(one: Opened, now: Present) -> Said | None:
    if now.column != one.column:
        return None
    label = one.subject.replace("-", " ")
    return Said(
        NOTE if now.group in ("advanced", "race") else CAUTION,
        f"{label[:1].upper()}{label[1:]} at {one.what}: {one.cause}, never ridden so here.",
        "So much less at once, below where your group starts, and nobody has felt it on such a surface.",
        "One level at a time, an outing each; or back to what it was.",
        f"{label} {one.what} {one.stamp}; {one.cause}",
    )


def _theirs_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    if outing.theirs:
        yield opened(
            "sag-not-measured-for-this-rider",
            outing.session.bike,
            outing,
            ("sag", "front", "rider", "extended"),
            subject="rider",
            what=outing.theirs,
        )


def _theirs_carried(one: Opened, outing: Outing) -> Opened:
    """Count the ends whose sag was measured with this rider since."""
    session = outing.session
    if session.bike != one.whom or session.rider != one.rider:
        return one
    ends = {end for end, loads in session.sag.items() if _whole(loads.get("rider"))}
    return attrs.evolve(one, missing=tuple(sorted(ends | set(one.missing))))


def _whole(reading: object) -> bool:
    return all(getattr(reading, key, None) is not None for key in ("extended", "pushed", "lifted"))


def _theirs_closes(one: Opened, outing: Outing) -> bool:
    return len(_theirs_carried(one, outing).missing) == 2


def _theirs(one: Opened, now: Present) -> Said | None:
    if now.here(one) or now.session.rider != one.rider:
        # The session that it was copied into says it itself.
        return None
    return Said(
        CAUTION,
        f"Sag not measured since the set-up came from a rider: you are {one.what}.",
        "Height, balance and spring rate are made for a weight; aids and damping for a way of riding.",
        "Measure rider sag at both ends and set preload; aids from your own group.",
        f"{one.what}, session {one.of}; sag not measured at both ends",
        (one.what,),
    )


declare(
    MatterKind(
        "help-lowered",
        "bike",
        NOTE,
        "suspension",
        "a debriefed session without a slide or lock; or the help as it was",
        _lowered_opens,
        _lowered_here,
        closes=_lowered_closes,
        guard="another surface; a level ridden before in such conditions; where the group starts, or above",
        at="setup:setup.controls.{subject}",
        afterwards=False,
        limits=(HELP_LEVELS, HELP_SHARE),
        needs=("bike", "surface"),
    )
)
declare(
    MatterKind(
        "sag-not-measured-for-this-rider",
        "bike",
        CAUTION,
        "suspension",
        "sag measured with this rider at both ends",
        _theirs_opens,
        _theirs,
        carried=_theirs_carried,
        closes=_theirs_closes,
        guard="same weight; the session itself says it",
        at="session:sag",
        afterwards=False,
    )
)

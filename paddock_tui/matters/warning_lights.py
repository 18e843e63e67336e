"""Warning lights: engine ones keep the bike parked, those of an aid mean that it counts as off."""

from collections.abc import Iterator

from paddock_tui.matters.core import MatterKind, Opened, Outing, Present, Said, declare, opened
from paddock_tui.matters.incidents import incidents, part_missing, what_is_missing
from paddock_tui.matters.seen import Seen
from paddock_tui.matters.severity import HOLD, SERIOUS

_ENGINE = ("oil", "temperature")
_AIDS = ("ABS", "traction", "engine")

_MEANS = {
    "ABS": "With its warning light on there is no ABS: the next grabbed brake locks the wheel.",
    "traction": "With its warning light on there is no traction control, often no wheelie or launch control.",
    "engine": "With its warning light on the engine may cut, or run without its aids and softer maps.",
}


def _kind_of(lamp: str | None) -> str:
    if lamp in _ENGINE:
        return "engine-lamp-not-mended"
    return "aid-lamp-lit" if lamp in _AIDS else "lamp-not-explained"


_STANDING = ("before rolling", "wheel spun on the stand")
"""When a lamp of an aid is lit by its own test, or by a wheel that turns alone: an ignition cycle answers."""


def _opens(kind: str, outing: Outing) -> Iterator[Opened]:
    for number, one in incidents(outing, "warning lamp"):
        missing = part_missing(one, outing.session)
        cycled = kind == "aid-lamp-lit" and one.off_after_key is True
        if _kind_of(one.lamp) == kind and missing and not (cycled and one.lit in _STANDING):
            lamp = one.lamp or ""
            yield opened(
                kind,
                outing.session.bike,
                outing,
                ("incidents", number, "mended"),
                at=one.at,
                what=lamp,
                subject=lamp if kind == "aid-lamp-lit" else "bike",
                missing=missing,
                answered=cycled,
            )


def _ridden_without(one: Opened, outing: Outing) -> bool:
    """Return whether the lamp stayed off after an ignition cycle, and through a ridden session since."""
    if not one.answered or outing.session.bike != one.whom or not outing.ridden:
        return False
    return not any(lit.lamp in (one.what, None) for _, lit in incidents(outing, "warning lamp"))


def _engine(one: Opened, now: Present) -> Said:
    return Said(
        HOLD,
        f"The {one.what} warning light was on {now.when(one)}, and nothing says why.",
        "Without oil pressure or coolant an engine seizes within a lap and puts its oil on the track."
        + what_is_missing(one),
        "Engine off, let it cool, do not ride it back. Level, leaks, pressure or coolant by the manual; "
        "enter what was found and done.",
        f"{one.what} warning light {one.stamp}; not repaired",
    )


def _other(one: Opened, now: Present) -> Said:
    return Said(
        SERIOUS,
        f"A warning light was lit {now.when(one)}, and nothing says why.",
        "What a warning light means is in the manual; until that is read it may be brakes, oil or an aid."
        + what_is_missing(one),
        "Look up in the manual which warning light it is, find the cause, and enter light, cause and repair.",
        f"warning light {one.stamp}; not explained",
    )


def _aid(one: Opened, now: Present) -> Said:
    # The same as the aid switched off: for a novice in the wet that is a hold.
    # Whoever is not known is taken for a novice, and a track that nobody looked at for a wet one.
    worst = one.what != "engine" and now.column in ("wet", "") and now.group in ("novice", "")
    return Said(
        HOLD if worst else SERIOUS,
        f"The {one.what} warning light was on {now.when(one)}, and nothing says why: take it as off.",
        _MEANS[one.what] + what_is_missing(one),
        "Find the cause before going out: sensor gap and dirt, plug, fuse, fault code. Enter what was "
        "done. Until then ride as if it were off.",
        f"{one.what} warning light {one.stamp}; surface {now.session.surface or 'not known'}; "
        f"{now.group or 'unknown'} rider",
    )


def _engine_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _opens("engine-lamp-not-mended", outing)


def _other_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _opens("lamp-not-explained", outing)


def _aid_opens(outing: Outing, seen: Seen) -> Iterator[Opened]:
    return _opens("aid-lamp-lit", outing)


_ANSWERED = "what was found and done, by whom"

declare(MatterKind("engine-lamp-not-mended", "bike", HOLD, "brakes", _ANSWERED, _engine_opens, _engine))
declare(MatterKind("lamp-not-explained", "bike", SERIOUS, "brakes", _ANSWERED, _other_opens, _other))
declare(
    MatterKind(
        "aid-lamp-lit",
        "bike",
        SERIOUS,
        "brakes",
        "what was found and done, by whom; or off after an ignition cycle and through a ridden session",
        _aid_opens,
        _aid,
        closes=_ridden_without,
        guard="lit before rolling, or with the wheel spun on the stand: the ignition cycle alone closes it",
        afterwards=False,
    )
)

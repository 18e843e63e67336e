"""The levels of a control as the bike's file has them, ordered by what they do."""

from paddock_tui.calc.errors import Inconsistent, OutOfRange
from paddock_tui.calc.levels import Levels
from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.shapes.settings import OFF

_MOST_LEVELS = 1000
"""No dash counts further; a range above it is a slip of the finger."""


_KNOWN: dict[tuple[int, str], tuple[Control, Levels | None]] = {}
_MOST_KNOWN = 512


def levels_of(name: str, control: Control) -> Levels | None:
    """Return the levels of a control in the bike's own order; None where there are none that fit.

    Their named end is the one that helps most, brakes least with the engine, or launches most gently.
    """
    # Asked of the same few controls hundreds of times for a review; compared by identity, which is quick.
    known = _KNOWN.get((id(control), name))
    if known is None or known[0] is not control:
        if len(_KNOWN) >= _MOST_KNOWN:
            _KNOWN.clear()
        known = _KNOWN[id(control), name] = (control, _made(name, control))
    return known[1]


def _made(name: str, control: Control) -> Levels | None:
    ends = {"engine-braking": control.frees_most, "launch": control.gentlest}
    most = ends.get(function_of(name, control), control.most_help)
    off = control.off if control.off is not None else False
    try:
        if control.levels is not None:
            low, high = (int(level) for level in control.levels)
            if abs(high - low) > _MOST_LEVELS:
                return None
            return Levels.span(low, high, most if isinstance(most, int) else None, off)
        if control.choices is not None:
            # The word off among the words means off, also where the file does not say that it can be off.
            off = off or OFF in control.choices
            return Levels.choices(control.choices, most if isinstance(most, str) else None, off)
        if control.kind == "switch":
            return Levels.choices(("on",), "on", True)
    except (Inconsistent, OutOfRange):
        return None
    return None

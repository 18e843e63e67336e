"""What a line as a whole may not do: set what the riding mode fixes, or what the bike has not."""

from paddock_tui.entry.line import Piece
from paddock_tui.entry.line_state import State
from paddock_tui.records.bike import Bike
from paddock_tui.records.edits import MISSING
from paddock_tui.records.in_force import control_in_force
from paddock_tui.records.setup import SetUp

_MODE = ("setup", "mode")
_CONTROLS = ("setup", "controls")
_OF_BIKE = ("controls", "adjusters")


def check_line(state: State) -> None:
    """Refuse the pieces that may not be set, the riding mode of the same line counted in."""
    mode = _mode(state)
    bike = state.context.bike
    for piece in list(state.pieces):
        if piece.path == ("bike",) and any(other.path[0] == "setup" for other in state.pieces):
            message = "another bike has other words: its set-up is not read on the same line"
            state.refuse(piece.start, piece.end, message, "enter the bike first, by itself")
        if bike is None or piece.value is MISSING or len(piece.path) != 3 or piece.path[0] != "setup":
            continue
        _check_part(state, piece, bike, mode)


def _check_part(state: State, piece: Piece, bike: Bike, mode: str | None) -> None:
    kind, name = piece.path[1:]
    held = {"controls": bike.controls, "adjusters": bike.adjusters}.get(kind)
    if held is not None and name not in held:
        state.refuse(piece.start, piece.end, f"{bike.name or 'this bike'} has no {piece.label}")
        return
    if piece.path[:2] != _CONTROLS or mode is None or mode not in bike.modes:
        return
    fixed = control_in_force(name, SetUp(mode=mode), bike).fixed
    if fixed is not None:
        message = f"{piece.label} is fixed at {fixed} by the riding mode {mode}"
        state.refuse(piece.start, piece.end, message, "choose another riding mode, or leave it out")


def _mode(state: State) -> str | None:
    """Return the riding mode that will stand once the line is kept."""
    for piece in state.pieces:
        if piece.path == _MODE:
            return None if piece.value is MISSING else str(piece.value)
    setup = getattr(state.context.record, "setup", None)
    return setup.mode if setup is not None else None

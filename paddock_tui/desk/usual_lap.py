"""The usual lap of a session's rider, for whoever counts down in laps or looks at typed ones."""

from paddock_tui.desk.desk import Desk
from paddock_tui.records.paths import Ref


def usual_lap_s(desk: Desk, ref: Ref) -> float | None:
    """Return this rider's usual lap on this bike at this venue, in s; None where there is none."""
    if ref.kind != "session":
        return None
    from paddock_tui.facts.pace import usual_lap

    about = desk.about(ref)
    found = usual_lap(about.history, about.session.rider, about.id_of("venue"))
    return found.seconds if found is not None and found.timed else None

"""The next spring where preload is at its end: the rate, whom it would serve, how sure that is."""

from paddock_tui.advice import figures
from paddock_tui.advice.about import End, latest_sag
from paddock_tui.advice.answered import answered
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.next_change.words import Kind, Proposal
from paddock_tui.advice.sag import sag
from paddock_tui.facts.sag import sag_of_reading_mm

AT_ITS_END = "preload is at the end of what it may use"

SPRING_STEP = 0.05
"""From one spring that is sold to the next, as a share of the rate. Common practice, no source."""

MEASURED_TO_MM = 3.0
"""Two sags measured again come out this near each other. Common practice, no source."""


def next_spring(case: Case, end: End, said: str, because: str = AT_ITS_END) -> Proposal:
    """Say which spring is next; where both sags are not known, or top-out springs pull, what is missing."""
    answers = answered(case.about, sag, end)
    serves = answers["serve"]
    why = f"{said}; {because}"
    watch = "a suspension technician fits it and measures both sags again"
    if case.bike_end(end).top_out_springs != "none":
        text = (
            f"The spring at the {end} is next: which rate, only a technician can tell with top-out springs."
        )
        return Proposal(Kind.OWN, case.named, text, why, watch=watch)
    if not serves.known:
        needed = ", ".join(f"the {one}" for one in serves.missing) or serves.text
        text = f"The spring at the {end} is next. For its rate enter {needed}."
        return Proposal(Kind.LOOK, case.named, text, why, watch=watch)
    pressed = _pressed_mm(case, end)
    text = f"The spring at the {end} is next: {serves.text}{_whom(case)}{_how_sure(pressed)}."
    return Proposal(Kind.OWN, case.named, text, why, "both sags come out as wanted", watch)


def _pressed_mm(case: Case, end: End) -> float | None:
    """Return how far this rider presses the end: rider sag less free sag, in mm."""
    found: list[float] = []
    for load in ("rider", "alone"):
        measured = latest_sag(case.about, end, load, case.session.rider)
        mm = sag_of_reading_mm(measured.reading) if measured is not None else None
        if mm is None:
            return None
        found.append(mm)
    return found[0] - found[1]


def _whom(case: Case) -> str:
    """Say for which riders this spring is the nearest: the rate goes as the weight that presses."""
    rider = case.about.situation.rider
    weight = rider.weight if rider is not None else None
    if weight is None:
        return "; enter the rider's weight for whom it serves"
    kg, half = weight.to("kg"), SPRING_STEP / 2.0
    low, high = (figures.mass(kg * share, case.about.units) for share in (1.0 - half, 1.0 + half))
    return f"; it serves riders of about {low} to {high} in kit"


def _how_sure(pressed_mm: float | None) -> str:
    if pressed_mm is None or pressed_mm <= MEASURED_TO_MM:
        return ""
    percent = 100.0 * MEASURED_TO_MM / pressed_mm
    return f"; sags read to {MEASURED_TO_MM:g} mm leave it {percent:.0f} % either way"

"""Rules about what can be: figures, names and values that this bike cannot have."""

from paddock_tui.calc.levels import Levels
from paddock_tui.facts.controls import Mapped, of_range
from paddock_tui.facts.record_checks import AtOdds, Figure, NotOnBike
from paddock_tui.facts.situation import Dangling
from paddock_tui.facts.suspension import AdjusterShown
from paddock_tui.records.electronics import Control, speed_of
from paddock_tui.records.paths import spell
from paddock_tui.records.shapes.numbers import show_number
from paddock_tui.records.shapes_of_bike import can_be_off, is_off, label_of
from paddock_tui.rules.core import CAUTION, HOLD, NOTE, RaisedFinding, Remedy, Result, rule

KIND_WORDS = {"tyres": "tyre set"}

ARITHMETIC = "the record itself: the bike's file says what it offers"


@rule(
    "impossible-figure", CAUTION, of_set_up=True, source="paddock practice, unpublished: bands of what can be"
)
def impossible_figure(impossible_figures: tuple[Figure, ...]) -> Result:
    """A figure outside what can be is a slip; a hold only where the verdict rests on it."""
    return [
        RaisedFinding(
            message=f"{_first(figure.label)} cannot be {figure.written}{_asked(figure.slip)}.",
            quoted=(_first(figure.label), figure.written),
            why=f"It lies outside {figure.band}: a slip, or the wrong unit. Nothing is worked out from it.",
            severity=HOLD if figure.essential else CAUTION,
            remedy=Remedy("Measure or read it again, and enter it with its unit."),
            subject=spell(figure.path),
            role=figure.role,
            path=figure.path,
            facts=f"{figure.label} {figure.written}",
        )
        for figure in impossible_figures
    ]


@rule(
    "level-not-on-the-bike",
    HOLD,
    of_set_up=True,
    source=ARITHMETIC,
    per="control",
    at="setup:setup.controls.{subject}",
)
def level_not_on_the_bike(subject: str, control: Control, set_value: int | str, offered: Levels) -> Result:
    """A level, word or 'off' that this control does not have."""
    if offered.offers(set_value):
        return None
    has = _offered_words(control, offered)
    return RaisedFinding(
        message=f"{_start(subject)} {set_value} is not on this bike: {has}.",
        quoted=(str(set_value), has),
        why="The bike cannot be at this value, so the record and the bike differ.",
        remedy=Remedy(f"Read the dash and enter what it shows ({has})."),
        facts=f"{label_of(subject)} {set_value}; {has}",
    )


@rule(
    "speed-not-on-the-bike",
    HOLD,
    of_set_up=True,
    source=ARITHMETIC,
    per="control",
    at="setup:setup.controls.{subject}",
)
def speed_not_on_the_bike(
    subject: str, control: Control, set_value: int | str, speeds_offered: tuple[str, ...]
) -> Result:
    """A speed that this control does not offer, or one that is no speed."""
    if can_be_off(control) and is_off(control, set_value):
        return None
    wanted = speed_of(set_value)
    speeds = [found for found in map(speed_of, speeds_offered) if found is not None]
    if wanted is not None and (not speeds or any(wanted.same(speed) for speed in speeds)):
        return None
    has = ", ".join(speeds_offered) or "a speed with its unit"
    return RaisedFinding(
        message=f"{_start(subject)} {set_value} is not on this bike.",
        quoted=(str(set_value),),
        why="The bike cannot be at this value, so the record and the bike differ.",
        remedy=Remedy(f"Read the dash and enter what it shows ({has})."),
        facts=f"{label_of(subject)} {set_value}; {has}",
    )


@rule(
    "adjuster-outside-its-range",
    CAUTION,
    of_set_up=True,
    source=ARITHMETIC,
    per="adjuster",
    at="setup:setup.adjusters.{subject}",
)
def adjuster_outside_its_range(
    subject: str, adjuster_value: AdjusterShown, adjuster_range: tuple[float, float]
) -> Result:
    """A number of clicks, turns or millimetres that the adjuster does not have."""
    low, high = adjuster_range
    if low <= adjuster_value.value <= high:
        return None
    bounds = f"{show_number(low)} to {show_number(high)}"
    return RaisedFinding(
        message=f"{_start(subject)} {show_number(adjuster_value.value)} cannot be: it goes from {bounds}"
        f" ({_miscounted(adjuster_value.value, low, high)}).",
        why="The adjuster has no such position, so the record and the bike differ.",
        remedy=Remedy("Turn it in gently to the stop, count out again, and enter the count."),
    )


@rule("not-on-this-bike", HOLD, of_set_up=True, source=ARITHMETIC, at="setup:setup")
def named_but_not_on_this_bike(not_on_bike: tuple[NotOnBike, ...]) -> Result:
    """A control, adjuster, riding mode or preset that the bike does not have."""
    return [
        RaisedFinding(
            message=f"This bike has no {lost.what} {lost.name}.",
            quoted=(lost.name,),
            why="The set-up names what the bike does not have: a slip, or a set-up of another bike.",
            remedy=Remedy(
                f"Clear it, or put one that it has: {', '.join(lost.offered[:6])}."
                if lost.offered
                else "Clear it: the bike has none."
            ),
            subject=spell(lost.path[1:]),
            path=lost.path,
            facts=f"{lost.what} {lost.name}",
        )
        for lost in not_on_bike
    ]


@rule(
    "record-at-odds-with-itself",
    CAUTION,
    source=ARITHMETIC,
    absorbs=("direction-not-known", "freeing-end-not-known"),
)
def record_at_odds_with_itself(records_at_odds: tuple[AtOdds, ...]) -> Result:
    """Values of one record contradict each other; on the bike nothing can then be judged by them: a hold."""
    return [
        RaisedFinding(
            message=f"{_first(one.found.message)}.",
            quoted=(_first(one.found.message),),
            why="Each value can be read, but not all can be true; what depends on them is not assessed.",
            remedy=Remedy(f"Look at it again, and enter {one.found.mend}."),
            severity=NOTE if one.found.harmless else HOLD if one.role == "bike" else CAUTION,
            subject=spell(one.found.path),
            role=one.role,
            path=one.found.path,
            parts=one.found.path[1:2],
            facts=one.found.message,
        )
        for one in records_at_odds
    ]


@rule("reference-not-found", HOLD, of_set_up=True, source=ARITHMETIC)
def reference_not_found(lost_references: tuple[Dangling, ...]) -> Result:
    """A reference to a record that is not in the garage: what it would tell is not judged."""
    return [
        RaisedFinding(
            message=f"There is no {KIND_WORDS.get(lost.kind, lost.kind)} {lost.id} in this garage.",
            quoted=(lost.id,),
            why=f"The {lost.role} refers to it, so nothing that depends on it can be judged.",
            remedy=Remedy("Correct the name, or bring the file back."),
            subject=spell(lost.path),
            role=lost.role,
            path=lost.path,
            facts=f"{lost.kind} {lost.id}",
        )
        for lost in lost_references
    ]


@rule(
    "outside-the-riding-mode",
    HOLD,
    of_set_up=True,
    source=ARITHMETIC,
    per="control",
    at="setup:setup.controls.{subject}",
)
def outside_the_riding_mode(
    subject: str,
    control: Control,
    set_value: int | str,
    mode_for: Mapped,
    left_by_mode: tuple[int | str, ...],
) -> Result:
    """A value that the riding mode in use does not allow."""
    bounds = left_by_mode
    if is_off(control, set_value):
        if subject in (mode_for.mode.off_allowed or ()):
            return None
        allowed = "it cannot be off in it"
    elif isinstance(bounds[0], int) and isinstance(set_value, int):
        low, high = sorted(int(bound) for bound in bounds)
        if low <= set_value <= high:
            return None
        allowed = f"it allows {low} to {high}"
    else:
        if set_value in bounds:
            return None
        allowed = f"it allows {', '.join(str(bound) for bound in bounds)}"
    return RaisedFinding(
        message=f"{_start(subject)} {set_value} is not for {mode_for.name}: {allowed}.",
        quoted=(str(set_value), mode_for.name, allowed),
        why="The riding mode limits this control; the bike will not take the value, or will change it.",
        remedy=Remedy("Choose a value that the riding mode allows, or another riding mode."),
        facts=f"{label_of(subject)} {set_value}; riding mode {mode_for.name}; {allowed}",
    )


def _miscounted(value: float, low: float, high: float) -> str:
    """Name the slip of a count: a minus for the other way, a point, or counted from the other end."""
    if value > 2 * high - low and low <= value / 10 <= high:
        return "a decimal point?"
    return "counted from the other end?"


def _offered_words(control: Control, offered: Levels) -> str:
    has = of_range(control).strip(" ()").removeprefix("range ") or ", ".join(
        str(value) for value in offered.values
    )
    return f"it has {has}{' and off' if control.off is True and 'off' not in has else ''}"


def _asked(slip: str) -> str:
    return f" ({slip})" if slip else ""


def _start(subject: str) -> str:
    return _first(label_of(subject))


def _first(text: str) -> str:
    return text[:1].upper() + text[1:]

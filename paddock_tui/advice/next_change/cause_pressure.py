"""Hot pressures far off their target: the start moves to what the bench works out, before any setting."""

from collections.abc import Iterator

from paddock_tui.advice import figures
from paddock_tui.advice.about import ENDS, End
from paddock_tui.advice.next_change.evidence import travel_lacks, warmer_since
from paddock_tui.advice.next_change.given import Given
from paddock_tui.advice.next_change.start_pressure import start_move
from paddock_tui.advice.next_change.words import Kind, Move, Passed, Proposal, Refusal, Spoken
from paddock_tui.limits.next_change import GAUGE_ERRS, HOT_LAPS
from paddock_tui.limits.pressures import OFF_TARGET_CAUTION


def hot_pressure(given: Given) -> Spoken:
    """Propose the start from which the hot target is met, where the hot reading was far off it."""
    case = given.case
    limit_kpa = 100.0 * case.limits[OFF_TARGET_CAUTION]
    over = {end: case.over_target_kpa(end) for end in ENDS}
    off: list[End] = [end for end, by in over.items() if by is not None and abs(by) > limit_kpa]
    if not off:
        read = [end for end, by in over.items() if by is not None]
        if not read:
            return Passed("no hot reading that counts, or no hot target")
        return Passed(f"{' and '.join(read)} within {limit_kpa / 100.0:g} bar of the hot target")
    late = [end for end in off if not case.hot_in_time(end)]
    if late:
        return Passed(f"the {late[0]} was read warm, not hot")
    laps = case.all_laps()
    if laps is not None and laps < case.limits[HOT_LAPS]:
        return Passed(f"{laps} laps: the tyres were not hot yet")
    return _moved(given, off)


def _moved(given: Given, off: list[End]) -> Spoken:
    case = given.case
    made = {end: start_move(case, end) for end in off}
    moves = [one for one in made.values() if isinstance(one, Move)]
    refused = [one for one in made.values() if isinstance(one, Refusal)]
    said = "; ".join(_off(given, end) for end in off)
    if not moves:
        if not any(one.own for one in refused):
            return Passed(f"{said}; " + "; ".join(one.reason for one in refused))
        text = "; ".join(one.reason for one in refused)
        text = f"{text[:1].upper()}{text[1:]}."
        return Proposal(Kind.LOOK, "pressures", text, f"{said}; it comes before any setting")
    whole = Move(
        "; ".join(one.reads for one in moves),
        tuple(put for one in moves for put in one.puts),
        tuple(named for one in moves for named in one.about),
    )
    return Proposal(
        Kind.CHANGE,
        " and ".join(f"{end} pressure" for end in off),
        whole.reads,
        f"{said}; pressures come before every other setting",
        "the tyre works in its range; then feel again",
        "the next hot reading",
        whole,
        passed_over=tuple(one.reason for one in refused),
    )


def _off(given: Given, end: End) -> str:
    over = given.case.over_target_kpa(end) or 0.0
    by = figures.pressure(abs(over), given.about.units)
    return f"{end} pressure {by} {'over' if over > 0 else 'under'} its hot target"


def beside(given: Given) -> Iterator[str]:
    """Say what is no cause: hot pressures a little off their target, travel read in vain, the track."""
    case = given.case
    limit_kpa = 100.0 * case.limits[OFF_TARGET_CAUTION]
    for end in ENDS:
        over = case.over_target_kpa(end)
        if over is not None and 100.0 * case.limits[GAUGE_ERRS] < abs(over) <= limit_kpa:
            yield f"{_off(given, end)}: the row of its start says where to set it"
    yield from travel_lacks(case)
    found = warmer_since(case) if given.felt else None
    if found is not None:
        before, by = found
        way = "warmer" if by > 0 else "colder"
        yield f"the track is {abs(by):.0f} C {way} than in session {before.session.number or before.id}: " + (
            "what is new may be its doing"
        )

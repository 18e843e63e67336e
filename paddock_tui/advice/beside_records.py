"""Which answer stands beside which row of a tyre set, a bike or a day."""

from paddock_tui.advice.about import ENDS, About
from paddock_tui.advice.answered import answered, by_key
from paddock_tui.advice.beside_setup import BesideRow
from paddock_tui.advice.bike_counts import bike_counts, service_answers
from paddock_tui.advice.brake_pads import pads_answer
from paddock_tui.advice.calculators import Answer
from paddock_tui.advice.more_rows import bike_rows
from paddock_tui.advice.noise import noise, noise_of
from paddock_tui.advice.tyre_life import tyre_life
from paddock_tui.advice.tyre_ratings import tyre_ratings
from paddock_tui.records.day import RidingDay
from paddock_tui.records.paths import Path
from paddock_tui.records.tyres import TyreSet


def beside_tyres(about: About, name: str, tyres: TyreSet) -> dict[Path, BesideRow]:
    """Return the answers for the rows of the tyre set `name`: age and counts, load and speed."""
    found: dict[Path, BesideRow] = {}
    ratings = by_key(tyre_ratings(about, tyres, name), about)
    for end in ENDS:
        life = by_key(tyre_life(about, name, tyres, end), about)
        found[end, "date_code"] = _beside(life["age"])
        found[end, "cycles_before"] = _beside(life["cycles"])
        found[end, "distance_before"] = _beside(life["ridden"])
        found[end, "size"] = _both(ratings[f"{end}_load"], ratings[f"{end}_speed"])
    return found


def beside_bike(about: About) -> dict[Path, BesideRow]:
    """Return the answers for the rows of the bike in question: counters, service, pads."""
    found: dict[Path, BesideRow] = {}
    if about.situation.bike is None:
        return found
    counts = answered(about, bike_counts)
    found["start", "hours"] = _beside(counts["hours"])
    found["start", "kilometres"] = _beside(counts["distance"])
    for item, (hours, distance, date) in service_answers(about).items():
        found["service", item, "every_hours"] = _beside(hours)
        found["service", item, "every_distance"] = _beside(distance)
        found["service", item, "every"] = _beside(date)
    for end in ENDS:
        found[end, "pads_start"] = _beside(pads_answer(about, end))
    for path, answer in bike_rows(about):
        before = found.get(path)
        working = () if before is None else before.working
        short = (answer.short if answer.known else "") if before is None or not before.short else before.short
        found[path] = BesideRow(short, (), (*working, *answer.working))
    return found


def beside_day(about: About, day: RidingDay) -> dict[Path, BesideRow]:
    """Return the answers for the rows of a day: each noise reading to its limit, and the revs of the test."""
    found: dict[Path, BesideRow] = {}
    for rider, bikes in day.entries.items():
        for bike, entry in bikes.items():
            margin = noise_of(about, entry.noise.reading, day.limits.noise)
            found["entries", rider, bike, "noise", "reading"] = _beside(margin)
    if about.situation.bike is not None:
        found["limits", "noise"] = _beside(answered(about, noise)["revs"])
    return found


def _beside(answer: Answer) -> BesideRow:
    """Say a few words where something is known; what is missing stands in the working only."""
    return BesideRow(answer.short if answer.known else "", (), answer.working)


def _both(one: Answer, other: Answer) -> BesideRow:
    said = ", ".join(filter(None, (answer.short for answer in (one, other) if answer.known)))
    return BesideRow(said, (), (*one.working, *other.working))

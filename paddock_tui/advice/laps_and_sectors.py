"""Consistency of the clean laps with its interval, and the ideal lap of the sectors that are written."""

from collections.abc import Iterable, Mapping

from paddock_tui.advice.about import About
from paddock_tui.advice.calculators import Answer, Answered, Calculator, Input, Inputs, Method, told
from paddock_tui.advice.session_laps import lap_words, shift_words, stint_of
from paddock_tui.calc.chi_square import deviation_band
from paddock_tui.calc.descriptive import autocorrelation
from paddock_tui.calc.errors import Inconsistent
from paddock_tui.calc.regression import least_squares
from paddock_tui.calc.sectors import ideal_lap
from paddock_tui.calc.stint import Stint
from paddock_tui.records.shapes import Number

CONSISTENCY = Method(
    "s / mean lap, s between s sqrt((n - 1) / q) of both chi-square quantiles q",
    "laps that vary like one normal distribution: traffic, fuel and tyres make them vary otherwise",
    "three clean laps or more; 95 %",
    "Montgomery, Applied Statistics, chapter 8 (not checked in print); quantiles checked against a library",
)
DRIFT = Method(
    "least squares through clean laps by their number, with the deviation of the slope",
    "a straight drift: a tyre that goes off at the end bends it",
    "four clean laps or more",
    "Draper and Smith 1998, chapter 1",
)
IDEAL = Method(
    "sum of the best time of each sector",
    "nobody has ridden it: a sector that cost the next one counts in it all the same",
    "laps with the same sectors, two or more",
    "arithmetic",
)
INPUTS = (Input("covers", "interval covers", Number(50, 99, step=5, unit="%")),)
_FEWEST = 3


def laps_and_sectors(about: About) -> Calculator:
    """Return the calculator of this session's laps and sectors."""
    session = about.session
    sectors = {int(lap): tuple(float(one) for one in times) for lap, times in session.sectors.items()}
    found = stint_of(session)

    def compute(inputs: Inputs) -> Iterable[Answer]:
        return (_consistency(found, inputs), _drift(found, inputs), _ideal(sectors, inputs))

    return Calculator("laps", "laps and sectors", INPUTS, {}, compute)


def _consistency(found: Stint, inputs: Inputs) -> Answer:
    def make() -> Answered:
        times, scatter = found.times_s, found.deviation_s
        if scatter is None or len(times) < _FEWEST:
            raise Inconsistent("laps", f"{len(times)} clean, it takes {_FEWEST}")
        covers = inputs.amount_or("covers", "%", 95.0) / 100.0
        band, mean = deviation_band(scatter, len(times), covers), sum(times) / len(times)
        share = [100.0 * one / mean for one in (band.deviation, band.low, band.high)]
        said = f"{share[0]:.2f} %"
        steps = (
            f"s of {len(times)} clean laps = {scatter:.3f} s, {band.low:.3f} s to {band.high:.3f} s",
            f"s / mean = {scatter:.3f} s / {mean:.3f} s = {said}",
        )
        text = f"{said} of a lap ({share[1]:.2f} to {share[2]:.2f} %), {scatter:.2f} s from lap to lap"
        return Answered(text, f"consistent to {said}", steps=steps)

    return told(inputs, "consistency", "consistency", (), CONSISTENCY, make, ("covers",))


def _drift(found: Stint, inputs: Inputs) -> Answer:
    def make() -> Answered:
        times = found.times_s
        if len(times) < _FEWEST + 1 or len(set(times)) == 1:
            raise Inconsistent("laps", f"{len(times)} clean, it takes {_FEWEST + 1} that are not all similar")
        line = least_squares([float(one.number) for one in found.clean], times)
        said = f"{shift_words(line.slope)} a lap"
        sd = 0.0 if line.slope_sd is None else line.slope_sd
        each = f"each lap goes with the one before by {autocorrelation(times):+.2f} (1: the same way, 0: not)"
        return Answered(
            f"{said}, give or take {sd:.2f} s", more=(each,), steps=(f"slope of {len(times)} laps = {said}",)
        )

    return told(inputs, "drift", "drift over session", (), DRIFT, make)


def _ideal(sectors: Mapping[int, tuple[float, ...]], inputs: Inputs) -> Answer:
    def make() -> Answered:
        found = ideal_lap(sectors)
        said, best = lap_words(found.ideal_s, 3), lap_words(found.best_s, 3)
        parts = " + ".join(f"{one.best_s:.3f} s (lap {one.best_lap})" for one in found.sectors)
        widest = found.widest
        where = f"most to find in sector {widest.number}: {widest.to_find_s:.2f} s to its usual time"
        text = f"{said}, {found.best_s - found.ideal_s:.2f} s under lap {found.best_lap} ({best}); {where}"
        return Answered(text, f"ideal {said}", steps=(f"{parts} = {said}",))

    return told(inputs, "ideal", "ideal lap", (), IDEAL, make)

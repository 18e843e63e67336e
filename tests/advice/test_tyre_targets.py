"""One hot and one cold target for all who speak of one: review, row, bench, next change, wet package."""

import datetime as dt
import itertools
import re
from decimal import Decimal

import attrs
import pytest

from paddock_tui.advice.about import ENDS, About, End
from paddock_tui.advice.next_change import gate
from paddock_tui.advice.next_change.case import Case
from paddock_tui.advice.pressures import pressures
from paddock_tui.facts import ABSENT, NotKnown
from paddock_tui.facts.tyre_targets import hot_target_of
from paddock_tui.quantities import Quantity, parse
from paddock_tui.records.hot_target import HotTarget
from paddock_tui.records.session_parts import PressureReading, Symptom
from paddock_tui.rules import review
from tests.advice.given import BAR, about, sample, session, tyres
from tests.every import every
from tests.sample import SAMPLE

SESSIONS = sorted(path.stem for path in SAMPLE.glob("sessions/*/*.toml"))
BOTH = """
[front]
hot_dry = "2.50 bar"
hot_wet = "2.30 bar"
[rear]
hot_dry = "2.35 bar"
hot_wet = "2.10 bar"
"""


def by_the_review(at: About, end: End) -> HotTarget | None:
    found = at.situation.facts().get("hot_target", end)
    return None if found is ABSENT or isinstance(found, NotKnown) else found


def test_over_the_whole_sample_all_speak_of_the_same_hot_target() -> None:
    told = 0
    for name in SESSIONS:
        at = sample("session", name)
        case = Case(at, Symptom())
        filled = pressures(at).filled
        for end in ENDS:
            wanted = by_the_review(at, end)
            row = filled.get(f"{end}_hot")

            assert case.target(end) == wanted, (name, end)
            aim = nearest(at, end, wanted) if wanted is not None else None
            assert (row.value if row else None) == aim, (name, end)
            told += wanted is not None
    assert told > 20


def nearest(at: About, end: End, wanted: HotTarget) -> Quantity:
    """Return what a reading of the session would be set to: without one the lower end."""
    hot = at.session.pressures.get("hot")
    read = getattr(hot, end) if hot is not None else None
    return wanted.pressure if read is None else wanted.nearest(read)


def read_hot(at: About, by_bar: Decimal) -> About | None:
    """Return the session as if both tyres were read hot so far from the review's target; None without one."""
    targets = [by_the_review(at, end) for end in ENDS]
    if None in targets or at.situation.session is None:
        return None
    ends = [one.high if by_bar > 0 else one.pressure for one in targets if one is not None]
    off = [Quantity(Decimal(str(one.to("bar"))) + by_bar, "bar") for one in ends]
    hot = PressureReading(at=dt.time(12, 1), front=off[0], rear=off[1])
    ridden = attrs.evolve(
        at.situation.session, parked=dt.time(12), pressures={**at.session.pressures, "hot": hot}
    )
    return attrs.evolve(at, situation=attrs.evolve(at.situation, session=ridden))


def test_over_the_whole_sample_the_next_change_is_as_far_off_as_the_review_says() -> None:
    compared = 0
    for name, by in itertools.product(SESSIONS, ("0.21", "-0.21")):
        at = read_hot(sample("session", name, BAR), Decimal(by))
        if at is None:
            continue
        looked = {one.what: one for one in gate.looked_at(at)}
        for one in review(at.situation).findings:
            if one.rule != "hot-pressure-off-its-target":
                continue
            off = re.search(r"is (\S+ (?:bar|psi)) (over|under)", one.message)
            assert off is not None, one.message
            amount, said = parse(off[1]), looked[f"{one.subject} pressure"].said
            there = parse(" ".join(said.split()[:2]))
            assert isinstance(amount, Quantity)
            assert isinstance(there, Quantity), said
            assert amount.to("bar") == pytest.approx(there.to("bar"), abs=0.0101), (name, said)
            assert off[2] in said
            compared += 1
    assert compared > 20


def test_a_drying_session_is_measured_by_the_dry_figure_by_both() -> None:
    at = sample("session", "2026-06-20-2-magpie")

    assert at.session.surface == "drying"
    assert (
        str(by_the_review(at, "front")) == str(Case(at, Symptom()).target("front")) == "2.50 bar to 2.55 bar"
    )
    assert all("over its hot target" not in one.said for one in gate.looked_at(at))


@every(
    ("surface", "front"),
    [
        ("dry", "2.50 bar"),
        ("damp", "2.50 bar"),
        ("drying", "2.50 bar"),
        ("wet", "2.30 bar"),
        ("standing water", "2.30 bar"),
        (None, "None"),
    ],
)
def test_the_figure_by_the_surface(surface: str | None, front: str) -> None:
    found = hot_target_of(tyres(BOTH).front, surface)

    assert str(found and found.pressure) == front


def test_a_rain_tyre_has_its_figure_in_the_damp_and_none_in_the_dry() -> None:
    rain = tyres('[front]\nhot_wet = "2.30 bar"\n').front

    found = [hot_target_of(rain, one) for one in ("damp", "wet", "dry")]
    assert [one and one.figure for one in found] == ["wet", "wet", None]


def test_without_the_surface_no_target_is_guessed_and_it_is_asked_for() -> None:
    at = about(session=session(""), tyres=tyres(BOTH))

    start = next(one for one in pressures(at).answers(BAR) if one.key == "front_start")
    assert "surface, for the hot target" in start.missing
    looked = next(one for one in gate.looked_at(at) if one.what == "front pressure")
    assert (looked.right, looked.said) == (None, "the surface was not written down")


def test_the_damp_package_speaks_of_the_figure_that_the_review_measures_by() -> None:
    said = 0
    for name in SESSIONS:
        at = sample("session", name)
        found = at.situation.facts().get("wet_package")
        words = " ".join(getattr(found, "not_set", ()))
        if "pressures toward the" in words:
            front, rear = (by_the_review(at, end) for end in ENDS)
            assert f"hot {front} front, {rear} rear" in words, name
            said += 1
    assert said > 0


WINDOW = BOTH.replace('hot_dry = "2.50 bar"', 'hot_dry = "2.50 bar"\nhot_dry_to = "2.60 bar"')


@every(
    ("read", "over", "set_to"),
    [
        ("2.40 bar", -0.10, "2.50 bar"),
        ("2.50 bar", 0.0, "2.50 bar"),
        ("2.57 bar", 0.0, "2.57 bar"),
        ("2.60 bar", 0.0, "2.60 bar"),
        ("2.75 bar", 0.15, "2.60 bar"),
        ("38 psi", 0.02, "2.60 bar"),
    ],
)
def test_a_pressure_within_the_window_is_on_target_and_one_outside_is_off_its_nearer_end(
    read: str, over: float, set_to: str
) -> None:
    found = hot_target_of(tyres(WINDOW).front, "drying")
    pressure = parse(read)
    assert found is not None
    assert isinstance(pressure, Quantity)

    assert found.over_bar(pressure) == pytest.approx(over, abs=0.0005)
    assert str(found.nearest(pressure)) == set_to

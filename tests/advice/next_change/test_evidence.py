"""What was measured is weighed with what was felt: travel, pressures, the track; and it is said."""

from paddock_tui.facts.past import History
from tests.advice.next_change.cases import BEFORE, advised, felt, hot
from tests.advice.next_change.told.given import several
from tests.every import every
from tests.rules.situations import Change, put, went_before, without

BRAKES_AND_SLIDES = several({"what": "dives", "end": "front"}, {"what": "slides on drive"})
LITTLE = put("session", "front_travel_used", "80 mm")
ALL_REAR = put("session", "rear_travel_used", "59.5 mm")


def text(*changes: Change, history: History | None = None) -> tuple[str, str]:
    found = advised(*changes, history=history).proposal
    return found.text, found.why


def test_travel_all_used_brings_the_change_forward_that_a_later_symptom_shares_with_it() -> None:
    wallows = several({"what": "harsh on single bumps", "end": "front"}, {"what": "parts ground"})
    assert text(wallows)[0].startswith("front compression 12 -> 14")

    brought, why = text(wallows, ALL_REAR)
    assert brought.startswith("rear preload 4 -> 5")
    assert "all travel is used at the rear (59.5 mm at the shock, 119 mm at the wheel), if" in why


@every(
    ("changes", "lacks"),
    [
        ((put("session", "rear_travel_used", "58 mm"),), ""),
        ((ALL_REAR, without("bike", "rear.motion_ratio")), "enter its motion ratio in the bike's file"),
        (
            (ALL_REAR, without("bike", "rear.motion_ratio"), without("bike", "rear.travel")),
            "enter its wheel travel and motion ratio in the bike's file",
        ),
        (
            (put("session", "rear_travel_used", "119 mm"),),
            "119 mm at the shock would be 238 mm at the wheel, which has 120: read the marker again, along "
            "fork or shock",
        ),
    ],
)
def test_a_shock_marker_is_weighed_by_the_wheel_or_not_at_all(
    changes: tuple[Change, ...], lacks: str
) -> None:
    found = advised(felt("parts ground"), *changes)
    assert "all travel is used" not in found.proposal.why
    said = [one for one in found.beside if "travel" in one]
    assert said == ([f"rear travel used is not weighed: {lacks}"] if lacks else [])


def test_a_fork_that_is_no_telescope_has_a_ratio_too() -> None:
    marker = put("session", "front_travel_used", "107 mm")
    dives = (felt("dives"), marker)
    assert "all travel is used" not in text(*dives)[1]
    assert "all travel is used" in text(*dives, put("bike", "front.motion_ratio", 0.9))[1]


def test_one_symptom_says_what_was_measured_that_points_the_same_way() -> None:
    assert (
        "40 mm of travel at the front are left: that points the same way"
        in text(felt("harsh on single bumps"), LITTLE)[1]
    )
    assert "the same way" not in text(felt("harsh on single bumps"))[1]
    # What points the other way is no reason for it.
    assert "the same way" not in text(felt("dives"), LITTLE)[1]


def test_a_hot_pressure_that_is_off_counts_for_the_start_that_puts_it_right() -> None:
    goes_off = felt("tyre goes off", end="rear")
    cold = put("session", "pressures.cold", {"front": "2.10 bar", "rear": "1.90 bar", "temperature": "20 C"})
    found, why = text(goes_off, cold, hot("2.40 bar", "2.10 bar"))

    assert found.startswith("rear start pressure")
    assert "the rear is 0.10 bar under its hot target: that points the same way" in why


@every(
    ("then", "now", "says"),
    [
        ("30 C", "45 C", "the track is 15 C warmer than in session"),
        ("45 C", "30 C", "the track is 15 C colder than in session"),
        ("30 C", "37 C", ""),
    ],
)
def test_a_track_that_is_no_more_alike_is_said_beside_what_is_new(then: str, now: str, says: str) -> None:
    history = went_before(BEFORE, BEFORE, {**BEFORE, "track": then})
    found = advised(felt("loose in the heat"), put("session", "track", now), history=history)

    assert [one for one in found.beside if "track" in one] == (
        [f"{says} {history.past[-1].session.number}: what is new may be its doing"] if says else []
    )
    assert ("warmer than in session" in found.proposal.why) is ("warmer" in says)
    nothing_felt = advised(put("session", "track", now), history=history)
    assert not any("track" in one for one in nothing_felt.beside)


def test_without_a_reading_nothing_is_said_of_the_track() -> None:
    history = went_before(BEFORE, BEFORE, {**BEFORE, "track": "20 C"})
    found = advised(felt("loose in the heat"), without("session", "track"), history=history)
    assert not any("track" in one for one in found.beside)

"""What a bike has, in one line: adjusters whole or split, in one leg, and ways of damping with presets."""

from paddock_tui.entry.of_a_bike import adjusters_of, control_of, damping_of, names_at
from paddock_tui.records.errors import InputError
from tests.every import every

CLICKS = {"end": "front", "unit": "click", "range": [0, 18]}


@every(
    ("typed", "made"),
    [
        ("18c", {"compression": {**CLICKS, "counted_from": "closed"}}),
        ("18 clicks open left", {"compression": {**CLICKS, "counted_from": "open", "leg": "left"}}),
        ("18c r", {"compression": {**CLICKS, "counted_from": "closed", "leg": "right"}}),
        (
            "18c fast 2-18 right leg",
            {
                "compression slow": {**CLICKS, "counted_from": "closed"},
                "compression fast": {**CLICKS, "range": [2, 18], "leg": "right"},
            },
        ),
        (
            "slow 18, fast 4to",
            {
                "compression slow": CLICKS,
                "compression fast": {**CLICKS, "unit": "turn", "range": [0, 4], "counted_from": "open"},
            },
        ),
    ],
)
def test_an_adjuster_is_read_whole_or_slow_and_fast_and_in_its_leg(
    typed: str, made: dict[str, dict[str, object]]
) -> None:
    found = adjusters_of("front", "compression", typed)

    assert not isinstance(found, InputError)
    assert found == {f"front-{what.replace(' ', '-')}": {**one, "what": what} for what, one in made.items()}
    assert set(found) <= set(names_at("front", "compression"))


@every("typed", ["18c fast", "fast", "18c fast 9-4", "left", "18c fast 4 fast 5"])
def test_half_a_split_adjuster_is_refused_with_what_to_type(typed: str) -> None:
    assert isinstance(adjusters_of("front", "compression", typed), InputError)


def test_only_what_may_be_split_is_and_only_a_fork_has_legs() -> None:
    assert isinstance(adjusters_of("front", "preload", "18c fast 4"), InputError)
    assert isinstance(adjusters_of("rear", "rebound", "18c left"), InputError)


@every(
    ("typed", "made"),
    [
        ("live calm, keen, rough road", ("live", ["calm", "keen", "rough road"])),
        ("live calm keen", ("live", ["calm", "keen"])),
        ("Auto", ("auto", [])),
        ("live calm, calm", None),
        ("live calm,,keen", None),
        ("", None),
    ],
)
def test_a_way_of_damping_is_its_name_and_its_presets(typed: str, made: tuple[str, list[str]] | None) -> None:
    found = damping_of(typed)

    if made is None:
        assert isinstance(found, InputError)
    else:
        assert found == (made[0], {"presets": made[1]})


def test_up_and_down_say_which_end_helps_only_where_one_does() -> None:
    assert control_of("shifter", "both up off keeps") == {
        "kind": "state",
        "choices": ["both", "up"],
        "off": True,
        "key_off": "keeps",
    }
    assert control_of("traction", "1-7 down") == {"kind": "level", "levels": [1, 7], "most_help": 1}

"""The remedy of the rules about the weather: the package as one set of values, and the way back in words."""

from paddock_tui.rules import Finding, SetValue
from tests.rules.cases.aids import WET
from tests.rules.cases.before import ridden
from tests.rules.cases.wet import SHOWERS, from_dry
from tests.rules.situations import Change, Data, at, look, put

RULE = "dry-set-up-in-the-wet"


def found(*changes: Change, rule: str = RULE, **more: Data) -> list[Finding]:
    return [one for one in look(*changes, **more).findings if one.rule == rule]


def as_changes(puts: tuple[SetValue, ...]) -> tuple[Change, ...]:
    """Put what a remedy sets into the session."""
    return tuple(("session", one.path, one.value) for one in puts)


def test_the_remedy_sets_the_whole_package_and_then_nothing_is_raised() -> None:
    (one,) = found(WET, **from_dry())
    set_ = {put.path[-1]: put.value for put in one.remedy.puts}

    assert set_ == {"mode": "showers", "engine-braking": 4, "throttle": "soft", "front-rebound": 15}
    assert found(WET, *as_changes(one.remedy.puts), **from_dry()) == []


def test_the_remedy_says_old_and_new_and_what_it_does_not_set() -> None:
    (one,) = found(WET, **from_dry())

    assert "front rebound 12 -> 15" in one.remedy.text
    assert "front preload: 3 mm less by hand" in one.remedy.text
    assert "the tyre maker's wet figure" in one.remedy.text
    assert one.facts.startswith("riding mode open -> showers; ")


def test_it_can_set_what_only_the_mode_that_is_left_fixes() -> None:
    fixing = put("bike", "modes.open.fixes", {"engine-braking": 2})
    (one,) = found(WET, fixing, at("engine-braking", 2), **from_dry())

    assert ("setup", "controls", "engine-braking") in {put.path for put in one.remedy.puts}


def test_the_way_back_names_the_last_dry_session_and_its_profile() -> None:
    (plain,) = found(SHOWERS, rule="wet-set-up-in-the-dry")
    (known,) = found(SHOWERS, rule="wet-set-up-in-the-dry", **ridden({}, {"surface": "wet"}))
    (saved,) = found(SHOWERS, rule="wet-set-up-in-the-dry", **ridden({"taken_from": "summer"}))

    assert "made for the dry" in plain.remedy.text
    assert "session before-1" in known.remedy.text
    assert "profile summer" in saved.remedy.text
    assert plain.remedy.puts == ()
    assert [(put.path[-1], put.value) for put in known.remedy.puts] == [("mode", "open")]


def test_another_riders_dry_set_up_is_no_measure() -> None:
    (one,) = found(WET, **ridden({"rider": "tobin"}))

    assert "no dry session on record" in one.remedy.text
    assert "front-rebound" not in {put.path[-1] for put in one.remedy.puts}

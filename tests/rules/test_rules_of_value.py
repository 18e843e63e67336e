"""Which rules look at a value, found from what rules and facts declare."""

from paddock_tui.facts import FACTS
from paddock_tui.records.paths import Path, parse
from paddock_tui.rules.core import RULES
from paddock_tui.rules.rules_of_value import rules_using
from tests.every import every


def using(kind: str, path: str) -> list[str]:
    keys = parse(path)
    assert keys is not None
    return [rule.id for rule in rules_using(kind, keys)]


@every(
    ("kind", "path", "expected"),
    [
        ("session", "setup.controls.traction", {"little-traction-help-in-the-wet", "level-not-on-the-bike"}),
        ("session", "surface", {"little-traction-help-in-the-wet", "little-traction-help-in-the-damp"}),
        ("session", "setup.adjusters.rebound", {"adjuster-outside-its-range", "closed-by-the-damping-mode"}),
        ("session", "setup.mode", {"fixed-by-the-riding-mode"}),
        ("bike", "controls.traction.most_help", {"direction-not-known"}),
        ("session", "setup.controls.pit-limiter", {"speed-not-on-the-bike"}),
    ],
)
def test_the_rules_of_a_value(kind: str, path: str, expected: set[str]) -> None:
    found = using(kind, path)

    assert expected <= set(found)
    assert found == sorted(found)


def test_facts_of_facts_are_followed() -> None:
    # The help that the rule takes is worked out from the levels of the control.
    rule = RULES["little-traction-help-in-the-wet"]
    assert not any(
        FACTS[need].path == ("controls", "{subject}", "levels") for need in rule.needs if need in FACTS
    )
    assert rule.id in using("bike", "controls.traction.levels")


def test_a_set_up_is_read_alike_in_a_session_and_in_a_profile_but_a_surface_is_a_sessions() -> None:
    path = "setup.controls.traction"

    assert using("profile", path) == using("session", path)
    assert using("profile", "surface") == []


@every(
    ("kind", "path"),
    [
        ("session", "said"),
        ("session", "setup.controls.traction.more"),
        ("venue", "corners.1.marker"),
        ("rider", "surface"),
        ("session", "nothing"),
    ],
)
def test_a_value_that_no_rule_looks_at(kind: str, path: str) -> None:
    assert using(kind, path) == []


def test_no_path_at_all_is_used_by_none() -> None:
    assert rules_using("session", ()) == ()


def subject(path: Path) -> Path:
    return tuple("traction" if key == "{subject}" else key for key in path)


@every("name", [name for name, fact in FACTS.items() if fact.path])
def test_a_fact_that_a_rule_needs_leads_back_to_that_rule(name: str) -> None:
    fact = FACTS[name]
    kind = "session" if fact.role == "setup" else fact.role
    users = {rule.id for rule in RULES.values() if name in (*rule.needs, *rule.when)}

    assert users <= {rule.id for rule in rules_using(kind, subject(fact.path))}

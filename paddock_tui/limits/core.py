"""What a limit is: a threshold with unit, meaning and source, as declared and as its owner sets it."""

from collections.abc import Mapping
from typing import Any, Final

import attrs

from paddock_tui.quantities import Quantity, compatible

COMMON: Final = "paddock practice, unpublished"
"""The source of what riders and coaches hold to without a citable text."""


@attrs.frozen
class Limit:
    """One threshold. Its address in garage.toml is limits.<rule>.<name>; `unit` is "" for a bare number."""

    rule: str
    name: str
    value: float
    unit: str
    meaning: str
    source: str
    low: float = 0.0
    high: float = 1.0


LIMITS: dict[tuple[str, str], Limit] = {}


def limit(
    rule: str,
    name: str,
    value: float,
    unit: str,
    meaning: str,
    source: str,
    low: float = 0.0,
    high: float = 1.0,
) -> Limit:
    """Register a limit of a rule; `low` and `high` bound what an owner may set it to."""
    made = Limit(rule, name, value, unit, meaning, source, low, high)
    if (rule, name) in LIMITS:
        raise ValueError(f"two limits are called {rule}.{name}")
    LIMITS[rule, name] = made
    return made


@attrs.frozen
class Limits:
    """The limits in force: the declared ones, overridden by those in garage.toml."""

    overrides: Mapping[str, Mapping[str, Any]] = attrs.field(factory=dict)

    def __getitem__(self, wanted: Limit) -> float:
        """Return a limit's value in its own unit; an override that does not fit is left aside."""
        of_rule = self.overrides.get(wanted.rule)
        found = fitting(of_rule.get(wanted.name), wanted) if of_rule else None
        return wanted.value if found is None else found

    def overridden(self, wanted: Limit) -> bool:
        """Return whether the owner changed this limit."""
        return fitting(self.overrides.get(wanted.rule, {}).get(wanted.name), wanted) is not None

    def problems(self) -> list[tuple[str, str, str]]:
        """List overrides that name no limit, or whose value does not fit: rule, name, what is wrong."""
        found: list[tuple[str, str, str]] = []
        for rule, names in self.overrides.items():
            for name, raw in names.items():
                wanted = LIMITS.get((rule, name))
                if wanted is None:
                    found.append((rule, name, "no rule has such a threshold"))
                elif fitting(raw, wanted) is None:
                    unit = f" {wanted.unit}" if wanted.unit else ""
                    found.append((rule, name, f"expected {wanted.low:g} to {wanted.high:g}{unit}"))
        return found


def fitting(raw: Any, wanted: Limit) -> float | None:
    """Return an override in the limit's own unit; None where it does not fit: wrong unit or out of range."""
    if isinstance(raw, Quantity):
        if not wanted.unit or not compatible(wanted.unit, raw.dimension):
            return None
        value = raw.to(wanted.unit)
    elif isinstance(raw, int | float) and not wanted.unit:
        value = float(raw)
    else:
        return None
    return value if wanted.low <= value <= wanted.high else None

"""The real-gas library, loaded when it is first asked: that takes seconds, and every process would pay."""

from typing import Any


def of_fluid(*asked: Any) -> float:
    """Return a property of a fluid, asked for as `CoolProp.PropsSI` has it."""
    from CoolProp.CoolProp import PropsSI

    return float(PropsSI(*asked))


def of_humid_air(*asked: Any) -> float:
    """Return a property of humid air, asked for as `CoolProp.HAPropsSI` has it."""
    from CoolProp.HumidAirProp import HAPropsSI

    return float(HAPropsSI(*asked))

"""Built-in calls: the short word under which each control and adjuster is typed on the entry line."""

from paddock_tui.records.electronics import Control, function_of
from paddock_tui.records.suspension import Adjuster

CONTROL_CALLS = {
    "traction": "t",
    "wheelie": "w",
    "slide": "sl",
    "front-abs": "fa",
    "rear-abs": "ra",
    "abs": "abs",
    "throttle": "th",
    "power": "po",
    "engine-braking": "eb",
    "launch": "la",
    "shifter": "sh",
    "pit-limiter": "pl",
}
"""The call of a control by its function."""

ADJUSTER_CALLS = {
    ("front", "rebound"): "fr",
    ("front", "compression"): "fc",
    ("front", "compression slow"): "fcs",
    ("front", "compression fast"): "fcf",
    ("front", "rebound slow"): "frs",
    ("front", "rebound fast"): "frf",
    ("front", "preload"): "fp",
    ("rear", "rebound"): "rr",
    ("rear", "compression"): "rc",
    ("rear", "compression slow"): "rcs",
    ("rear", "compression fast"): "rcf",
    ("rear", "rebound slow"): "rrs",
    ("rear", "rebound fast"): "rrf",
    ("rear", "preload"): "rp",
    ("steering", "damper"): "sd",
}
"""The call of an adjuster by its end and what it adjusts."""


def control_call(name: str, control: Control) -> str:
    """Return the built-in call of a control; empty where its function has none."""
    return CONTROL_CALLS.get(function_of(name, control), "")


def place_of(name: str, adjuster: Adjuster) -> tuple[str, str]:
    """Return the end of an adjuster and what it adjusts: as its file says, else as its name does."""
    first, _, rest = name.replace("_", "-").partition("-")
    end = adjuster.end or (first if first in ("front", "rear", "steering") else "")
    return end, adjuster.what or rest.replace("-", " ")


def adjuster_call(name: str, adjuster: Adjuster) -> str:
    """Return the built-in call of an adjuster; empty where it has none."""
    return ADJUSTER_CALLS.get(place_of(name, adjuster), "")

"""The values that a verdict rests on, by where they stand."""

from paddock_tui.records.paths import Path

_RESTS_ON: dict[str, tuple[Path, ...]] = {
    "session": (
        ("kind",),
        ("surface",),
        ("fatigue",),
        ("lever",),
        ("date",),
        ("fuel_in_tank",),
        ("fuel_added",),
        ("front_pads",),
        ("rear_pads",),
        ("front_tread",),
        ("rear_tread",),
        ("pressures", "cold"),
        ("pressures", "warmers"),
        ("pressures", "leaving"),
        ("setup", "controls"),
        ("setup", "mode"),
        ("dash",),
    ),
    "bike": (("electronics",), ("controls",), ("modes",), ("tank", "capacity")),
    "rider": (("group",),),
    "tyres": tuple((end, key) for end in ("front", "rear") for key in ("kind", "tread_middle")),
    "day": (("limits", "pit_lane"), ("limits", "noise"), ("entries",)),
}


SAME_AS_TICKED: dict[str, tuple[str, ...]] = {
    "lever": ("walked-round", "brakes-tried", "brake-lever", "lever-firm"),
    "fatigue": ("rider-fit", "fit-to-ride"),
    "front_tread": ("tread-over-marks", "tyres", "road-tyres"),
    "rear_tread": ("tread-over-marks", "tyres", "road-tyres"),
    "front_pads": ("pads",),
    "rear_pads": ("pads",),
    "look": ("walked-round", "tyres-seen", "tyre-glance", "tyres", "road-tyres"),
    "fuel_in_tank": ("fuel-enough", "fuel-for-session"),
    "fuel_added": ("fuel-enough", "fuel-for-session"),
    "filled_to_brim": ("fuel-enough", "fuel-for-session"),
}
"""The ticks of checklists that answer the same as a value of a session, by the first key of its path."""


def rests_on(role: str, path: Path) -> bool:
    """Return whether a verdict rests on the value at a path of the record that plays a role."""
    return any(path[: len(one)] == one for one in _RESTS_ON.get(role, ()))

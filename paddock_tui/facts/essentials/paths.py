"""The values that a verdict rests on, by where they stand."""

from paddock_tui.records.paths import Path

_RESTS_ON: dict[str, tuple[Path, ...]] = {
    "session": (
        ("kind",),
        ("surface",),
        ("fatigue",),
        ("lever",),
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


def rests_on(role: str, path: Path) -> bool:
    """Return whether a verdict rests on the value at a path of the record that plays a role."""
    return any(path[: len(one)] == one for one in _RESTS_ON.get(role, ()))

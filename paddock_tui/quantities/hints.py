"""What was most likely meant by a unit that does not measure what its row holds."""

from paddock_tui.quantities.quantity import Quantity

_MEANT = {
    ("pressure", "lb"): ("psi",),
    ("pressure", "lbf"): ("psi",),
    ("pressure", "kg"): ("kgf/cm2",),
    ("spring rate", "kg"): ("kgf/mm",),
    ("spring rate", "kgf"): ("kgf/mm",),
    ("spring rate", "lb"): ("lbf/in",),
    ("spring rate", "lbf"): ("lbf/in",),
    ("spring rate", "lbf in"): ("lbf/in",),
    ("spring rate", "N"): ("N/mm",),
    ("torque", "kg"): ("kgf m",),
    ("torque", "N"): ("N m",),
    ("torque", "lb"): ("lbf ft",),
    ("consumption", "l"): ("l/100km",),
    ("speed", "km"): ("km/h",),
    ("speed", "mi"): ("mph",),
    ("temperature", "deg"): ("C", "F"),
    ("mass", "lbf"): ("lb",),
    ("mass", "kgf"): ("kg",),
    ("time", "m"): ("min",),
    ("age", "m"): ("months",),
}


def meant(found: Quantity, dimension: str) -> tuple[str, ...]:
    """Return what to write instead, with the same number; empty where nothing is likely enough."""
    if (dimension, found.unit) == ("rotation", "K"):
        return (f"{1000 * found.number:.0f} rpm",)
    return tuple(f"{found.number:f} {unit}" for unit in _MEANT.get((dimension, found.unit), ()))

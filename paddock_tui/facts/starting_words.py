"""The words of the records for surface and tyre, as the table of starting levels takes them."""

from paddock_tui.calc.starting_levels import Surface, TyreKind

_SURFACES = {"standing water": Surface.STANDING}
_TYRES = {"track-day": TyreKind.TRACKDAY, "sport-touring": TyreKind.ROAD}


def level_surface(word: str) -> Surface:
    """Return the surface that a record names. Raises ValueError where it is none of the records' words."""
    return _SURFACES.get(word) or Surface(word)


def level_tyre(word: str) -> TyreKind:
    """Return the kind of tyre that a record names; a sport-touring tyre is ridden as a road tyre.

    Raises ValueError where it is none of the records' words.
    """
    return _TYRES.get(word) or TyreKind(word)

"""Every word that a record may hold for surface and rear tyre has its place in the table of levels."""

from paddock_tui.calc.starting_levels import TyreKind
from paddock_tui.facts.outing import COLUMN
from paddock_tui.facts.starting_words import level_surface, level_tyre
from paddock_tui.records.tyres import TYRE_KINDS


def test_every_kind_of_tyre_has_its_column() -> None:
    assert {level_tyre(word) for word in TYRE_KINDS} == set(TyreKind)
    assert level_tyre("sport-touring") is level_tyre("road") is TyreKind.ROAD


def test_every_surface_has_its_row() -> None:
    assert {level_surface(word).value for word in COLUMN} == {"dry", "damp", "drying", "wet", "standing"}

"""The preset of an automatic damping mode that is in use, and what the bike's file says of it."""

from paddock_tui.facts.core import ABSENT, UNKNOWN, Absent, Unknown, fact
from paddock_tui.records.bike import Bike
from paddock_tui.records.presets import BY_HAND
from paddock_tui.records.presets_in_use import Started, preset_in_use
from paddock_tui.records.setup import SetUp


@fact("the preset", at="session:setup.preset", show=lambda found: f"preset {found.name}")
def preset_used(setup: SetUp, bike: Bike) -> Started | Unknown | Absent:
    """Return the preset of an automatic damping mode with what it sets; absent by hand.

    Absent too where nobody wrote down what it sets; not known while none is named although some are written.
    """
    mode = bike.damping.get(setup.damping or "")
    if mode is None or setup.damping == BY_HAND or not mode.preset_values:
        return ABSENT
    if setup.preset is None:
        return UNKNOWN
    return preset_in_use(bike, setup) or ABSENT

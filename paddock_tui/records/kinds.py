"""The kinds of record and their classes."""

from typing import TypeAlias

from paddock_tui.records.bike import Bike
from paddock_tui.records.checklist import Checklist
from paddock_tui.records.day import RidingDay
from paddock_tui.records.garage import Garage
from paddock_tui.records.people import Rider, Venue
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile
from paddock_tui.records.tyres import TyreSet

Record: TypeAlias = Bike | Rider | Venue | TyreSet | Profile | Checklist | RidingDay | Session | Garage

CLASSES: dict[str, type[Record]] = {
    "garage": Garage,
    "bike": Bike,
    "rider": Rider,
    "venue": Venue,
    "tyres": TyreSet,
    "profile": Profile,
    "checklist": Checklist,
    "day": RidingDay,
    "session": Session,
}
"""Which class each kind of record is read into."""

"""Which list is at hand, as the day goes on; which lists are due before going out."""

import datetime as dt
from typing import Any

import attrs

from paddock_tui.facts.checklists import AtHand, ItemState, ListState, at_hand, stages_due
from paddock_tui.records.checklist import STAGES
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Incident
from paddock_tui.records.tyres import Tyre, TyreSet
from tests.every import every

DAY = dt.date(2026, 5, 16)
NEXT = Session(date=DAY, number=3, kind="track day", surface="dry", tyres="may")
RIDDEN = attrs.evolve(NEXT, number=2, parked=dt.time(10, 20))
FALLEN = attrs.evolve(RIDDEN, incidents={"1": Incident(what="fall")})
SLICKS = TyreSet(front=Tyre(kind="slick"), rear=Tyre(kind="slick"))
WETS = TyreSet(front=Tyre(kind="wet"), rear=Tyre(kind="wet"))


def lists(*open_stages: str) -> tuple[ListState, ...]:
    """One list of each stage, with an open item in these."""
    made = []
    for stage in STAGES:
        status = "open" if stage in open_stages else "ok"
        item = ItemState("it", "it", None, status, False, ("checks", "it"))
        made.append(ListState(stage, stage, stage, (item,)))
    return tuple(made)


def hand(session: Session, *open_stages: str, **more: Any) -> AtHand | None:
    given: dict[str, Any] = {"tyres": None, "earlier": (), "source": None, "today": DAY} | more
    return at_hand(lists(*(open_stages or STAGES)), session, **given)


WET = attrs.evolve(NEXT, surface="wet")

MOMENTS: list[tuple[str, Session, tuple[str, ...], dict[str, Any], str]] = [
    ("the evening before", NEXT, (), {"today": dt.date(2026, 5, 15)}, "packing"),
    ("all in the van", NEXT, STAGES[1:], {"today": dt.date(2026, 5, 15)}, "night before"),
    ("packed, the evening before", NEXT, STAGES[2:], {"today": dt.date(2026, 5, 15)}, "bike, morning"),
    ("first of the day", NEXT, (), {}, "bike, morning"),
    ("the bike is done", NEXT, STAGES[3:], {}, "rider"),
    ("the paper is left", NEXT, STAGES[4:], {}, "paper"),
    ("after a ridden one", NEXT, (), {"earlier": (RIDDEN,)}, "before each session"),
    ("only the morning is left", NEXT, ("rider",), {"earlier": (RIDDEN,)}, "rider"),
    ("rain on slicks", WET, (), {"earlier": (RIDDEN,), "tyres": SLICKS}, "wet swap"),
    (
        "rain, wets are on already",
        WET,
        (),
        {"earlier": (RIDDEN,), "source": RIDDEN, "tyres": WETS},
        "before each session",
    ),
    (
        "rain, other tyres than in the dry",
        attrs.evolve(WET, tyres="rain"),
        (),
        {"earlier": (RIDDEN,), "source": RIDDEN, "tyres": WETS},
        "wet swap",
    ),
    (
        "damp on the same tyres",
        attrs.evolve(NEXT, surface="damp"),
        (),
        {"earlier": (RIDDEN,), "source": RIDDEN, "tyres": SLICKS},
        "before each session",
    ),
    ("race, ready to roll", attrs.evolve(NEXT, kind="race"), ("grid", "on return"), {}, "grid"),
    ("back in the paddock", RIDDEN, (), {}, "on return"),
    ("all said", RIDDEN, ("end of day", "bike, morning"), {}, "end of day"),
    ("after a fall", FALLEN, (), {}, "after a fall"),
    ("a fall in the one before", NEXT, (), {"earlier": (FALLEN,)}, "after a fall"),
    (
        "the fall is gone through",
        NEXT,
        ("before each session",),
        {"earlier": (FALLEN,)},
        "before each session",
    ),
]


@every(
    ("session", "open_stages", "more", "stage"), [one[1:] for one in MOMENTS], ids=[one[0] for one in MOMENTS]
)
def test_the_stage_at_hand_follows_the_day(
    session: Session, open_stages: tuple[str, ...], more: dict[str, Any], stage: str
) -> None:
    found = hand(session, *open_stages, **more)
    assert found is not None
    assert found.stage == stage
    assert found.why


def test_nothing_is_at_hand_where_nothing_that_is_due_is_open() -> None:
    assert hand(NEXT, "on return") is None
    assert hand(RIDDEN, "before each session") is None


def test_why_names_what_it_was_derived_from() -> None:
    wet = hand(WET, earlier=(RIDDEN,), tyres=SLICKS)
    fall = hand(NEXT, earlier=(FALLEN,))
    assert wet == AtHand("wet swap", "surface wet, tyres slick")
    assert fall == AtHand("after a fall", "a fall is written down in session 2")


def test_what_is_due_before_going_out_depends_on_surface_kind_and_falls() -> None:
    always = ("bike, morning", "rider", "venue", "before each session")
    race = attrs.evolve(NEXT, kind="race")
    assert stages_due(NEXT, {}, (), None) == always
    assert stages_due(WET, {"tyres": SLICKS}, (), None) == (*always, "wet swap")
    assert stages_due(race, {}, (FALLEN,), None) == (*always, "grid", "after a fall")

"""Work on the bike since it last ran: wheels, brakes, chain and oil, as written or as the tyres show."""

import attrs

from paddock_tui.facts.core import ABSENT, Absent, fact
from paddock_tui.facts.outing import is_ridden
from paddock_tui.facts.past import ENDS, End, History, PastSession, first_set
from paddock_tui.records.paths import Path, Ref
from paddock_tui.records.session import Session
from paddock_tui.records.session_parts import Work

WHEELS = ("wheel out", "caliper", "brake", "axle")
"""Work after which fasteners of wheels and brakes have to be tightened and seen by a second person."""

OIL = ("oil", "filter", "plug")
"""Work after which oil may come out once it is hot."""


@attrs.frozen
class Undone:
    """Work that nobody ticked since: in words, and where the tick is entered (`ref` None: this session)."""

    words: str
    path: Path
    ref: Ref | None = None

    def __str__(self) -> str:
        return self.words


@attrs.frozen
class MovedPart:
    """What moved the rear axle or the chain, in words."""

    words: str

    def __str__(self) -> str:
        return self.words


@fact("wheel and brake work", show=str)
def wheel_work(session: Session, history: History, wheels_changed: tuple[End, ...]) -> Undone | Absent:
    """Wheel or brake work without its tick: written down here or before, or shown by other tyres."""
    waiting = _waiting(session, history, WHEELS, "torqued")
    if waiting is not None:
        return waiting
    ticked = any(one.torqued and one.what in (None, "wheel out", "axle") for one in session.work.values())
    if not wheels_changed or ticked:
        return ABSENT
    wheels = f"{' and '.join(wheels_changed)} wheel{'s' if len(wheels_changed) > 1 else ''}"
    return Undone(f"{wheels} out: other tyres than last time", ("work", _next(session), "torqued"))


@fact("wheels with other tyres than last time")
def wheels_changed(session: Session, history: History) -> tuple[End, ...]:
    """Return the ends at which another tyre is on than when the bike was last ridden."""
    before = next((one.session.tyres for one in _ridden(history) if one.session.tyres is not None), None)
    now = session.tyres
    if before is None or now is None or before == now:
        return ()
    return tuple(end for end in ENDS if first_set(history, before, end) != first_set(history, now, end))


@fact("what moved the chain", show=str)
def chain_moved(session: Session, history: History, wheels_changed: tuple[End, ...]) -> MovedPart | Absent:
    """Other sprockets or links than last time, the rear wheel out, or work on them; else absent."""
    words = _sprockets(session, history)
    if "rear" in wheels_changed:
        words.append("rear wheel out")
    done = [
        one.what for one in session.work.values() if one.what in ("wheel out", "axle", "chain", "sprocket")
    ]
    words += [f"{what} in the work done" for what in dict.fromkeys(done)]
    return MovedPart("; ".join(words)) if words else ABSENT


@fact("oil work", show=str)
def oil_work(session: Session, history: History) -> Undone | Absent:
    """Oil, filter or plug touched, and not looked at again hot."""
    return _waiting(session, history, OIL, "rechecked_hot") or ABSENT


def _waiting(session: Session, history: History, kinds: tuple[str, ...], tick: str) -> Undone | None:
    """Return the last work of these kinds without its tick; a later ticked one of its kind settles it."""
    found: dict[str, Undone] = {}
    for where in (*history.past, None):
        holder = session if where is None else where.session
        for number, work in _numbered(holder):
            if work.what not in kinds:
                continue
            found.pop(work.what, None)
            if not getattr(work, tick):
                ref = None if where is None else Ref("session", where.id)
                found[work.what] = Undone(_words(work, where), ("work", number, tick), ref)
            elif work.what == "wheel out":
                found.pop("axle", None)
    if not found:
        return None
    last = list(found.values())[-1]
    return attrs.evolve(last, words="; ".join(one.words for one in found.values()))


def _words(work: Work, where: PastSession | None) -> str:
    at = f" {work.at:%H:%M}" if work.at is not None else ""
    return f"{work.what}{at}" + (f" in session {where.id}" if where is not None else "")


def _sprockets(session: Session, history: History) -> list[str]:
    found = []
    for key, words in (
        ("front_sprocket", "front sprocket"),
        ("rear_sprocket", "rear sprocket"),
        ("links", "links"),
    ):
        now = getattr(session.setup, key)
        earlier = (getattr(one.session.setup, key) for one in _ridden(history))
        before = next((one for one in earlier if one is not None), None)
        if now is not None and before is not None and now != before:
            found.append(f"{words} {before} -> {now}")
    return found


def _ridden(history: History) -> list[PastSession]:
    """List the ridden sessions, latest first."""
    return [one for one in reversed(history.past) if is_ridden(one.session)]


def _numbered(session: Session) -> list[tuple[str, Work]]:
    return sorted(session.work.items(), key=lambda one: (len(one[0]), one[0]))


def _next(session: Session) -> str:
    numbers = [int(key) for key in session.work if key.isdigit()]
    return str(max(numbers, default=0) + 1)

"""The machine of facts: a registry of functions, evaluated on demand, each at most once a review."""

import datetime as dt
import enum
from collections.abc import Callable, Mapping
from functools import cached_property
from typing import Any, Final, Literal, NamedTuple, TypeAlias, TypeVar

import attrs

from paddock_tui.on_demand import Whole
from paddock_tui.records.paths import Path
from paddock_tui.records.shapes_of_bike import label_of


class _State(enum.Enum):
    UNKNOWN = "not known"
    ABSENT = "absent"


UNKNOWN: Final = _State.UNKNOWN
"""What a fact function gives when the records do not say."""

ABSENT: Final = _State.ABSENT
"""What a fact function gives when there is nothing to know: no such equipment, not that kind of session."""

Unknown: TypeAlias = Literal[_State.UNKNOWN]
Absent: TypeAlias = Literal[_State.ABSENT]

PerSubject = Literal["control", "adjuster", "end"]
"""What a fact or a rule is asked about one by one: each control, each adjuster, front and rear."""


@attrs.frozen(order=True)
class MissingFact:
    """A fact that is not known: its words, and where it would be entered (`role` names the record)."""

    label: str
    role: str = ""
    path: Path = ()


@attrs.frozen
class NotKnown:
    """The result of a fact that cannot be told, with every fact that is missing for it."""

    missing: tuple[MissingFact, ...]


@attrs.frozen
class Fact:
    """A registered fact: how it is called, what it needs, where it stands, how it reads."""

    name: str
    label: str
    needs: tuple[str, ...]
    function: Callable[..., Any]
    per: PerSubject | None
    gathers: frozenset[str]
    role: str
    path: Path
    show: Callable[[Any], str] | None

    @cached_property
    def asked(self) -> "Needs":
        """How each fact that it needs is asked for."""
        return asked_for(self.needs, self.gathers)

    @cached_property
    def is_of_bike(self) -> bool:
        """Whether it follows from the bike alone: in all that it needs, and in what those need."""
        return all(is_of_bike(need) for need in self.needs)

    def words(self, subject: str | None) -> str:
        """Return the label, about this subject where the fact has one."""
        return self.label.format(subject=_spoken(subject))


FACTS: dict[str, Fact] = {}
_BY_CLOCK: set[str] = set()

COMPLETE = Whole("facts", "paddock_tui.facts.registered")

F = TypeVar("F", bound=Callable[..., Any])


def fact(
    label: str,
    *,
    at: str = "",
    per: PerSubject | None = None,
    gathers: tuple[str, ...] = (),
    show: Callable[[Any], str] | None = None,
) -> Callable[[F], F]:
    """Register a function as a fact; its parameters are the facts that it needs.

    `at` says where it is entered, as 'role:path' with dots, `{subject}` standing for the subject.
    `gathers` names per-subject facts that it takes for all subjects at once, as a mapping; subjects
    for which such a fact is absent are left out, and one that is not known makes this one not known.
    `show` gives the words that stand in a finding's facts; without it the fact is not quoted.
    """

    def register(function: F) -> F:
        name = function.__name__
        if name in FACTS:
            raise ValueError(f"two facts are called {name}")
        role, _, path = at.partition(":")
        needs = parameters(function)
        keys = tuple(path.split(".")) if path else ()
        FACTS[name] = Fact(name, label, needs, function, per, frozenset(gathers), role, keys, show)
        if "now" in needs:
            _BY_CLOCK.add(name)
        return function

    return register


def parameters(function: Callable[..., Any]) -> tuple[str, ...]:
    """Return the names of what a function takes: read off its code, as hundreds are asked at each start.

    Raises TypeError for one that takes any number, or that stands for another: its needs would not be told.
    """
    code = getattr(function, "__code__", None)
    if code is None or hasattr(function, "__wrapped__") or code.co_flags & _TAKES_ANY:
        raise TypeError(f"what {function!r} takes cannot be told")
    taken: tuple[str, ...] = code.co_varnames[: code.co_argcount + code.co_kwonlyargcount]
    return taken


_TAKES_ANY = 0x04 | 0x08
"""The flags of code with `*` or `**` parameters, as `inspect` has them."""

_UNASKED = object()
"""Stands for a fact that nobody asked for yet: None is a value."""


_OF_BIKE = frozenset({"bike", "control", "adjuster", "end", "subject"})
"""What is given with the bike and no other record: the bike, and each thing on it by its name."""


def is_of_bike(name: str) -> bool:
    """Return whether a fact follows from the bike alone."""
    registered = FACTS.get(name)
    return name in _OF_BIKE if registered is None else registered.is_of_bike


class KnownOfBike:
    """What follows from one bike alone: worked out once, for all situations with this very record of it.

    `left` are the subjects for which a rule can apply, where on this bike that is not all of them; whoever
    asks the rules keeps it. It stands for the very rule that it was found out of.
    """

    def __init__(self) -> None:
        self.found: dict[tuple[str, str | None], Any] = {}
        self.left: dict[str, tuple[object, tuple[str | None, ...]]] = {}


_BIKES: dict[int, tuple[object, KnownOfBike | None]] = {}

_MOST_BIKES = 8


def of_bike(bike: object) -> KnownOfBike | None:
    """Return what is known of a bike's record: of this object, not of an equal one.

    None where it is looked at for the first time: a command that judges once keeps nothing for later.
    """
    held = _BIKES.get(id(bike))
    if held is None:
        if len(_BIKES) >= _MOST_BIKES:
            _BIKES.clear()
        # The record is held with it: another can't be taken for it.
        _BIKES[id(bike)] = bike, None
        return None
    found = held[1]
    if found is None:
        found = KnownOfBike()
        _BIKES[id(bike)] = bike, found
    return found


class Facts:
    """The facts of one situation, each computed when first asked for.

    `roots` holds what is given: records and names; UNKNOWN and ABSENT are allowed there. `subjects`
    lists the names of the controls, the adjusters and the ends. `of_bike` holds what follows from the bike
    alone, whose controls and adjusters these are.
    """

    def __init__(
        self,
        roots: Mapping[str, Any],
        subjects: Mapping[PerSubject, Mapping[str, Any]],
        of_bike: KnownOfBike | None = None,
    ) -> None:
        COMPLETE.require()
        self._roots = roots
        self._subjects = subjects
        self.of_bike = of_bike
        self._found: dict[tuple[str, str | None], Any] = {} if of_bike is None else of_bike.found.copy()
        self._names: dict[PerSubject, tuple[str, ...]] = {
            per: tuple(sorted(subjects[per])) for per in subjects
        }

    def subjects(self, per: PerSubject) -> tuple[str, ...]:
        """List the names that a rule per control or per adjuster is asked about, in an order of their own."""
        return self._names.get(per, ())

    def get(self, name: str, subject: str | None = None) -> Any:
        """Return the value of a fact, or NotKnown, or ABSENT."""
        key = (name, subject)
        value = self._found.get(key, _UNASKED)
        if value is _UNASKED:
            value = self._found[key] = self._compute(name, subject)
        return value

    def at(self, now: dt.datetime) -> "Facts | None":
        """Return these facts at another time; None where one that was asked for reads otherwise then.

        Facts are functions of facts: where each that takes the time itself gives what it gave, all others do.
        """
        by_clock = {"now", *_BY_CLOCK}
        other = Facts({**self._roots, "now": now}, self._subjects, self.of_bike)
        other._found = {key: value for key, value in self._found.items() if key[0] not in by_clock}
        asked = [(key, value) for key, value in self._found.items() if key[0] in by_clock and key[0] != "now"]
        return other if all(other.get(*key) == value for key, value in asked) else None

    def is_absent(self, name: str, subject: str | None) -> bool:
        """Return whether a fact was asked for, and there is nothing to know."""
        return self._found.get((name, subject)) is ABSENT

    def shown(self, name: str, subject: str | None) -> str:
        """Return the words for a fact as findings quote it; empty where it is not quoted or not known."""
        registered = FACTS.get(name)
        if registered is None or registered.show is None:
            return ""
        value = self.get(name, subject if registered.per else None)
        return "" if isinstance(value, NotKnown) or value is ABSENT else registered.show(value)

    def together(self, asked: "Needs", subject: str | None) -> Any:
        """Return the values of several facts as a dict, or NotKnown with all that is missing, or ABSENT."""
        found = self._found
        if asked.absent is not None:
            # One that is absent decides alone: what was absent last time is, in many seasons, again.
            place = asked.absent.key or (asked.absent.need, subject)
            value = found.get(place, _UNASKED)
            if value is _UNASKED:
                value = found[place] = self._compute(*place)
            if value is ABSENT:
                return ABSENT
        values: dict[str, Any] = {}
        missing: list[MissingFact] = []
        for one in asked:
            need, key, gathered = one
            if gathered:
                value = self._gathered(need)
            else:
                place = key or (need, subject)
                # Asked tens of thousands of times for a review: known ones are taken without a call.
                value = found.get(place, _UNASKED)
                if value is _UNASKED:
                    value = found[place] = self._compute(*place)
            if value is ABSENT:
                asked.absent = None if gathered else one
                return ABSENT
            if value.__class__ is NotKnown:
                missing += [one for one in value.missing if one not in missing]
            values[need] = value
        return NotKnown(tuple(missing)) if missing else values

    def _compute(self, name: str, subject: str | None) -> Any:
        registered = FACTS.get(name)
        if registered is None or name in self._roots:
            found = self._given(name, subject)
        else:
            found = self.together(registered.asked, subject)
            if found.__class__ is dict:
                found = registered.function(**found)
                if found is UNKNOWN:
                    path = tuple(key.format(subject=subject) for key in registered.path)
                    found = NotKnown((MissingFact(registered.words(subject), registered.role, path),))
        if self.of_bike is not None and (name in _OF_BIKE if registered is None else registered.is_of_bike):
            self.of_bike.found[name, subject] = found
        return found

    def _given(self, name: str, subject: str | None) -> Any:
        if name == "subject":
            return subject
        if name in ("control", "adjuster", "end"):
            return self._subjects[name].get(subject or "", ABSENT)  # type: ignore[index]
        value = self._roots[name]
        return (
            NotKnown((MissingFact(ROOT_LABELS.get(name, name), "session", (name,)),))
            if value is UNKNOWN
            else value
        )

    def _gathered(self, name: str) -> Any:
        per = FACTS[name].per
        found = {subject: self.get(name, subject) for subject in self.subjects(per)} if per else {}
        missing = [one for value in found.values() if isinstance(value, NotKnown) for one in value.missing]
        if missing:
            return NotKnown(tuple(dict.fromkeys(missing)))
        return {subject: value for subject, value in found.items() if value is not ABSENT}


class NeedKey(NamedTuple):
    """How a fact is asked for: under one key whatever the subject, of the subject, or gathered from all."""

    need: str
    key: tuple[str, None] | None
    gathered: bool


class Needs(tuple[NeedKey, ...]):
    """How several facts are asked for; `absent` is the one of them that was absent when last one was.

    `for_all` are those that are the same whatever subject they are asked about, where a rule asks.
    """

    absent: NeedKey | None = None
    for_all: frozenset[str] = frozenset()


def asked_for(needs: tuple[str, ...], gathers: frozenset[str] = frozenset()) -> Needs:
    """Say of each fact how it is asked for, once all are registered."""
    return Needs(
        NeedKey(need, None if need in gathers or _of_subject(need) else (need, None), need in gathers)
        for need in needs
    )


def _of_subject(name: str) -> bool:
    registered = FACTS.get(name)
    return name in ("subject", "control", "adjuster", "end") or bool(registered and registered.per)


ROOT_LABELS = {
    "bike": "the bike",
    "rider": "the rider",
    "day": "the day",
    "venue": "the venue",
    "tyres": "the tyre set",
    "session": "the session",
}


def _spoken(subject: str | None) -> str:
    return label_of(subject or "")

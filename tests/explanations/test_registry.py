"""The explanations: one for everything that a set-up can hold, said in words that promise nothing."""

import re
from collections.abc import Iterator

import attrs
import pytest

from paddock_tui.explanations import (
    LEVEL_EFFECTS,
    OF_FIELDS,
    OF_FUNCTIONS,
    SESSION_FIELDS,
    Explanation,
    automatic,
    of_adjuster,
    of_offset,
    of_path,
    sources,
)
from paddock_tui.records.electronics import FUNCTIONS, HELP_FUNCTIONS, Effect
from paddock_tui.records.fields import specs
from paddock_tui.records.fields_of_record import fields
from paddock_tui.records.kinds import CLASSES
from paddock_tui.records.session import Session
from paddock_tui.records.setup import Profile, SetUp
from paddock_tui.records.shapes import Word
from paddock_tui.records.suspension import OFFSET_ACTS, Adjuster, Offset
from tests.every import every
from tests.sample import bike, records


def adjusted() -> Iterator[Adjuster]:
    """List every kind of adjuster: what it adjusts at each end where that is."""
    what = specs(Adjuster)["what"][1].shape
    assert isinstance(what, Word)
    for word in what.choices:
        for end in ("steering",) if word == "damper" else ("front", "rear"):
            yield Adjuster(end=end, what=word)


def every_explanation() -> dict[str, Explanation]:
    """Give every explanation there is, each once."""
    found = {f"function {name}": one for name, one in OF_FUNCTIONS.items()}
    found |= {f"effect {name}": one for name, one in LEVEL_EFFECTS.items()}
    found |= {f"field {name}": one for name, one in ({**OF_FIELDS, **SESSION_FIELDS}).items()}
    found |= {f"offset {name}": one for name, one in automatic.OFFSETS.items()}
    for one in adjusted():
        explained = of_adjuster(one)
        assert explained is not None, one
        found[f"adjuster {one.end} {one.what}"] = explained
    return {name: one for at, (name, one) in enumerate(found.items()) if one not in list(found.values())[:at]}


EVERY = [pytest.param(one, id=name) for name, one in every_explanation().items()]


def test_every_function_and_every_effect_of_a_level_is_explained() -> None:
    assert tuple(OF_FUNCTIONS) == FUNCTIONS
    assert set(LEVEL_EFFECTS) == {one.name for one in attrs.fields(Effect)}


def test_every_single_field_of_a_set_up_is_explained() -> None:
    single = {key for key, (_, spec) in specs(SetUp).items() if spec.nature == "one"}
    assert set(OF_FIELDS) == single
    assert set(SESSION_FIELDS) <= set(specs(CLASSES["session"]))


def test_every_adjuster_has_an_explanation_of_its_own_end() -> None:
    ends = {one.end: of_adjuster(one) for one in adjusted() if one.what == "rebound"}
    assert ends["front"] != ends["rear"]
    assert of_adjuster(Adjuster(what="rebound")) is None


def test_every_act_of_an_offset_is_explained_and_a_name_alone_says_it_too() -> None:
    assert set(automatic.OFFSETS) == {*OFFSET_ACTS, ""}
    assert of_offset("under-way", Offset(acts="drive")) == automatic.OFFSETS["drive"]
    assert of_offset("bumps", Offset()) == automatic.OFFSETS["bumps"]
    assert of_offset("under-way", Offset()) == automatic.OFFSETS[""]


@every("record", [one for kind in (Session, Profile) for _, one in records(kind)])
def test_every_value_of_every_set_up_of_the_sample_is_explained(record: Session | Profile) -> None:
    assert record.bike is not None
    of = bike(record.bike)
    kind = "session" if isinstance(record, Session) else "profile"
    paths = [one.path for one in fields(kind, record, of) if one.path[:1] == ("setup",)]
    assert len(paths) >= 12
    assert [path for path in paths if of_path(path, of, record.setup.damping) is None] == []


@every("found", EVERY)
def test_an_explanation_is_whole(found: Explanation) -> None:
    """The one for a control of which nothing is known says that, and no more."""
    assert all(re.fullmatch(r"[A-Z].*[a-z)]\.", sentence) for sentence in found.does)
    assert all((found.title, found.too_much, found.too_little, found.cannot, found.works_with, found.watch))
    for way in (found.more, found.less):
        assert str(way.costs) or found is OF_FUNCTIONS["other"]
        assert str(way.gives) or found is OF_FUNCTIONS["other"]
    known = {text for name, text in vars(sources).items() if name.isupper()}
    for source in found.source:
        assert source in known or source.startswith("amounts: ") or source == "the bike's manual"


PROMISES = re.compile(
    r"\bsafe(?:ly|r)?\b|\bguarante|\bprevents?\b|\bprotects?\b|\bsecure|\balways\b|\bno danger", re.I
)


@every("found", EVERY)
def test_no_sentence_promises_anything_and_none_calls_anything_faster(found: Explanation) -> None:
    text = " ".join(found.texts())
    assert PROMISES.findall(text) == []
    assert re.findall(r"\bfast(?:er|est)\b|\blap times?\b|\bseconds? a lap\b", text, re.I) == []


@every("function", HELP_FUNCTIONS)
def test_less_help_costs_safety_and_gains_none_of_it(function: str) -> None:
    less, more = OF_FUNCTIONS[function].less, OF_FUNCTIONS[function].more
    assert less.costs.safety
    assert less.gives.performance
    assert not less.gives.safety
    assert more.gives.safety
    assert more.costs.performance
    assert re.findall(r"\bquick|\bspeed\b|\bfast", less.gives.performance, re.I) == []

"""Classes that are made quickly are what attrs makes, and only the methods that are called are compiled."""

import functools
import importlib
import inspect
import pkgutil
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import attrs
import pytest

import paddock_tui
from paddock_tui.facts.core import Facts
from paddock_tui.on_demand import Whole
from paddock_tui.quick_classes import _FIELDS, _OWN_DEFINE, _OWN_FROZEN, _Described, is_known
from tests.clean import CHECK, after

_BEGIN = "from paddock_tui import quick_classes; assert quick_classes.begin()"

_BOTH = """
import sys
{begin}
import copy, functools, pickle, re, typing
import attrs, cattrs
__name__ = "paddock_tui.tried"
sys.modules[__name__] = sys.modules["__main__"]
T = typing.TypeVar("T")

@attrs.frozen
class Plain:
    a: int
    b: str = "b"
    made: typing.ClassVar[int] = 0

@attrs.frozen
class Below(Plain):
    c: tuple[int, ...] = attrs.field(factory=tuple, kw_only=True)
    b: str = "other"
    _d: int = attrs.field(default=3, eq=False, repr=False)

    def __attrs_post_init__(self):
        print("made", self.a)

    def told(self):
        return super().__repr__(), __class__ is Below

@attrs.frozen
class Derived(typing.Generic[T]):
    a: T
    b: T = attrs.field()
    twice: list = attrs.field(init=False)
    later: int = attrs.field(init=False)
    always: int = attrs.field(init=False, default=5)
    inner: typing.Any = None

    @b.default
    def _as_a(self):
        return self.a

    @twice.default
    def _both(self):
        return [self.a, self.b]

    @property
    def whole(self):
        return __class__.__name__

@attrs.frozen
class Working:
    a: int
    b: int = 0

    @functools.cached_property
    def sum(self):
        print("works", __class__.__name__)
        return self.a + self.b

    @functools.cached_property
    def failing(self):
        raise ValueError("failing")

@attrs.frozen
class Above(Working):
    c: int = 1

@attrs.frozen
class Text:
    a: int

    def __repr__(self):
        return "own"

@attrs.frozen(eq=False)
class Same:
    a: int

@attrs.define
class Changing:
    a: int
    b: list[int] = attrs.Factory(lambda self: [self.a], takes_self=True)

@attrs.frozen
class Refusing:
    a: int = attrs.field(converter=int, validator=attrs.validators.gt(0))

@attrs.frozen(order=True)
class Ordered:
    a: int

@attrs.define
class Failed(Exception):
    a: int

@attrs.frozen
class Empty:
    pass

def tried(act):
    try:
        return act()
    except Exception as error:
        return type(error).__name__, str(error)

one = Below(1, c=(2,), d=4)
print(one, one == Below(1, c=(2,), d=5), one != Below(2), hash(one) == hash(Below(1, c=(2,))), one.told())
print(attrs.evolve(one, a=5, d=7)._d, {{Plain(1): 2}}[Plain(1)], attrs.asdict(one), Plain(1) == 1)
print(tried(lambda: Below()), tried(lambda: Below(1, d=0, x=1)), tried(lambda: Plain(1, "b", 2)))
print(tried(lambda: setattr(one, "a", 2)), tried(lambda: delattr(one, "a")), Plain(b=1, a=2), Plain(1) == one)
print(tried(lambda: setattr(one, "z", 2)))
changing = Changing(7)
changing.a = 8
print(changing, changing == Changing(8, [7]), tried(lambda: hash(changing)))
print(tried(lambda: setattr(changing, "z", 2)))
print(cattrs.structure({{"a": 1, "c": [1, 2]}}, Below), cattrs.unstructure(Plain(1)), Derived.__parameters__)
print(Derived(1), tried(lambda: Derived(1).later), Derived(1).whole, Derived[int](2, 3), Text(1))
print(Same(1) == Same(1), hash(Same(1)) == hash(Same(1)), Refusing("3"), tried(lambda: Refusing(0)))
print(Ordered(1) < Ordered(2))
print(tried(lambda: Failed(1)), Empty(), Empty() == Empty(), hash(Empty()) == hash(Empty()))
working = Working(1, 2)
print(working.sum, working.sum, tried(lambda: working.failing), tried(lambda: working.none), Above(1).sum)
print(tried(lambda: setattr(working, "sum", 1)), working == Working(1, 2), working)
print(sorted(Working.__slots__), sorted(Above.__slots__))
held = Derived(1, inner=[])
held.inner.append(held)
print(held, repr(copy.copy(Plain(3))), repr(pickle.loads(pickle.dumps(Plain(4)))), copy.deepcopy(Changing(1)))
print(Below.__slots__, Below.__match_args__, Derived.__match_args__, Plain.__qualname__, Plain.made)
for cls in (Plain, Below, Derived, Changing, Ordered):
    print([re.sub(" at 0x[0-9a-f]+", "", str((each, each.inherited))) for each in attrs.fields(cls)])
print(tried(lambda: attrs.frozen(type("Wrong", (), {{"__annotations__": {{"a": int, "b": int}}, "a": 1}}))))
print(tried(lambda: attrs.frozen(type("Wrong", (), {{"a": attrs.field(), "__module__": "paddock_tui.x"}}))))
match one:
    case Plain(a, b):
        print(a, b)
"""

_SOME_FACTS = """
from paddock_tui.facts.core import Facts
try:
    Facts({}, {})
except RuntimeError as error:
    print(error)
"""

_COMPILED = """
import builtins
real, count = builtins.compile, []
def counting(source, file, *rest, **more):
    count.append(file)
    return real(source, file, *rest, **more)
builtins.compile = counting
from paddock_tui import quick_classes
assert quick_classes.begin()
import attrs
__name__ = "paddock_tui.tried"
count.clear()
def made(names):
    kinds = dict.fromkeys(names, int)
    return attrs.frozen(type("Made", (), {"__annotations__": kinds, "__module__": __name__}))
classes = [made([f"a{place}", f"b{place}", f"c{place}"]) for place in range(20)]
told = [len(count)]
classes[3](1, 2, 3)
told.append(len(count))
classes[3](1, 2, 3), [one(4, 5, 6) for one in classes]
told.append(len(count))
classes[3](1, 2, 3) == classes[3](1, 2, 4), attrs.fields(classes[5])
told.append(len(count))
print(*told)
"""


def said(program: str) -> str:
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_classes_that_are_made_quickly_do_what_others_do() -> None:
    quick = said(_BOTH.format(begin=_BEGIN))

    assert quick.splitlines() == said(_BOTH.format(begin="")).splitlines()
    assert "made 1" in quick


def test_every_class_of_the_program_is_described_as_attrs_describes_it() -> None:
    """What each class was made of is given to attrs as well, which makes its own of it."""
    for one in pkgutil.walk_packages(paddock_tui.__path__, "paddock_tui."):
        if not one.name.endswith("__main__"):
            importlib.import_module(one.name)
    quick = [one for one in set(_below(object)) if isinstance(vars(one).get(_FIELDS), _Described)]

    assert [one for one in quick if _description(one) != _description(_by_attrs(one))] == []
    assert len(quick) > 450


def _below(cls: type) -> Iterator[type]:
    subclasses: list[type] = type.__subclasses__(cls)
    for one in subclasses:
        yield one
        yield from _below(one)


def _by_attrs(made: type) -> type:
    described = vars(made)[_FIELDS]
    own = _OWN_FROZEN if described.is_frozen else _OWN_DEFINE
    by_attrs: type = own(
        described._declared, eq=made.__name__ not in _same_only_as_themselves(made.__module__)
    )
    return by_attrs


@functools.cache
def _same_only_as_themselves(module: str) -> frozenset[str]:
    """List the classes of a module that are declared so."""
    source = Path(inspect.getfile(sys.modules[module])).read_text(encoding="utf-8")
    return frozenset(re.findall(r"^@attrs\.\w+\(eq=False\)\nclass (\w+)", source, re.MULTILINE))


def _description(cls: Any) -> list[Any]:
    told: list[Any] = [[base.__name__ for base in cls.__mro__], cls.__match_args__, sorted(cls.__slots__)]
    told += [cls.__hash__ is None, cls.__hash__ is object.__hash__, cls.__eq__ is object.__eq__]
    for one in attrs.fields(cls):
        told.append(
            (one.name, one.alias, one.type, type(one.default), one.init, one.kw_only, one.eq, one.repr)
        )
    return told


def test_no_method_is_compiled_before_one_is_called_and_each_pattern_once() -> None:
    """The first of so many fields compiles for all of them; what describes the fields compiles nothing."""
    assert said(_COMPILED).split() == ["0", "1", "1", "2"]


def test_most_classes_are_made_quickly() -> None:
    """Those left to attrs are few, and each is one that asks for more."""
    found = after(CHECK)

    assert len(found["classes"]) > 200
    assert found["by attrs"] == {"MissingFact", "Scale", "_Frozen"}


_OTHERWISE = """
import attr, attrs
own = attrs.frozen
{change}
from paddock_tui import quick_classes
print(quick_classes.begin(), attrs.frozen is own)
__name__ = "paddock_tui.tried"
print(attrs.frozen(type("Made", (), {{"__annotations__": {{"a": int}}, "__module__": __name__}}))(1))
"""


@pytest.mark.parametrize(
    "change",
    [
        "quick = __import__('paddock_tui.quick_classes').quick_classes; quick.DECLARED = int",
        "quick = __import__('paddock_tui.quick_classes').quick_classes; quick._FIELDS = '__fields__'",
        "attr.s = own",
    ],
)
def test_where_attrs_is_another_it_is_left_as_it_is(change: str) -> None:
    """What a declaration holds, where fields are kept, or how attrs begins with a class."""
    assert said(_OTHERWISE.format(change=change)).splitlines() == ["False True", "Made(a=1)"]


def test_a_declaration_that_holds_something_else_is_not_known() -> None:
    assert not is_known(SimpleNamespace)
    assert not is_known(type("Declared", (), {"__slots__": ("_default", "init")}))


def test_nothing_is_judged_by_a_part_of_the_rules() -> None:
    with pytest.raises(RuntimeError, match="import some_module"):
        Whole("rules", "some_module").require()
    assert "facts are not all loaded" in said(_SOME_FACTS)
    importlib.import_module("paddock_tui.facts.registered")
    Facts({}, {})

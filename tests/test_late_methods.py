"""Methods that are compiled late do what others do, and only those that are called are compiled."""

import subprocess
import sys
from types import SimpleNamespace

import pytest

from paddock_tui.facts.core import Facts
from paddock_tui.late_methods import is_known
from paddock_tui.on_demand import Whole

_BOTH = """
import sys
{begin}
import attrs, cattrs

@attrs.frozen(order=True)
class Base:
    a: int
    b: str = "b"

@attrs.frozen
class Below(Base):
    c: tuple[int, ...] = attrs.field(factory=tuple, kw_only=True)
    d: int = attrs.field(default=3, converter=int, validator=attrs.validators.gt(0))

    def __attrs_post_init__(self):
        print("made", self.a)

@attrs.define
class Changing:
    a: int
    b: list[int] = attrs.Factory(lambda self: [self.a], takes_self=True)

def tried(act):
    try:
        return act()
    except Exception as error:
        return type(error).__name__, str(error).replace("Below.", "").replace("Base.", "")

one = Below(1, c=(2,), d="4")
print(one, repr(one), one == Below(1, c=(2,), d=4), one != Below(2), hash(one) == hash(Below(1, c=(2,), d=4)))
print(attrs.evolve(one, a=5), Base(1) < Base(2), {{Base(1): 2}}[Base(1)], attrs.asdict(one))
print(tried(lambda: Below()), tried(lambda: Below(1, d=0)), tried(lambda: Base(1, "b", 2)))
print(tried(lambda: setattr(one, "a", 2)), Base(1) == 1, Base(1) == one)
changing = Changing(7)
changing.a = 8
print(changing, changing == Changing(8, [7]), tried(lambda: hash(changing)))
print(cattrs.structure({{"a": 1, "c": [1, 2]}}, Below))
match one:
    case Base(a, b):
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
from paddock_tui import late_methods
assert late_methods.begin()
import attrs
count.clear()
classes = [attrs.make_class(f"Made{place}", ["a", "b"], frozen=True) for place in range(20)]
made = [file for file in count if "attrs" in file]
classes[3](1, 2)
classes[3](1, 2)
print(len(made), len([file for file in count if "attrs" in file]))
"""


def said(program: str) -> str:
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_classes_with_late_methods_do_what_others_do() -> None:
    late = said(_BOTH.format(begin="from paddock_tui import late_methods; assert late_methods.begin()"))

    assert late == said(_BOTH.format(begin=""))
    assert "made 1" in late


def test_only_the_method_that_is_called_is_compiled_and_once() -> None:
    assert said(_COMPILED).split() == ["0", "1"]


_OTHERWISE = """
import attr
own = attr._make._ClassBuilder._eval_snippets
{change}
from paddock_tui import late_methods
print(late_methods.begin())
attr._make._ClassBuilder = builder
attr._make._ClassBuilder._eval_snippets = own
print(attr.make_class("Made", ["a"])(1))
"""


@pytest.mark.parametrize(
    "change",
    [
        "builder = attr._make._ClassBuilder; attr._make.__dict__.pop('_ClassBuilder')",
        "builder = attr._make._ClassBuilder; builder._eval_snippets = lambda self, more: own(self)",
    ],
)
def test_where_the_builder_of_attrs_is_another_nothing_is_changed(change: str) -> None:
    assert said(_OTHERWISE.format(change=change)).splitlines() == ["False", "Made(a=1)"]


def test_where_what_the_builder_holds_means_something_else_it_is_left_as_it_was() -> None:
    """The snippets, known by their name, hold what cannot be made late: classes are as attrs makes them."""
    program = """
import attr
from paddock_tui import late_methods
builder = attr._make._ClassBuilder
own = builder._eval_snippets
late_methods._attach_stubs = lambda builder: [None for source, names in builder._script_snippets]
print(late_methods.begin(), builder._eval_snippets is own, attr.make_class("Made", ["a"])(1))
"""
    assert said(program).strip() == "False True Made(a=1)"


def test_another_attrs_is_left_as_it_is() -> None:
    assert not is_known(SimpleNamespace(__slots__=("_cls",), _eval_snippets=lambda self: self))
    assert not is_known(SimpleNamespace())


def test_nothing_is_judged_by_a_part_of_the_rules() -> None:
    with pytest.raises(RuntimeError, match="import some_module"):
        Whole("rules", "some_module").require()
    assert "facts are not all loaded" in said(_SOME_FACTS)
    assert Facts({}, {}).subjects("end") == ()

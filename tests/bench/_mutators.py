"""Small changes of a module that a test should notice, one at a time: where each is, and the code with it."""

import ast
import copy
from collections.abc import Callable, Iterator
from types import CodeType

import attrs

Variant = tuple[str, ast.AST]
"""What kind of change, and what stands there then."""


@attrs.frozen
class Mutant:
    """One change: in which file, at which line, of what kind, what stood there and what stands there then.

    `where` is the qualified name of the function or class around it, `statement` the line of the statement
    (of a decorator or a default: of the function's first one). `at_import` says that the changed code runs
    when the module is imported, `name` which name it gives a value then. `number` counts within the file.
    """

    path: str
    line: int
    kind: str
    before: str
    after: str
    where: str
    statement: int
    at_import: bool
    name: str
    number: int

    @property
    def key(self) -> str:
        """What a line of the list of mutants that need no test begins with."""
        return f"{self.path} {self.where or '-'} [{self.kind}] {self.before} -> {self.after}"


@attrs.frozen
class _Place:
    """A node, how to put another there, and what is around it."""

    node: ast.AST
    put: Callable[[ast.AST], None]
    where: str
    statement: int
    at_import: bool
    name: str


def mutants_of(path: str, source: str) -> list[Mutant]:
    """List every mutant of a module."""
    found: list[Mutant] = []
    for place in _places(ast.parse(source)):
        for kind, other in _variants(place.node):
            before, after = _difference(place.node, other)
            found.append(
                Mutant(
                    path,
                    getattr(place.node, "lineno", place.statement),
                    kind,
                    before,
                    after,
                    place.where,
                    place.statement,
                    place.at_import,
                    place.name,
                    len(found),
                )
            )
    return found


def _difference(node: ast.AST, other: ast.AST) -> tuple[str, str]:
    """Write both on a line, cut to what differs and a little around it."""
    before, after = (" ".join(ast.unparse(one).split()) for one in (node, other))
    same = next((at for at, (a, b) in enumerate(zip(before, after, strict=False)) if a != b), 0)
    tail = next((at for at, (a, b) in enumerate(zip(before[::-1], after[::-1], strict=False)) if a != b), 0)
    start = max(same - _SHOWN, 0)
    ends = (max(len(one) - tail, same) + _SHOWN for one in (before, after))
    return before[start : next(ends)], after[start : next(ends)]


_SHOWN = 30


def mutated(path: str, source: str, number: int) -> CodeType:
    """Compile a module with its mutant of this number; the lines stay as they are."""
    tree = ast.parse(source)
    at = 0
    for place in _places(tree):
        for _, other in _variants(place.node):
            if at == number:
                place.put(ast.copy_location(other, place.node))
                return compile(ast.fix_missing_locations(tree), path, "exec", dont_inherit=True)
            at += 1
    raise IndexError(number)


def instrumented(path: str, source: str, lines: dict[int, tuple[str, int]]) -> CodeType:
    """Compile a module that calls `__hit__(number)` before each statement; `lines` takes where each is."""
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            _hit_in(node, path, lines)
    return compile(ast.fix_missing_locations(tree), path, "exec", dont_inherit=True)


def _hit_in(function: ast.AST, path: str, lines: dict[int, tuple[str, int]]) -> None:
    for node in [function, *_own(function)]:
        for field in ("body", "orelse", "finalbody"):
            block = getattr(node, field, None)
            if not isinstance(block, list) or not block or not isinstance(block[0], ast.stmt):
                continue
            made: list[ast.stmt] = []
            for one in block:
                if not _is_text(one) and not isinstance(one, ast.Nonlocal | ast.Global):
                    lines[len(lines)] = path, one.lineno
                    call = ast.parse(f"__hit__({len(lines) - 1})").body[0]
                    for part in ast.walk(call):
                        ast.copy_location(part, one)
                    made.append(call)
                made.append(one)
            setattr(node, field, made)


def _own(function: ast.AST) -> Iterator[ast.AST]:
    """List the nodes of a function, those of functions within it left out."""
    for child in ast.iter_child_nodes(function):
        if not isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda | ast.ClassDef):
            yield child
            yield from _own(child)


def _is_text(node: ast.AST) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)


_NEVER = (ast.Import, ast.ImportFrom, ast.Nonlocal, ast.Global, ast.Pass)
_ANNOTATIONS = {"annotation", "returns"}
_TYPES = {
    "Literal",
    "Callable",
    "Mapping",
    "Sequence",
    "dict",
    "list",
    "tuple",
    "set",
    "type",
    "TypeVar",
    "cast",
}
_OF_THE_LANGUAGE = {"property", "staticmethod", "classmethod", "functools", "attrs", "contextmanager", "abc"}


@attrs.frozen
class _Around:
    where: str = ""
    statement: int = 0
    at_import: bool = True
    name: str = ""


def _places(tree: ast.Module) -> Iterator[_Place]:
    yield from _within(tree, _Around())


def _within(node: ast.AST, around: _Around) -> Iterator[_Place]:
    """List the nodes below a node that may be changed, with what is around them, in the order of the text."""
    for field, value in ast.iter_fields(node):
        if field in _ANNOTATIONS:
            continue
        children = value if isinstance(value, list) else [value]
        for at, child in enumerate(children):
            if not isinstance(child, ast.AST) or _left_alone(child, field):
                continue
            put = _putter(node, field, at if isinstance(value, list) else None)
            inner = _around(node, field, child, around)
            yield _Place(child, put, inner.where, inner.statement, inner.at_import, inner.name)
            yield from _within(child, inner)


def _putter(node: ast.AST, field: str, at: int | None) -> Callable[[ast.AST], None]:
    def put(other: ast.AST) -> None:
        if at is None:
            setattr(node, field, other)
        else:
            getattr(node, field)[at] = other

    return put


def _around(node: ast.AST, field: str, child: ast.AST, around: _Around) -> _Around:
    if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef):
        where = f"{around.where}.{node.name}".lstrip(".")
        if isinstance(node, ast.ClassDef):
            around = attrs.evolve(around, where=where, name="")
        elif field == "body":
            around = attrs.evolve(around, where=where, at_import=False)
        else:
            return attrs.evolve(around, where=where, statement=_first(node), name="")
    if isinstance(child, ast.stmt):
        name = ""
        if around.at_import and isinstance(child, ast.Assign | ast.AnnAssign):
            target = child.targets[0] if isinstance(child, ast.Assign) else child.target
            name = ast.unparse(target)
        around = attrs.evolve(around, statement=child.lineno, name=name or around.name)
    return around


def _first(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    body = [one for one in function.body if not _is_text(one)]
    return (body or function.body)[0].lineno


def _left_alone(child: ast.AST, field: str) -> bool:
    """Say what is never changed: imports, texts that document, types, decorators of the language."""
    if isinstance(child, _NEVER) or _is_text(child):
        return True
    if field == "decorator_list":
        return ast.unparse(child).partition("(")[0].partition(".")[0] in _OF_THE_LANGUAGE
    if isinstance(child, ast.If):
        return "TYPE_CHECKING" in ast.unparse(child.test) or "__name__" in ast.unparse(child.test)
    if isinstance(child, ast.Subscript | ast.Call):
        called = child.value if isinstance(child, ast.Subscript) else child.func
        return ast.unparse(called) in _TYPES
    return False


_COMPARED: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
_RECKONED: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.FloorDiv,
    ast.Pow: ast.Mult,
    ast.BitOr: ast.BitAnd,
    ast.BitAnd: ast.BitOr,
}
_DECLARE = ("rule", "limit")
_CALLED = {"min": "max", "max": "min", "any": "all", "all": "any"}


def _variants(node: ast.AST) -> Iterator[Variant]:
    """Give what may stand in the place of a node."""
    make = _MAKERS.get(type(node))
    if make is not None:
        yield from make(node)


def _compare(node: ast.Compare) -> Iterator[Variant]:
    for at, operator in enumerate(node.ops):
        for other in _COMPARED.get(type(operator), ()):
            made = copy.deepcopy(node)
            made.ops[at] = other()
            yield "comparison", made


def _arithmetic(node: ast.BinOp) -> Iterator[Variant]:
    other = _RECKONED.get(type(node.op))
    if other is not None:
        made = copy.deepcopy(node)
        made.op = other()
        yield "arithmetic", made


def _boolean(node: ast.BoolOp) -> Iterator[Variant]:
    made = copy.deepcopy(node)
    made.op = ast.Or() if isinstance(node.op, ast.And) else ast.And()
    yield "boolean", made
    for at in range(len(node.values)):
        values = [one for place, one in enumerate(node.values) if place != at]
        yield "boolean", values[0] if len(values) == 1 else ast.BoolOp(node.op, values)


def _unary(node: ast.UnaryOp) -> Iterator[Variant]:
    if isinstance(node.op, ast.Not | ast.USub):
        yield "boolean" if isinstance(node.op, ast.Not) else "arithmetic", node.operand


def _condition(node: ast.If | ast.While | ast.IfExp) -> Iterator[Variant]:
    made = copy.deepcopy(node)
    made.test = ast.UnaryOp(ast.Not(), made.test)
    if not isinstance(node, ast.While):
        yield "boolean", made


def _constant(node: ast.Constant) -> Iterator[Variant]:
    value = node.value
    if isinstance(value, bool):
        yield "constant", ast.Constant(not value)
    elif isinstance(value, int):
        yield "constant", ast.Constant(value + 1)
    elif isinstance(value, float):
        yield "constant", ast.Constant(value * 1.3 if value else 1.0)
    elif isinstance(value, str) and value.strip():
        yield "constant", ast.Constant(f"{value}x")


def _call(node: ast.Call) -> Iterator[Variant]:
    # The order of what a least or most is taken of changes nothing.
    if len(node.args) >= 2 and ast.unparse(node.func) not in ("min", "max") and not _has_star(node):
        made = copy.deepcopy(node)
        made.args[0], made.args[1] = made.args[1], made.args[0]
        yield "argument", made
    # Elsewhere most named arguments have to be there: without one the call fails whatever it is about.
    if isinstance(node.func, ast.Name) and node.func.id in _DECLARE:
        for at in range(len(node.keywords)):
            made = copy.deepcopy(node)
            del made.keywords[at]
            yield "argument", made
    if isinstance(node.func, ast.Name) and node.func.id in _CALLED:
        made = copy.deepcopy(node)
        made.func = ast.Name(_CALLED[node.func.id], ast.Load())
        yield "function", made


def _has_star(node: ast.Call) -> bool:
    return any(isinstance(one, ast.Starred) for one in node.args)


def _statement(_: ast.stmt) -> Iterator[Variant]:
    yield "removed", ast.Pass()


def _return(node: ast.Return) -> Iterator[Variant]:
    if node.value is not None and not (isinstance(node.value, ast.Constant) and node.value.value is None):
        yield "removed", ast.Return(ast.Constant(None))


def _loop_word(node: ast.Break | ast.Continue) -> Iterator[Variant]:
    yield "removed", ast.Continue() if isinstance(node, ast.Break) else ast.Break()


_MAKERS: dict[type[ast.AST], Callable[..., Iterator[Variant]]] = {
    ast.Compare: _compare,
    ast.BinOp: _arithmetic,
    ast.BoolOp: _boolean,
    ast.UnaryOp: _unary,
    ast.If: _condition,
    ast.IfExp: _condition,
    ast.Constant: _constant,
    ast.Call: _call,
    ast.Expr: _statement,
    ast.AugAssign: _statement,
    ast.Raise: _statement,
    ast.Delete: _statement,
    ast.Return: _return,
    ast.Break: _loop_word,
    ast.Continue: _loop_word,
}

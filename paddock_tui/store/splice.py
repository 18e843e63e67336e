"""Exchange runs of lines in a text, and check that nothing else moved."""

from collections.abc import Sequence

import attrs

from paddock_tui.records.edits import Raw


@attrs.frozen(order=True)
class Splice:
    """Lines [lo, hi) give way to others; these need no line endings, the file's own is added."""

    lo: int
    hi: int
    lines: tuple[str, ...] = ()


def line_ending(lines: Sequence[str]) -> str:
    """Return the ending that most lines of a file have; a line feed where there are none."""
    text = "".join(lines)
    return "\r\n" if 2 * text.count("\r\n") > text.count("\n") else "\n"


def bare(line: str) -> str:
    """Return a line without its ending."""
    return line.removesuffix("\n").removesuffix("\r") if line.endswith("\n") else line


def splice(lines: Sequence[str], splices: Sequence[Splice]) -> list[str]:
    """Make the exchanges; a missing final newline stays missing, and a present one present."""
    result: list[str] = []
    at = 0
    for part in sorted(splices):
        result += [*lines[at : part.lo], *part.lines]
        at = part.hi
    result += lines[at:]
    ending = line_ending(lines)
    result = [line if line.endswith("\n") else line + ending for line in result]
    if lines and not lines[-1].endswith("\n") and result and result[-1].strip():
        result[-1] = bare(result[-1])
    return result


def only_touched(old: Sequence[str], new: Sequence[str], splices: Sequence[Splice]) -> bool:
    """Return whether all lines outside the splices stand in the new text, in order, and nothing unasked for.

    Only the ending of a last line may differ.
    """
    if len(splices) == 1 and _is_only(old, new, splices[0]):
        return True
    taken = {line for part in splices for line in range(part.lo, part.hi)}
    kept = [line for at, line in enumerate(old) if at not in taken]
    rest = iter(new)
    found = all(any(_alike(line, other) for other in rest) for line in kept)
    return found and len(new) == len(kept) + sum(len(part.lines) for part in splices)


def _is_only(old: Sequence[str], new: Sequence[str], part: Splice) -> bool:
    """Return whether the lines before a splice and those behind it stand in the new text as they are."""
    behind = part.lo + len(part.lines)
    same_before = tuple(new[: part.lo]) == tuple(old[: part.lo])
    return same_before and tuple(new[behind:]) == tuple(old[part.hi :])


def way_back(old: Sequence[str], new: Sequence[str]) -> Raw:
    """Return what turns `new` into `old` again.

    Where lines only come back, their neighbours are kept with them: so their place can be found, and
    be seen to be the same place.
    """
    first, last_old, last_new = _difference(old, new)
    if first == last_new and first != last_old:
        before = 1 if first > 0 else 0
        behind = 1 if last_new < len(new) and last_old < len(old) else 0
        first, last_old, last_new = first - before, last_old + behind, last_new + behind
    return Raw(first, tuple(new[first:last_new]), tuple(old[first:last_old]))


def go_back(lines: Sequence[str], raw: Raw) -> list[str] | None:
    """Put lines back where they were, or at the one other place that has them; None where neither is so."""
    at = raw.line if _stands(lines, raw.put, raw.line) else _only_place(lines, raw.put)
    if at is None:
        return None
    result = [*lines[:at], *raw.took, *lines[at + len(raw.put) :]]
    return result if all(line.endswith("\n") for line in result[:-1]) else None


def _stands(lines: Sequence[str], put: tuple[str, ...], at: int) -> bool:
    if not put and at != len(lines):  # nothing to know the place by, unless the file is empty
        return False
    return tuple(lines[at : at + len(put)]) == put


def _only_place(lines: Sequence[str], put: tuple[str, ...]) -> int | None:
    if not put:
        return None
    places = [at for at in range(len(lines) - len(put) + 1) if tuple(lines[at : at + len(put)]) == put]
    return places[0] if len(places) == 1 else None


def _difference(old: Sequence[str], new: Sequence[str]) -> tuple[int, int, int]:
    """Return the first differing line, and the ends of the differing runs in the old and the new text."""
    shorter = min(len(old), len(new))
    first = 0
    while first < shorter and old[first] == new[first]:
        first += 1
    behind = 0
    while behind < shorter - first and old[-1 - behind] == new[-1 - behind]:
        behind += 1
    return first, len(old) - behind, len(new) - behind


def _alike(one: str, other: str) -> bool:
    if one.endswith("\n") and other.endswith("\n"):
        return one == other
    return bare(one) == bare(other)

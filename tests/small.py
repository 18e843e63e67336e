"""Small garages written for one test: a bike, a rider, and whatever else the test says."""

from pathlib import Path

GARAGE = 'name = "small"\nschema = 1\n'

BIKE = """name = "Plain"   # any bike
electronics = "listed"
suspension = "listed"

[controls.traction]
kind = "level"
levels = [0, 10]
most_help = 10
off = true

[controls.wheelie]
kind = "level"
levels = [1, 6]
most_help = 1
"""

SESSION = """date = 2026-05-16
number = {number}
kind = "track day"
bike = "plain"
rider = "ann"
start = {start}

[setup.controls]
traction = 5    # as before
"""


def session(number: int = 1, start: str = "10:00:00", **more: str) -> str:
    """Write a session; `more` are root values as TOML, the word None leaves one out."""
    text = SESSION.format(number=number, start=start)
    root, table = text.split("\n\n")
    lines = [line for line in root.splitlines() if line.split(" = ")[0] not in more]
    lines += [f"{key} = {value}" for key, value in more.items() if value != "None"]
    return "\n".join(lines) + "\n\n" + table


def write(root: Path, **files: str) -> Path:
    """Write a garage; each name is a path with '__' for the slash, as in bikes__plain."""
    texts = {"garage": GARAGE, "bikes__plain": BIKE, "riders__ann": 'name = "Ann"\ninitials = "AN"\n'} | files
    for name, text in texts.items():
        path = root / (name.replace("__", "/") + ".toml")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text.encode("utf-8"))
    return root


def snapshot(root: Path) -> dict[str, bytes]:
    """Give every file of a garage with its bytes, the tool's own folder left out."""
    return {
        str(path.relative_to(root)): path.read_bytes()
        for path in sorted(root.rglob("*"))
        if path.is_file() and ".paddock" not in path.parts
    }


def changed_lines(before: str, after: str) -> list[tuple[str, str]]:
    """Give the lines that differ of two texts with as many lines."""
    old, new = before.splitlines(), after.splitlines()
    assert len(old) == len(new)
    return [(one, other) for one, other in zip(old, new, strict=True) if one != other]

"""`new`: a garage with checklists, no other record, and a commented template for every kind of record."""

from pathlib import Path

from paddock_tui.commands.common import NOT_DONE, OK, CommandStopped, say
from paddock_tui.commands.open import START, can_draw, draw
from paddock_tui.commands.schema import schema_text
from paddock_tui.commands.templates import checklists, template
from paddock_tui.records.garage import SCHEMA
from paddock_tui.records.paths import FOLDERS, KINDS
from paddock_tui.store.errors import NotWritten, in_plain_words
from paddock_tui.store.files import replace_durably
from paddock_tui.store.schema_lines import SCHEMAS, schema_line
from paddock_tui.store.tree import Tree
from paddock_tui.text import printable

GARAGE_TEXT = f"""# The garage: a folder of text files. Edit them here or with paddock-tui; comments stay.
name = "my garage"
schema = {SCHEMA}

[units]              # what bare numbers are in, and what is shown beside other units
pressure = "bar"     # bar, psi or kPa
temperature = "C"    # C or F
speed = "km/h"       # km/h or mph
distance = "km"      # km or mi
mass = "kg"          # kg or lb
volume = "l"         # l, US gal or imp gal
"""


def new(folder: str) -> int:
    """Make a garage in a folder that is new or empty; on a terminal go on with the guided start."""
    root = Path(folder)
    tree = Tree(root)
    name = printable(folder)
    try:
        if root.exists() and (not root.is_dir() or any(root.iterdir())):
            there = root.joinpath("garage.toml").is_file()
            mend = f"  to go on with it: paddock-tui {name}, then m, guided start" if there else ""
            raise CommandStopped(
                NOT_DONE, f"{name} is there already and not empty", mend or "  name a new folder"
            )
        for kind, inside in FOLDERS.items():
            (root / inside).mkdir(parents=True)
            text = schema_line(kind) + template(kind)
            replace_durably(tree, root / inside / f"{kind}.toml.example", text, create=True)
        (root / SCHEMAS).mkdir()
        for kind in KINDS:
            replace_durably(tree, root / SCHEMAS / f"{kind}.json", schema_text(kind) + "\n", create=True)
        for file, text in checklists():
            text = schema_line("checklist") + text
            replace_durably(tree, root / FOLDERS["checklist"] / file, text, create=True)
        replace_durably(tree, root / "garage.toml", schema_line("garage") + GARAGE_TEXT, create=True)
    except OSError as error:
        raise CommandStopped(NOT_DONE, f"{name}: {in_plain_words(error)}") from error
    except NotWritten as error:
        raise CommandStopped(NOT_DONE, f"{name}: {error.reason}") from error
    said = (f"made a garage in {name}, with checklists", "each folder has a template to copy, *.toml.example")
    say(said)
    if can_draw():
        return draw(folder, None, START)
    say((f"  the guided start: paddock-tui {name}, on a terminal, then m",))
    return OK

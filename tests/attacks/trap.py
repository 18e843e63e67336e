"""A garage as a stranger might send it, and a place outside it that nothing may reach."""

import os
from pathlib import Path

import attrs

from paddock_tui.records.edits import Change, Edit, Step
from paddock_tui.records.paths import Ref
from paddock_tui.store.garage import GarageFiles
from paddock_tui.store.outcomes import Outcome
from paddock_tui.store.saving import save
from tests.small import session, write

PLAIN = Ref("bike", "plain")
ONE = Ref("session", "one")


@attrs.frozen
class Trap:
    """The garage, its private folder, and a file outside with what stands in it."""

    root: Path
    private: Path
    victim: Path

    def unharmed(self) -> bool:
        """Return whether nothing outside the garage changed or came."""
        outside = self.victim.parent
        return self.victim.read_bytes() == b"untouched\n" and [one.name for one in outside.iterdir()] == [
            self.victim.name
        ]

    def files(self) -> GarageFiles:
        """Return the garage's files as a new run sees them."""
        return GarageFiles(self.root)

    def save(self, old: str, new: str) -> Outcome:
        """Save another name of the bike, with a command in it for a shell that would read it."""
        return save(self.files(), naming(old, new))


def naming(old: str, new: str) -> Step:
    """Give the step that names the bike."""
    return Step(f"name {old} -> {new}", (Change(PLAIN, (Edit(("name",), old, new),)),))


def trap(tmp_path: Path) -> Trap:
    """Make a garage with an empty private folder, and a file beside it."""
    root = write(tmp_path / "garage", sessions__one=session())
    (root / ".paddock" / "journal").mkdir(parents=True)
    victim = tmp_path / "home" / "victim"
    victim.parent.mkdir()
    victim.write_bytes(b"untouched\n")
    return Trap(root, root / ".paddock", victim)


def everything(root: Path) -> dict[str, object]:
    """Give all of a folder, hidden things, modes and times of change included, links unfollowed."""
    found: dict[str, object] = {}
    for place, folders, names in os.walk(root):
        for name in (*folders, *names):
            path = Path(place) / name
            status = path.lstat()
            found[str(path.relative_to(root))] = (status.st_mode, status.st_mtime_ns, status.st_size)
    return found

"""The aim of an outing on its return: whether it was met is asked first, by one letter."""

from paddock_tui.records.edits import MISSING, Change, Edit, Step
from paddock_tui.records.paths import Path, Ref
from paddock_tui.store.garage import GarageFiles

AIM_MET: Path = ("aim_met",)

MET = {"y": "yes", "p": "partly", "n": "no"}
"""The answers by the letter that gives them."""


def asks_aim(files: GarageFiles, session: Ref) -> bool:
    """Return whether a session had an aim and nobody said yet whether it was met."""
    data = files.data(session)
    return bool(data.get("aim")) and "aim_met" not in data


def answering_aim(files: GarageFiles, session: Ref, key: str) -> Step | None:
    """Make the step that says whether the aim was met; None where the key is no answer to it."""
    if key not in MET:
        return None
    old = files.data(session).get("aim_met", MISSING)
    if old == MET[key]:
        return None
    return Step(f"aim met: {MET[key]}", (Change(session, (Edit(AIM_MET, old, MET[key]),)),))

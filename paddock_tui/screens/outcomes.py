"""What became of a step, in the words of the last line."""

from paddock_tui.records.paths import spell
from paddock_tui.store.saving import Clash, NotSaved, Outcome, Saved
from paddock_tui.text import printable


def said_of(outcome: Outcome | None) -> str:
    """Say what went wrong; empty where all is well."""
    if isinstance(outcome, Clash):
        from paddock_tui.desk.edits.values import shown

        place = spell(outcome.edit.path)
        now = printable(shown(outcome.found))
        mine = printable(shown(outcome.edit.new))
        return f"not saved: another program set {place} to {now}; yours was {mine}, press again"
    if isinstance(outcome, NotSaved):
        mend = f"; {outcome.mend}" if outcome.mend else ""
        return printable(f"not saved: {outcome.reason}{mend}")
    if isinstance(outcome, Saved) and outcome.unnoted:
        return printable(f"saved, but only this run can undo it: {outcome.unnoted}")
    return ""

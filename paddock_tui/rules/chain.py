"""The rule about the chain: its slack is measured after whatever moved it."""

from paddock_tui.facts.work import MovedPart
from paddock_tui.records.session import Session
from paddock_tui.rules.core import CAUTION, RaisedFinding, Remedy, Result, ToDo, rule


@rule(
    "chain-slack-not-measured",
    CAUTION,
    source="sprocket makers' and organisers' lists; the slack is the manual's",
    at="session:chain_slack",
    when=("to_come",),
    todo=ToDo("measure the chain slack at its tight point"),
)
def chain_slack_not_measured(chain_moved: MovedPart, session: Session) -> Result:
    """Sprockets, links or the rear wheel moved, and the slack was not measured since."""
    if session.chain_slack is not None:
        return None
    return RaisedFinding(
        message=f"Chain slack not measured since: {chain_moved.words}.",
        quoted=(chain_moved.words,),
        why="Too tight it binds the shock and eats bearings; too loose it jumps.",
        remedy=Remedy(
            "Measure at the tightest point with axle, pivot and sprocket in line, to the manual's figure."
        ),
        subject="chain",
    )

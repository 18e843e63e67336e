"""The rule about facts that two laptops changed differently: until one is taken, nobody knows them."""

from paddock_tui.facts.record_checks import DisputedFact
from paddock_tui.records.disputes import CONFLICT
from paddock_tui.rules.core import HOLD, RECORDS, SERIOUS, RaisedFinding, Remedy, Result, rule


@rule("two-laptops-disagree", SERIOUS, of_set_up=True, rank=RECORDS)
def two_laptops_disagree(facts_in_dispute: tuple[DisputedFact, ...]) -> Result:
    """A fact that was changed on two laptops, each in its own way, and nobody has decided since."""
    return [
        RaisedFinding(
            message=f"Two laptops disagree on {one.label}: {one.values}."[:78],
            why="Both changed it before git brought them together; until one is taken it is not known.",
            remedy=Remedy("Ask who changed it, then take one of the two: enter on its row in the record."),
            severity=HOLD if one.dispute.happened else SERIOUS,
            subject=one.dispute.key,
            role=one.role,
            path=(CONFLICT, one.dispute.key, "ours"),
            ref=one.ref,
            facts=f"{one.label}: {one.values}",
        )
        for one in facts_in_dispute
    ]

"""Cases of the rule about facts that two laptops changed differently."""

from paddock_tui.facts.situation import Disputed
from paddock_tui.records.disputes import Dispute
from paddock_tui.records.edits import MISSING
from paddock_tui.records.paths import Ref
from tests.rules.case import Cases, raises, silent

HERE = Ref("session", "2026-05-16-3-kestrel")


def disputed(
    *path: str, base: object = MISSING, ours: object = MISSING, theirs: object = MISSING
) -> Disputed:
    return Disputed("session", HERE, Dispute(path, ".".join(path), base, ours, theirs))  # type: ignore[arg-type]


CASES = {
    "two-laptops-disagree": Cases(
        raising=(
            raises(
                "setup.controls.traction",
                "serious",
                disputed=(disputed("setup", "controls", "traction", base=3, ours=4, theirs=7),),
                says="Two laptops disagree on traction control: 4 or 7.",
            ),
            raises(
                "incidents.1.mended",
                "hold",
                disputed=(disputed("incidents", "1", "mended", ours="new hose"),),
                says="Two laptops disagree on repaired: new hose or not there.",
            ),
        ),
        silent=(silent(),),
        asks=True,
    ),
}

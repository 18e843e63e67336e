"""What was known at going out: kept beside what is known afterwards."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.records import common as c
from paddock_tui.records.fields import nested_values, one


@attrs.frozen
class WentOutWith:
    """What was known at going out: written by the stamp that says went out, and never judged again."""

    at: dt.time | None = one(c.CLOCK, "verdict at", "when going out was stamped")
    verdict: str | None = one(c.TEXT, "verdict then", "the verdict that it went out with")
    findings: Mapping[str, Mapping[str, str]] = nested_values(
        c.TEXT, "findings then", "how bad it was", keyed_by="rule and subject"
    )

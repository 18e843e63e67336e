"""Remedies: the step that a finding's remedy makes, and what the review would say after it."""

import datetime as dt
from collections.abc import Mapping

import attrs

from paddock_tui.desk.edits.values import setting_value
from paddock_tui.desk.histories import Histories
from paddock_tui.desk.situations import assemble
from paddock_tui.desk.unsaved import stage
from paddock_tui.records.edits import Change, Step
from paddock_tui.records.paths import Ref
from paddock_tui.rules import Finding, Review, review
from paddock_tui.store.aside import aside
from paddock_tui.store.garage import GarageFiles


@attrs.frozen
class Preview:
    """What a step would change: its label, and the findings that would go and come."""

    label: str
    goes: tuple[Finding, ...]
    comes: tuple[Finding, ...]

    def words(self) -> str:
        """Say it in one line."""
        parts = [self.label]
        if self.goes:
            parts.append(f"{len(self.goes)} finding{'s' if len(self.goes) > 1 else ''} would go")
        if self.comes:
            parts.append("; ".join(f"would come: {one.severity}, {one.message}" for one in self.comes))
        return ", ".join(parts)


def mending(files: GarageFiles, finding: Finding, subject: Ref, refs: Mapping[str, Ref]) -> Step | None:
    """Make the one step that sets everything a remedy names; None where no value can mend the finding."""
    edits: dict[Ref, list[Change]] = {}
    labels: list[str] = []
    for put in finding.remedy.puts:
        about = subject if put.role in ("setup", "session", "profile") else refs.get(put.role)
        if about is None:
            continue
        step = setting_value(files, about, put.path, put.value)
        for change in step.changes:
            if isinstance(change, Change):
                edits.setdefault(about, []).append(change)
                labels.append(step.label)
    if not edits:
        return None
    changes = tuple(
        Change(about, tuple(edit for change in parts for edit in change.edits))
        for about, parts in edits.items()
    )
    return Step("; ".join(labels), changes)


def previewed(
    files: GarageFiles,
    now: dt.datetime,
    histories: Histories,
    step: Step,
    subject: Ref,
    before: Review | None,
) -> Preview:
    """Return what a step would do to a review, made of the files set aside; `before` where it is at hand."""
    tried, beside = aside(files), histories.aside()
    if before is None:
        before = review(assemble(tried, subject, now, histories=beside).situation)
    stage(tried, step)
    return compared(step.label, before, review(assemble(tried, subject, now, histories=beside).situation))


def compared(label: str, before: Review, after: Review) -> Preview:
    """Return what is found before and not after, and the other way round."""
    old = {(one.rule, one.subject, one.severity): one for one in before.findings}
    new = {(one.rule, one.subject, one.severity): one for one in after.findings}
    goes = tuple(one for key, one in old.items() if key not in new)
    comes = tuple(one for key, one in new.items() if key not in old)
    return Preview(label, goes, comes)

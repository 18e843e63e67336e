"""A page as others may read it: of findings about a person only whom they are about and how severe."""

import attrs

from paddock_tui.pages.rows import Page, Row
from paddock_tui.rules.personal import impersonal_finding


def without_persons(page: Page) -> Page:
    """Return a page whose findings tell nothing of anybody's health or of what happened."""
    return attrs.evolve(page, findings=tuple(_impersonal(row) for row in page.findings))


def _impersonal(row: Row) -> Row:
    """Return the row of a finding without its words, and without the place that would tell the same."""
    rule, _, subject = row.key.partition("/")
    said = impersonal_finding(rule, subject, row.path, row.severity)
    return attrs.evolve(row, value=said, aside="", more=(), short="", ref=None, path=()) if said else row

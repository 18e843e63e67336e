"""The page of a day as it was made last: what stands in it takes a while to find."""

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.day.minute import Minute
from paddock_tui.pages.rows import Page
from paddock_tui.records.paths import Ref


@attrs.define
class DayMemory:
    """The page of a day, kept for its minute and until the garage changes."""

    _minute: Minute = attrs.field(factory=Minute)
    _of: Ref | None = None
    _page: Page | None = None

    def page(self, desk: Desk, wanted: Ref | None) -> Page:
        """Return the page of a day, made anew only where something may read otherwise."""
        if self._minute.is_over(desk) or self._page is None or self._of != wanted:
            self._page, self._of = self.made(desk, wanted), wanted
        return self._page

    def made(self, desk: Desk, wanted: Ref | None) -> Page:
        """Make the page."""
        raise NotImplementedError

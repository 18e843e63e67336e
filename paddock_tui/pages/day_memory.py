"""The page of a day as it was made last: what stands in it takes a while to find."""

import attrs

from paddock_tui.desk import Desk
from paddock_tui.desk.answers import MANY_UNREAD, Reading
from paddock_tui.desk.day.minute import Minute
from paddock_tui.desk.looking import LooksAt
from paddock_tui.pages.rows import Page
from paddock_tui.records.paths import Ref


@attrs.define
class DayMemory:
    """The page of a day, kept for its minute and until the garage changes.

    Where many sessions are to be read for it, it is made in a thread of its own.
    """

    _minute: Minute = attrs.field(factory=Minute)
    _of: Ref | None = None
    _page: Page | None = None
    _awaited: bool = False

    def page(self, desk: Desk, wanted: Ref | None) -> Page:
        """Return the page of a day, made anew only where something may read otherwise."""
        if self._minute.is_over(desk) or self._page is None or self._of != wanted or self._awaited:
            found = self._asked(desk, wanted)
            self._awaited = isinstance(found, Reading)
            self._page, self._of = (
                found if isinstance(found, Page) else self.awaited(desk, wanted, found),
                wanted,
            )
        return self._page

    def _asked(self, desk: Desk, wanted: Ref | None) -> Page | Reading:
        unread = sum(desk.histories.unread(desk.files, one) for one in self.rests_on(desk, wanted))
        if unread <= MANY_UNREAD and not self._awaited:
            return self.made(desk, wanted)
        minute = desk.now().replace(second=0, microsecond=0)
        asked = (type(self).__name__, wanted)
        return desk.answers.of(asked, unread, lambda looks: self.made(looks, wanted), minute)

    def made(self, desk: LooksAt, wanted: Ref | None) -> Page:
        """Make the page."""
        raise NotImplementedError

    def awaited(self, desk: LooksAt, wanted: Ref | None, read: Reading) -> Page:
        """Make the page while sessions are read for it: without what rests on them."""
        raise NotImplementedError

    def rests_on(self, desk: LooksAt, wanted: Ref | None) -> tuple[Ref, ...]:
        """List the sessions that the page looks back from."""
        raise NotImplementedError

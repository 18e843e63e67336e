"""Which folded sections of which page were opened: by enter for the run, by tab while the cursor is there."""

from paddock_tui.pages.folding import folded, hidden_in
from paddock_tui.pages.rows import FOLD, Page, Row


class OpenedSections:
    """Remembers them by the place of a page and the key of a section."""

    def __init__(self) -> None:
        self._opened: dict[tuple[str, str], bool] = {}
        self._peeked: tuple[str, str] | None = None

    def shown(self, page: Page) -> Page:
        """Return a page as it shows."""
        return folded(page, self._of(page))

    def open_for(self, page: Page, identity: tuple[str, ...]) -> bool:
        """Open the section that hides a row; whether there was one to open."""
        closed = [key for key in hidden_in(page, identity) if not self._of(page).get(key)]
        self._opened |= {(page.place, key): True for key in closed}
        return bool(closed)

    def toggle(self, page: Page, row: Row) -> None:
        """Open the section of a heading, or fold it again."""
        at = page.place, key_of_heading(row)
        self._opened[at] = not self._of(page).get(at[1], False)
        if self._peeked == at:
            self._peeked = None

    def peek(self, page: Page, row: Row | None) -> bool:
        """Open the section that tab came to, and fold what it opened before; whether anything changed."""
        key = key_of_heading(row) if row is not None and row.kind == FOLD else None
        before = self._peeked
        self._peeked = (page.place, key) if key and not self._opened.get((page.place, key)) else None
        return self._peeked != before

    def _of(self, page: Page) -> dict[str, bool]:
        opened = {key: is_open for (place, key), is_open in self._opened.items() if place == page.place}
        peeked = self._peeked
        return opened | ({peeked[1]: True} if peeked and peeked[0] == page.place else {})


def key_of_heading(row: Row) -> str:
    """Return the key of the section that a heading is of."""
    return row.key.removeprefix(f"{FOLD} ")

"""Whether what was made of a garage stands: for its minute, and until something changes."""

import datetime as dt

import attrs

from paddock_tui.desk.desk import Desk


@attrs.define
class Minute:
    """The minute in which something was made, and the garage's generation by then."""

    _of: tuple[dt.datetime, int] | None = None

    def is_over(self, desk: Desk) -> bool:
        """Return whether another minute began, or the garage changed, since the last time; asked once."""
        of = (desk.now().replace(second=0, microsecond=0), desk.files.generation)
        over, self._of = of != self._of, of
        return over

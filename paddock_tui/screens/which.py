"""Which of several sessions is meant: asked where two bikes are out, or go out next."""

from collections.abc import Callable

from paddock_tui.pages.headings import heading_of
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question


def ask_which(host: Host, words: str, among: tuple[Ref, ...], do: Callable[[Ref], None]) -> None:
    """Ask for the number of a session; enter alone takes the first, which is the one looked at."""
    looked_at = [one for one in among if one == host.place.subject]
    refs = (*looked_at, *(one for one in among if one not in looked_at))
    said = tuple(f"{number} {heading_of(host.desk, one)}" for number, one in enumerate(refs, 1))

    def answered(text: str) -> str:
        typed = text.strip() or "1"
        if not typed.isdecimal() or not 0 < int(typed) <= len(refs):
            return f"a number from 1 to {len(refs)}"
        do(refs[int(typed) - 1])
        return ""

    host.ask(Question(f"{words}? 1 to {len(refs)}", answered, declined="nothing was stamped", said=said))

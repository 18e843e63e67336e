"""The ids of records, as their files are named, and of parts of records."""

import re
import unicodedata

PATTERN = r"[a-z0-9]+(?:[._-][a-z0-9]+)*"
LONGEST = 80

_ID = re.compile(r"[a-z0-9]++(?:[._-][a-z0-9]++)*+")
"""The same, and never going back: thousands of names are looked at in each run."""


def is_id(text: str) -> bool:
    """Return whether a text can be the id of a record or of a part of one: lower case, digits, hyphens."""
    return len(text) <= LONGEST and _ID.fullmatch(text) is not None


def id_of(name: str) -> str:
    """Make an id of a name: lower case without accents, everything that is no letter or digit a hyphen."""
    folded = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", name).casefold())
    plain = folded.encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")

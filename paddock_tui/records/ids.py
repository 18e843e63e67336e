"""The ids of records, as their files are named, and of parts of records."""

import re
import unicodedata
from collections.abc import Sequence

PATTERN = r"[a-z0-9]+(?:[._-][a-z0-9]+)*"
LONGEST = 80

_ID = re.compile(r"[a-z0-9]++(?:[._-][a-z0-9]++)*+")
"""The same, and never going back."""

_BETWEEN = b"._-"
_ALLOWED = b"abcdefghijklmnopqrstuvwxyz0123456789-"
_ALIKE = bytes.maketrans(_BETWEEN + b"/", b"----")


def is_id(text: str) -> bool:
    """Return whether a text can be the id of a record or of a part of one: lower case, digits, hyphens."""
    return len(text) <= LONGEST and _ID.fullmatch(text) is not None


def are_ids(texts: Sequence[str]) -> bool:
    """Return whether each of many texts can be an id, as `is_id` says of one: of thousands, all at once."""
    if not texts:
        return True
    joined = "/".join(texts)
    if max(map(len, texts)) > LONGEST or not joined.isascii() or joined.count("/") != len(texts) - 1:
        return False
    between = joined.encode().translate(_ALIKE)
    # What stands between letters is one alone, and never at an end.
    return not between.translate(None, _ALLOWED) and b"--" not in b"-%s-" % between


def id_of(name: str) -> str:
    """Make an id of a name: lower case without accents, everything that is no letter or digit a hyphen."""
    folded = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", name).casefold())
    plain = folded.encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")

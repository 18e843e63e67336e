"""What to do about a line that the TOML parser refuses: the slips that people make by hand."""

import re

_SLIPS = (
    (r"^(<{7}|={7}|>{7}|\|{7})", "a merge was left unfinished: keep one side and delete the marks"),
    (r"[“”„‟‘’]", "use straight quotes"),
    (r"[\x00-\x08\x0b-\x1f\x7f]", "delete the control character"),
    (r"=\s*[-+]?\d+,\d", "write a point, not a comma"),
    (r"=\s*[-+]?\d[\d.]*\s*[A-Za-z%°]", 'put a value with a unit in quotes: "2.10 bar"'),
    (r"=\s*(#|$)", "put a value behind the equals sign, or delete the line"),
    (r"=\s*[A-Za-z]", "put words in quotes"),
)


def hint(message: str, line: str) -> str:
    """Return the fix for a refused line, given the parser's message; empty where none is known."""
    if "Cannot overwrite" in message or "Cannot declare" in message or "already" in message:
        return "this key or table stands twice: keep one of them"
    for pattern, mend in _SLIPS:
        if re.search(pattern, line.rstrip("\r\n")):
            return mend
    return ""

"""Numbers as riders and sheets write them: commas, fractions, thousands. Nothing is evaluated.

A comma is a decimal one, as a point is, but for a comma in front of exactly three digits: "1,250" is one and
a quarter to one reader and twelve hundred and fifty to another, so that both are given and the caller asks,
or knows which can be. Fractions are taken where they come out exactly: halves, quarters, eighths and so on.
"""

import re
from decimal import Decimal

import attrs

MOST_DIGITS = 12

_VULGAR = {
    "½": "0.5",
    "¼": "0.25",
    "¾": "0.75",
    "⅛": "0.125",
    "⅜": "0.375",
    "⅝": "0.625",
    "⅞": "0.875",
    "⅕": "0.2",
    "⅖": "0.4",
    "⅗": "0.6",
    "⅘": "0.8",
}
_ENDLESS = {"⅓": (1, 3), "⅔": (2, 3), "⅙": (1, 6), "⅚": (5, 6)}
_ENDLESS_WHY = "a fraction that does not come out"
# Texts, which `re` compiles when the first number is typed: most commands read none.
_SIGN = r"(?P<sign>[+−-]?)\s*"
_GROUPED = (
    _SIGN + r"(?P<groups>[1-9][0-9]{0,2}(?:[,'’  \u00a0\u202f][0-9]{3})+)(?P<part>\.[0-9]+)?(?![0-9.,])"
)
_POINTS = _SIGN + r"(?P<groups>[1-9][0-9]{0,2}(?:\.[0-9]{3})+)(?P<part>,[0-9]+)(?![0-9.,])"
_VULGAR_ONE = _SIGN + rf"(?P<whole>[0-9]*)\s*(?P<vulgar>[{''.join((*_VULGAR, *_ENDLESS))}])"
_FRACTION = (
    _SIGN + r"(?:(?P<whole>[0-9]+)[\s-]+)?(?P<over>[0-9]{1,3})\s*[/⁄]\s*(?P<under>[0-9]{1,3})(?![0-9/.,])"
)
_PLAIN = _SIGN + r"(?P<whole>[0-9]*)(?:[.,](?P<part>[0-9]*))?"


@attrs.frozen
class Numeral:
    """A number in plain digits at the start of a text, and what stands behind it.

    `or_else` is the other number that the same signs may stand for, None where there is none: thousands
    where `number` takes their comma for a decimal one. `why` says what keeps it from being one number.
    """

    number: str
    rest: str
    or_else: str | None = None
    why: str = ""


def take_number(text: str) -> Numeral | None:
    """Take the number off the start of a text; None where it does not start with one."""
    for attempt in (_grouped, _fraction, _plain):
        found = attempt(text)
        if found is not None:
            return found
    return None


def _grouped(text: str) -> Numeral | None:
    """Take a number with a sign between its thousands."""
    match = re.match(_GROUPED, text) or re.match(_POINTS, text)
    if match is None:
        return None
    groups, part = match["groups"], (match["part"] or "").replace(",", ".")
    rest = text[match.end() :].strip()
    whole = _signed(match, f"{re.sub('[^0-9]', '', groups)}{part}")
    if groups.count(",") == 1 and len(re.findall("[^0-9]", groups)) == 1 and not part:
        return Numeral(
            _signed(match, groups.replace(",", ".")), rest, whole, "a comma that may part thousands"
        )
    return Numeral(whole, rest, None, "signs between the thousands")


def _fraction(text: str) -> Numeral | None:
    """Take a number that is, or ends in, a fraction."""
    vulgar = re.match(_VULGAR_ONE, text)
    if vulgar is not None:
        whole, rest = Decimal(vulgar["whole"] or 0), text[vulgar.end() :].strip()
        if vulgar["vulgar"] in _ENDLESS:
            top, bottom = _ENDLESS[vulgar["vulgar"]]
            near = round(whole + Decimal(top) / Decimal(bottom), 3)
            return Numeral(_signed(vulgar, f"{near:f}"), rest, None, _ENDLESS_WHY)
        return Numeral(_signed(vulgar, f"{whole + Decimal(_VULGAR[vulgar['vulgar']]):f}"), rest)
    match = re.match(_FRACTION, text)
    if match is None or int(match["under"]) == 0:
        return None
    over, under = Decimal(match["over"]), Decimal(match["under"])
    share = over / under
    number = Decimal(match["whole"] or 0) + share
    rest = text[match.end() :].strip()
    if match["whole"] and over >= under:
        return Numeral(_signed(match, f"{number:f}"), rest, None, "a fraction that is more than one")
    if share * under != over or -int(share.normalize().as_tuple().exponent) > 6:
        return Numeral(_signed(match, f"{round(number, 3):f}"), rest, None, _ENDLESS_WHY)
    return Numeral(_signed(match, f"{number.normalize():f}"), rest)


def _plain(text: str) -> Numeral | None:
    """Take digits with a decimal comma or point, or none."""
    match = re.match(_PLAIN, text)
    if match is None or not (match["whole"] or match["part"]):
        return None
    part = f".{match['part']}" if match["part"] else ""
    return Numeral(_signed(match, f"{match['whole'] or '0'}{part}"), text[match.end() :].strip())


def _signed(match: re.Match[str], number: str) -> str:
    return number if match["sign"] in {"", "+"} else f"-{number}"

"""Money: an exact amount, in the garage's currency unless it names another. Never a float."""

import re
from collections.abc import Iterable
from decimal import Decimal

import attrs

from paddock_tui.records.errors import InputError
from paddock_tui.records.shapes.base import JsonSchema, Shape, found_words

_WHOLE, _CURRENCY = r"\d{1,9}", "[A-Z]{3}"
_TYPED = re.compile(rf"({_WHOLE})(?:[.,](\d+))?\s*([A-Za-z]{{3}})?")


@attrs.frozen
class Money:
    """An amount with two decimals; `currency` is empty where it is the garage's own."""

    amount: Decimal
    currency: str = ""

    def __str__(self) -> str:
        return f"{self.amount:f} {self.currency}".rstrip()


class TwoCurrencies(ValueError):
    """A sum over more than one currency: it names them, and is not made."""

    def __init__(self, found: Iterable[str]) -> None:
        self.currencies = tuple(sorted(found))
        super().__init__(f"no sum: {' and '.join(self.currencies)} are not changed into each other")


def total(amounts: Iterable[Money], own: str = "") -> Money | None:
    """Add amounts up exactly, those without a currency in the garage's `own`; None where there is none.

    Raises TwoCurrencies.
    """
    sums: dict[str, Decimal] = {}
    for one in amounts:
        named = one.currency or own
        sums[named] = sums.get(named, Decimal(0)) + one.amount
    if len(sums) > 1:
        raise TwoCurrencies(name or "the garage's own" for name in sums)
    return next((Money(amount, name) for name, amount in sums.items()), None)


class MoneyAmount(Shape[Money]):
    """An amount of money: digits with a point or a comma, and three letters where it is another currency."""

    expected = "an amount of money, e.g. 85.50 or 85.50 EUR"

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": rf"^\s*{_WHOLE}([.,]\d{{1,2}})?\s*([A-Za-z]{{3}})?\s*$"}

    def load(self, raw: object) -> Money | InputError:
        if isinstance(raw, bool) or not isinstance(raw, str):
            plain = isinstance(raw, int | float) and not isinstance(raw, bool)
            return self.wrong(raw, f'write it as text: "{found_words(raw)}"' if plain else "")
        return self.read(raw)

    def read(self, text: str) -> Money | InputError:
        found = _TYPED.fullmatch(text.strip())
        if found is None or not text.isascii():
            return self.wrong(text)
        whole, cents, currency = found[1], found[2] or "", (found[3] or "").upper()
        if len(cents) > 2:
            return self.wrong(text, f"write {whole}{cents}, or {whole}.{cents[:2]}")
        return Money(Decimal(f"{whole}.{cents:0<2}"), currency)

    def dump(self, value: Money) -> str:
        return str(value)

    def example(self) -> Money:
        return Money(Decimal("85.50"))


class Currency(Shape[str]):
    """The three letters of a currency, as ISO 4217 writes them."""

    expected = "the three letters of a currency, e.g. EUR"

    def schema(self) -> JsonSchema:
        return {"type": "string", "pattern": f"^{_CURRENCY}$"}

    def load(self, raw: object) -> str | InputError:
        if not isinstance(raw, str) or re.fullmatch(_CURRENCY, raw) is None:
            return self.wrong(raw, "write it in capitals" if isinstance(raw, str) else "")
        return raw

    def read(self, text: str) -> str | InputError:
        return self.load(text.strip().upper())

    def dump(self, value: str) -> str:
        return value

    def example(self) -> str:
        return "EUR"

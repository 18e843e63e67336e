"""The set-up card: one page with all that a rider or technician sets, for the tank or to be sent."""

from paddock_tui.pages.card.content import Card, card_as_dict, card_of
from paddock_tui.pages.card.html import card_html
from paddock_tui.pages.card.text import card_lines

__all__ = ["Card", "card_as_dict", "card_html", "card_lines", "card_of"]

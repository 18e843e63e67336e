"""The set-up card as one HTML file: no scripts, nothing from elsewhere, black on white, one side of paper."""

from collections.abc import Iterator
from html import escape

from paddock_tui.pages.card.content import Block, Card, CardLine, for_reading
from paddock_tui.pages.card.pictures import bar_svg, chart_svg, lanes_svg
from paddock_tui.pages.pictures.readings import LEGEND as OF_PRESSURES

_STYLE = """
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 148mm; padding: 4mm; background: #fff; color: #000;
  font: 8.5pt/1.25 "DejaVu Sans", Verdana, Arial, sans-serif; }
h1 { font-size: 1.2em; margin: 0 0 1mm; }
h2 { font-size: 1em; margin: 1.2mm 0 .4mm; border-bottom: .3mm solid #000; }
.verdict { border: .5mm solid #000; padding: .6mm 1.5mm; margin: 0 0 1mm; }
.verdict strong { background: #000; color: #fff; padding: 0 1.5mm; }
.verdict ul { margin: .5mm 0 0; padding-left: 4mm; }
.blocks { columns: 2; column-gap: 4mm; }
h2 { break-after: avoid; }
tr { break-inside: avoid; }
table { width: 100%; border-collapse: collapse; }
th { text-align: left; font-weight: normal; padding: 0 1mm 0 0; vertical-align: top; white-space: nowrap; }
td { text-align: right; font-weight: bold; padding: 0; vertical-align: top; }
td small, .base, .caution, p { font-weight: normal; }
td span { font-weight: normal; }
td small { display: block; }
h2 small { font-weight: normal; }
svg { display: block; width: 100%; }
td svg { margin: .3mm 0 .2mm; height: 3.8mm; }
.pictures { display: flex; gap: 4mm; }
.pictures figure { flex: 1; margin: 1mm 0 0; }
.pictures svg { height: 22mm; }
figcaption, .base, .caution { font-size: .9em; margin: .6mm 0; }
.notes { border: .3mm solid #000; height: 16mm; margin: 1mm 0; padding: .5mm 1mm; }
@page { margin: 6mm; }
@media print {
  /* Of the width of the paper, so that any paper takes it on one side; what is left goes to pictures. */
  body { padding: 0; max-width: none; font-size: SIZEvw; height: 99vh; }
  body { display: flex; flex-direction: column; }
  .pictures { flex: 3 1 12vw; min-height: 12vw; max-height: 26vw; }
  .pictures figure { display: flex; flex-direction: column; min-height: 0; }
  .pictures svg { flex: 1 1 0; min-height: 0; }
  td svg { height: 2.9vw; }
  .notes { flex: 1 1 9vw; min-height: 9vw; max-height: 40vw; }
}
"""

_SIZE = 1.7
"""Size of the letters in hundredths of the width of the paper, where a card is not too long for it."""

_PAGE = 127.0
"""How high the shortest paper is inside its margins (letter), in hundredths of its width."""

_LINE = 1.25
"""How high a line is, in sizes of its letters."""


def card_html(card: Card) -> str:
    """Write the card as a whole HTML document."""
    return "\n".join(_document(for_reading(card))) + "\n"


def _document(card: Card) -> Iterator[str]:
    yield '<!doctype html>\n<html lang="en"><head><meta charset="utf-8">'
    yield '<meta name="viewport" content="width=device-width, initial-scale=1">'
    yield f"<title>set-up card · {escape(card.heading)}</title>"
    yield f"<style>{_STYLE.replace('SIZE', f'{_size(card):.2f}')}</style></head><body>"
    yield f"<h1>{escape(card.heading)}</h1>"
    verdict = f"<strong>{escape(card.verdict)}</strong> " if card.verdict else ""
    said = "".join(f"<li>{escape(one)}</li>" for one in card.findings)
    yield f'<div class="verdict">{verdict}{escape(card.as_of)}{f"<ul>{said}</ul>" if said else ""}</div>'
    if card.base:
        yield f'<p class="base">* differs from {escape(card.base)}</p>'
    yield '<div class="blocks">'
    for block in card.blocks:
        yield from _block(block)
    yield "</div>"
    yield from _pictures(card)
    yield '<div class="notes">notes</div>'
    yield f'<p class="caution">{escape(card.caution)}</p>'
    yield "</body></html>"


def _size(card: Card) -> float:
    """Return how large the letters of a print are, so that all lines find room on the shortest paper."""
    drawn = 12.0 if card.laps is not None or card.pressures is not None else 0.0
    room = (_PAGE - 9.0 - drawn) / _LINE
    heads = 8.0 + sum(1 + len(one) // 95 for one in card.findings)
    lines = heads + sum(map(_height, card.blocks)) / 2
    return min(_SIZE, room / lines)


def _height(block: Block) -> float:
    """Return about how many lines a block takes in its column."""
    own = sum(1.05 + 0.9 * (line.bar is not None) + 0.9 * bool(_beside(line)) for line in block.lines)
    return 2.0 + own + (1 + len(", ".join(block.unknown)) // 32 if block.unknown else 0)


def _block(block: Block) -> Iterator[str]:
    drawn = next((line.bar.ends for line in block.lines if line.bar and not line.bar.two_ended), None)
    said = [f"{drawn[0]} left, {drawn[1]} right"] if drawn else []
    said += [f"block now, {block.legend}"] if block.legend else []
    ends = f" <small>({escape('; '.join(said))})</small>" if said else ""
    yield f"<section><h2>{escape(block.title)}{ends}</h2><table>"
    for line in block.lines:
        yield f"<tr><th>{'* ' if line.was else ''}{escape(line.label)}</th><td>{_value(line)}</td></tr>"
    if block.unknown:
        yield f"<tr><th>not known</th><td>{escape(', '.join(block.unknown))}</td></tr>"
    yield "</table></section>"


def _value(line: CardLine) -> str:
    beside = _beside(line)
    drawn = bar_svg(line.bar) if line.bar is not None else ""
    reach = f" <span>{escape(line.range)}</span>" if line.range else ""
    return f"{escape(line.value)}{reach}{drawn}{f'<small>{escape(beside)}</small>' if beside else ''}"


def _beside(line: CardLine) -> str:
    ends = f"{line.bar.ends[0]} left, {line.bar.ends[1]} right" if line.bar and line.bar.two_ended else ""
    return "; ".join(filter(None, (f"was {line.was}" if line.was else "", ends, line.aside)))


def _pictures(card: Card) -> Iterator[str]:
    drawn = []
    if card.laps is not None:
        drawn.append((chart_svg(card.laps), card.laps_words))
    if card.pressures is not None:
        drawn.append((lanes_svg(card.pressures), f"tyre pressures, bar: {OF_PRESSURES}"))
    if drawn:
        yield '<div class="pictures">'
        for picture, words in drawn:
            yield f"<figure>{picture}<figcaption>{escape(words)}</figcaption></figure>"
        yield "</div>"

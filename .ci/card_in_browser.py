"""Print the set-up cards of a garage in a real browser: one side of each paper, every word there.

Where no browser is installed, says so and is content: the pure tests of the card have run by then.
"""

import html
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

_BROWSERS = ("chromium", "chromium-browser", "google-chrome")
_PAPERS = ("A5", "A4", "letter")
_FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--no-first-run",
)
_PAGE = re.compile(rb"/Type\s*/Page[^s]")


def _run(*command: str | Path, timeout: int = 120) -> str:
    done = subprocess.run(command, capture_output=True, text=True, timeout=timeout, check=True)
    return done.stdout


def _words(text: str) -> list[str]:
    """Return the words of the cells and headings of a card."""
    plain = re.sub(r"<(title|style|svg).*?</\1>", " ", text, flags=re.DOTALL)
    return html.unescape(re.sub(r"<[^>]+>", " ", plain)).split()


def complaints(browser: str, page: Path, paper: str, folder: Path) -> list[str]:
    """Print one card on one paper; list what is wrong with it."""
    text = page.read_text(encoding="utf-8")
    sized = folder / f"{page.stem}-{paper}.html"
    style = f"<style>@page {{ size: {paper} portrait; margin: 6mm }}</style></head>"
    sized.write_text(text.replace("</head>", style), encoding="utf-8")
    printed = sized.with_suffix(".pdf")
    profile = f"--user-data-dir={folder / 'profile'}"
    _run(browser, *_FLAGS, profile, "--no-pdf-header-footer", f"--print-to-pdf={printed}", sized.as_uri())
    pages = len(_PAGE.findall(printed.read_bytes()))
    found = [] if pages == 1 else [f"{page.stem} takes {pages} pages of {paper}"]
    reader = shutil.which("pdftotext")
    if reader is not None:
        there = "".join(_run(reader, "-layout", printed, "-").split())
        lost = [word for word in dict.fromkeys(_words(text)) if word not in there]
        found += [f"{page.stem} on {paper} has lost: {' '.join(lost[:8])}"] if lost else []
    return found


def main(program: Path, garage: Path, cards: list[str]) -> int:
    browser = next(filter(None, map(shutil.which, _BROWSERS)), None)
    if browser is None:
        print("not checked: no browser is installed here")
        return 0
    wrong: list[str] = []
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for card in cards:
            page = folder / f"{card.replace('/', '-')}.html"
            made = _run(program, "show", garage, f"card/{card}", "--format", "html")
            page.write_text(made, encoding="utf-8")
            for paper in _PAPERS:
                wrong += complaints(browser, page, paper, folder)
                print(f"{card} on {paper}: printed")
    if shutil.which("pdftotext") is None:
        print("text of the prints not checked: there is no pdftotext here")
    for one in wrong:
        print(one, file=sys.stderr)
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), Path(sys.argv[2]), sys.argv[3:]))

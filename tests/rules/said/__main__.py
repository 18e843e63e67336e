"""Write anew what the rules say: `python -m tests.rules.said`; then read what changed in the texts."""

import sys

from tests.rules.said import FOLDER, OF_LIMITS, limits_text, text_of, themes

wanted = {FOLDER / f"{theme}.txt": text_of(rules) for theme, rules in themes().items()}
wanted[OF_LIMITS] = limits_text()
for old in set(FOLDER.glob("*.txt")) - set(wanted):
    old.unlink()
changed = 0
for file, text in wanted.items():
    if not file.exists() or file.read_text(encoding="utf-8") != text:
        file.write_text(text, encoding="utf-8")
        changed += 1
sys.stdout.write(f"{len(wanted)} texts, {changed} changed\n")

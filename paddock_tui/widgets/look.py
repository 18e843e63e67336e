"""How the named styles of a page look: theme colours, and weight where colour is missing."""

STYLES: dict[str, str] = {
    "focus": "text-style: bold; color: $text-accent;",
    "heading": "text-style: bold;",
    "title": "text-style: bold;",
    "label": "",
    "value": "text-style: bold;",
    "range": "color: $text-muted;",
    "aside": "color: $text-muted;",
    "shut": "color: $text-muted;",
    "unknown": "color: $text-muted; text-style: italic;",
    "rule": "color: $text-muted;",
    "bar": "color: $text-muted;",
    "mark": "text-style: bold;",
    "hold": "text-style: bold reverse; color: $text-error;",
    "rail-hold": "text-style: bold; color: $text-error;",
    "rail-serious": "text-style: bold; color: $text-primary;",
    "rail-caution": "color: $text-warning;",
    "answer": "text-style: bold;",
    "serious": "text-style: bold; color: $text-primary;",
    "caution": "color: $text-warning;",
    "note": "",
    "trouble": "text-style: bold; color: $text-primary;",
    "edit": "text-style: underline;",
    "caret": "text-style: reverse;",
    "message": "",
    "hint": "color: $text-muted;",
    "verdict-hold": "text-style: bold reverse; color: $text-error;",
    "verdict-care": "text-style: bold; color: $text-warning;",
    "verdict-not-yet": "text-style: bold; color: $text-warning;",
    "verdict-no-findings": "text-style: bold; color: $text-success;",
}
"""Style rules of each name; a severity is a word first, and its weight shows without colour."""

CSS = "Board { width: 1fr; height: 1fr; background: $background; color: $foreground; }\n" + "\n".join(
    f"Board .board--{name} {{ {rules} }}" for name, rules in STYLES.items() if rules
)


QUIET = ("range", "aside", "shut", "rule", "bar", "hint")
"""What is dim where the colours are the terminal's own; in a theme of ours a colour tells it."""

CSS += "".join(f"\nBoard:ansi .board--{name} {{ text-style: dim; }}" for name in QUIET)

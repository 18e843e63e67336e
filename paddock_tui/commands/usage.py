"""What `--help` says of each command beside its arguments: what it is for, examples, exit statuses."""

DONE = "0 done; 3 not done, and why"
SAVED = "0 saved; 3 not saved, and why"
PRINTED = "0 printed; 3 it cannot be read"


class Usage:
    """What one command is for; its examples; its exit statuses besides 64 wrong usage and 70 an error."""

    def __init__(self, about: str, examples: tuple[str, ...], statuses: str = DONE) -> None:
        self.about, self.examples, self.statuses = about, examples, statuses

    def epilog(self) -> str:
        """Write what stands under the arguments."""
        shown = "\n".join(f"  paddock-tui {one}" for one in self.examples)
        return f"examples:\n{shown}\n\nexit status: {self.statuses}; 64 wrong usage; 70 an unexpected error"


USAGES: dict[str, Usage] = {
    "open": Usage(
        "Open the screens on a garage; the word open may be left out.",
        ("my_garage", "my_garage --at 2026-06-20T12:40"),
        "0 left; 3 left with something not saved; 128 and the number where a signal ended it",
    ),
    "show": Usage(
        "Print a garage, one record, or one page: change-log, modes, dash, brief, card,\n"
        "emergency, season. All pages by name: paddock-tui help commands.",
        ("show my_garage", "show my_garage bike/magpie --paths", "show my_garage card --format html"),
        PRINTED,
    ),
    "set": Usage(
        "Set values of one record, all of them or none; the paths are those of show --paths.",
        (
            "set my_garage 2026-06-20-4 setup.controls.traction=6 air=17",
            "set my_garage 2026-06-20-4 note=",
        ),
        SAVED,
    ),
    "enter": Usage(
        "Set values of a session in one typed line of short names, all of them or none.",
        (
            'enter my_garage "t6 sl5 hot 2.38 2.12"',
            'enter my_garage "wet 17 C" --preview',
            "enter my_garage --list",
        ),
        SAVED,
    ),
    "check": Usage(
        "Review a session, or everything: findings, what could not be assessed, what is to do.",
        ("check my_garage", "check my_garage --at 2026-06-20T13:12", "check my_garage --all --quiet"),
        "0 NO FINDINGS, 1 NOT YET or CARE, 2 HOLD, 3 it cannot be read; of --all 0 or 3",
    ),
    "accept": Usage(
        "Ride with a serious finding, and say why; a hold cannot be accepted.",
        ('accept my_garage little-traction-help-in-the-wet traction --reason "behind the instructor"',),
        SAVED,
    ),
    "slip": Usage(
        "Print the debrief on paper: one page, boxes as they are typed.", ("slip my_garage",), PRINTED
    ),
    "undo": Usage("Take the last step of any run back.", ("undo my_garage",), "0 done; 3 nothing to undo"),
    "redo": Usage("Do again what was taken back.", ("redo my_garage",), "0 done; 3 nothing to do again"),
    "schema": Usage("Print the form of the records as JSON Schema.", ("schema bike", "schema"), "0 printed"),
    "export": Usage(
        "Write the garage as tables, one fact a cell.",
        ("export my_garage --to tables --since 2026-01-01", "export my_garage --to lines --format jsonl"),
    ),
    "git": Usage(
        "One garage on many laptops: records are merged by fact.",
        ("git setup my_garage", "git take my_garage 2026-06-20-4 air ours"),
    ),
    "new": Usage(
        "Make a garage with checklists and templates; on a terminal go on with the guided start.",
        ("new my_garage",),
    ),
    "help": Usage(
        "Print a help topic, or what a word means; list the topics.",
        ("help", "help keys", "help hold"),
        "0 printed; 3 no such topic",
    ),
    "settings": Usage(
        "Say where your settings stand and what is in force.",
        ("settings", "settings --edit"),
        "0 all is in force; 3 some of it is refused, and why",
    ),
    "completion": Usage(
        "Print the script that completes commands and options in a shell.",
        (
            "completion bash > ~/.local/share/bash-completion/completions/paddock-tui",
            "completion zsh > ~/.zfunc/_paddock-tui",
            "completion fish > ~/.config/fish/completions/paddock-tui.fish",
        ),
        "0 printed",
    ),
    "doctor": Usage(
        "Test the terminal, the disk, the clock, git and permissions, and say what to fix; changes nothing.",
        ("doctor", "doctor my_garage"),
        "0 nothing to fix; 1 something could be better; 3 something does not work",
    ),
}
"""Every command."""

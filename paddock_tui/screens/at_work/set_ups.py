"""A whole set-up worked out: starting levels, and the wet package; previewed, then one step."""

import attrs

from paddock_tui.advice.starting_point import starting_point
from paddock_tui.advice.wet_package import wet_package
from paddock_tui.desk.edits.worked_out import offering
from paddock_tui.records.edits import Step
from paddock_tui.records.paths import Ref
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.text import printable


def offer_start(host: Host) -> None:
    """Offer the starting level of every aid as one step, with what it would change."""
    subject = host.place.subject
    if subject is None:
        return
    found = starting_point(host.desk.about(subject))
    if not found.puts:
        host.board.say(found.left[0] if found.left else "this bike has no aids to start with")
        return
    step = offering(host.desk.files, subject, found.puts)
    if isinstance(step, str):
        host.board.say(step)
        return
    _previewed(host, step, subject, found.left)


def _previewed(host: Host, step: Step, subject: Ref, left: tuple[str, ...] = ()) -> None:
    """Show what a step would do to values and findings; enter does it, escape leaves it."""
    words = host.desk.previewed(step, subject).words()
    said = (printable(words), *(printable(one) for one in left))

    def answered(_: str) -> str:
        host.attempt(step)
        return ""

    words = "enter sets them, escape leaves it"
    host.ask(Question(words, answered, declined="nothing was changed", said=said, confirms=True))


def offer_wet(host: Host) -> None:
    """Offer the wet package, or the way back to the dry, as one step, with what it would change."""
    subject = host.place.subject
    if subject is None:
        return
    found = wet_package(host.desk.about(subject))
    if isinstance(found, str):
        host.board.say(found)
        return
    step = offering(host.desk.files, subject, found.puts)
    if isinstance(step, str):
        host.board.say(step)
        return
    rest = tuple(f"do by hand: {one}" for one in found.not_set)
    _previewed(host, attrs.evolve(step, label=f"{found.name}: {step.label}"), subject, rest)

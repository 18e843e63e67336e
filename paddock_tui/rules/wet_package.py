"""Rules about the swap for the weather: a dry set-up in the wet, and a wet one left in on a dry track."""

from paddock_tui.facts.dry_again import dry_values
from paddock_tui.facts.wet_package import InTheDry, LeftWet, WetPackage
from paddock_tui.records.bike import Bike
from paddock_tui.records.edits import Plain
from paddock_tui.records.setup import SetUp
from paddock_tui.rules.aid_words import track
from paddock_tui.rules.core import AIDS, CAUTION, NOTE, RaisedFinding, Remedy, Result, SetValue, rule

SUBJECT = "wet-package"


@rule("dry-set-up-in-the-wet", CAUTION, when=("to_come",), at="setup:setup", rank=AIDS)
def dry_set_up_in_the_wet(wet_package: WetPackage, wet_ground: str, column: str, group: str) -> Result:
    """Values less wet than the package; dry damping kept on a wet track is a caution, for a novice a note.

    Damping counts only against this rider's last dry set-up on this bike; see facts/wet_package.py.
    """
    damping = wet_package.dry_damping or wet_package.untold
    serious = bool(damping) and column == "wet" and group != "novice"
    message, quoted = _message(wet_package, wet_ground)
    return RaisedFinding(
        message=message,
        quoted=quoted,
        why="Less grip loads the suspension less: damped as in the dry it is harsh and skips. Half a wet "
        "set-up is worse than all of it."
        if damping
        else "What was right for dry grip asks more of a wet tyre; all of it together is one change.",
        remedy=Remedy(_remedy(wet_package), puts_of(wet_package)),
        severity=CAUTION if serious else NOTE,
        subject=SUBJECT,
    )


@rule("wet-set-up-in-the-dry", NOTE, when=("to_come",), at="setup:setup.mode", rank=AIDS)
def wet_set_up_in_the_dry(left_wet: LeftWet, setup: SetUp, bike: Bike) -> Result:
    """A mode, map or damping for the wet that was left in on a dry track; a soft map by choice is none."""
    return RaisedFinding(
        message=f"Still set for the wet on a dry track: {left_wet.what[0]}.",
        quoted=left_wet.what[:1],
        why="Answers come later and softer than the rider expects; aids that step in early hide the rest.",
        remedy=Remedy(_way_back(left_wet.dry), dry_puts(left_wet.dry, setup, bike)),
        subject=SUBJECT,
    )


def puts_of(package: WetPackage) -> tuple[SetValue, ...]:
    """Return the values of the package as what is to be set."""
    return tuple(SetValue(one.path, one.new) for one in package.values)


def dry_puts(dry: InTheDry | None, setup: SetUp, bike: Bike) -> tuple[SetValue, ...]:
    """Return what the rider last had in the dry as what is to be set; nothing where that is not known."""
    values = dry_values(setup, bike, dry.setup) if dry is not None else ()
    return tuple(SetValue(one.path, _plain(one.new)) for one in values)


def _plain(value: object) -> Plain:
    if isinstance(value, float) and value == int(value):
        return int(value)
    return value if isinstance(value, str | int | float) else str(value)


def _message(package: WetPackage, surface: str) -> tuple[str, tuple[str, ...]]:
    """Return the message, and what it quotes from the records."""
    damping, count = package.dry_damping, len(package.values)
    if not damping and package.untold:
        named = ", ".join(package.untold[:2])
        more = _more(len(package.untold) - 2)
        return f"Damping may be as in the dry, not written down: {named}{more}.", (named,)
    if damping:
        first = f"{damping[0].label} {damping[0].stands}"
        return f"Dry damping for {track(surface)}: {first}{_more(count - 1)}.", (first,)
    names = ", ".join(one.label for one in package.values[:2])
    return f"Not fully set for the wet: {names}{_more(count - 2)}.", (names,)


def _more(count: int) -> str:
    return f" and {count} more" if count > 0 else ""


def _remedy(package: WetPackage) -> str:
    rest = "; ".join(package.not_set)
    if not package.values:
        return f"Count the damping and write it down. {rest[:1].upper()}{rest[1:]}. Then two easy laps."
    return f"The wet package, one step: {package}. Do by hand: {rest}. Then two easy laps."


def _way_back(dry: InTheDry | None) -> str:
    if dry is None:
        return "Choose the riding mode made for the dry, then go through aids and suspension as well."
    profile = f", or load profile {dry.profile}" if dry.profile else ""
    return f"Go back to what session {dry.id} had in the dry{profile}: mode, aids, suspension, pressures."

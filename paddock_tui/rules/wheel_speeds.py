"""Rules about what the aids compare: tyres and sprockets that are new to the bike."""

from paddock_tui.rules.core import AIDS, CAUTION, TYRES, RaisedFinding, Remedy, Result, rule
from paddock_tui.text import printable

_WHY = "The aids compare the speeds of both wheels: their levels may now act sooner or later than before."
_EASY = "Easy laps first, and find each level again; have the wheel-speed ratio learnt where the bike can."


@rule("tyre-sizes-new-to-the-aids", CAUTION, when=("to_come",), at="session:tyres", rank=AIDS)
def tyre_sizes_new_to_the_aids(other_sizes: str) -> Result:
    """Tyres of sizes that this bike has not run with."""
    return RaisedFinding(
        message="These tyre sizes are new to this bike: judge the aids again.",
        why=_WHY,
        remedy=Remedy(f"{_EASY} Measure the ride height: it moved too."),
        subject="tyres",
    )


@rule("wheels-new-to-the-bike", CAUTION, when=("to_come",), at="session:tyres", rank=TYRES)
def wheels_new_to_the_bike(other_wheels: str) -> Result:
    """Wheels that this bike has not been ridden on: discs, sensor rings and rolling circumference."""
    named = other_wheels.rpartition(", ")[0]
    return RaisedFinding(
        message=f"Wheels new to this bike: {printable(named)}.",
        quoted=(named,),
        why="Their discs, spacers and sensor rings may differ, and how far they roll is what speed, gearing "
        "and the aids go by.",
        remedy=Remedy(
            "Discs run free and the pads bite, ABS light off once rolling; measure the circumference of both "
            "with the rider on and enter it with this tyre set."
        ),
        subject="wheels",
    )


@rule("sprockets-new-to-the-aids", CAUTION, when=("to_come",), at="setup:setup.rear_sprocket", rank=AIDS)
def sprockets_new_to_the_aids(other_sprockets: str) -> Result:
    """Sprockets that this bike has not run with."""
    return RaisedFinding(
        message="These sprockets are new to this bike: judge the aids again.",
        why="Engine speed against wheel speed moved: wheelie, launch and engine braking act by it.",
        remedy=Remedy(_EASY),
        subject="sprockets",
    )

"""Every symptom: what it asks, and what is changed for each answer, in the bike's own clicks."""

from paddock_tui.advice.next_change import Kind
from paddock_tui.advice.next_change.table import SUSPENSION
from paddock_tui.advice.next_change.table_rest import LOOKS
from paddock_tui.records.session_parts import ANSWERS, SYMPTOMS
from tests.advice.next_change.cases import BEFORE, advised, felt, hot, sag, seen
from tests.every import every
from tests.rules.situations import Change, put, went_before

ADVANCED = put("rider", "group", "advanced")
WET = put("session", "surface", "wet")


DEEP_FRONT, DEEP_REAR = sag("front", 43.0), sag("rear", 43.0)

ROWS: list[tuple[str, str, tuple[Change, ...], Kind, str]] = [
    ("dives", "", (), Kind.CHANGE, "front compression 12 -> 10 clicks"),
    ("dives", "", (DEEP_FRONT,), Kind.CHANGE, "front preload 6 -> 14 turns"),
    ("harsh on single bumps", "", (), Kind.CHANGE, "front compression 12 -> 14 clicks"),
    ("harsh on a series", "", (), Kind.ASK, "Push that end down hard"),
    ("harsh on a series", "creeps", (), Kind.CHANGE, "front rebound 12 -> 14 clicks"),
    ("harsh on a series", "settles", (), Kind.SAME, "no packing"),
    ("vague", "overshoots", (), Kind.CHANGE, "front rebound 12 -> 11 clicks"),
    ("vague", "settles", (), Kind.SAME, "tyre pressure"),
    ("chatters", "overshoots", (), Kind.CHANGE, "front rebound 12 -> 11 clicks"),
    ("chatters", "creeps", (), Kind.CHANGE, "front rebound 12 -> 14 clicks"),
    ("chatters", "settles", (), Kind.SAME, "wheel balance"),
    ("tucks", "creeps", (), Kind.CHANGE, "front rebound 12 -> 14 clicks"),
    ("tucks", "settles", (), Kind.CHANGE, "front preload 6 -> 7 turns"),
    ("will not turn", "", (), Kind.CHANGE, "rear ride height 2 mm -> 4 mm (rear higher)"),
    (
        "will not turn",
        "",
        (put("session", "setup.adjusters.damper", 6),),
        Kind.CHANGE,
        "damper 6 -> 8 clicks",
    ),
    ("will not turn", "", (DEEP_REAR,), Kind.CHANGE, "rear preload 4 -> 8 turns"),
    (
        "will not turn",
        "",
        (put("bike", "rear.highest_clear", "3 mm"),),
        Kind.CHANGE,
        "fork protrusion 4 mm -> 6 mm (front lower)",
    ),
    ("twitchy", "", (), Kind.CHANGE, "fork protrusion 4 mm -> 2 mm (front higher)"),
    ("runs wide off the brake", "yes", (), Kind.CHANGE, "front rebound 12 -> 11 clicks"),
    ("runs wide off the brake", "no", (), Kind.SAME, "brake earlier"),
    ("runs wide on power", "", (DEEP_REAR,), Kind.CHANGE, "rear preload 4 -> 8 turns"),
    ("runs wide on power", "yes", (), Kind.CHANGE, "rear compression slow 12 -> 10 clicks"),
    ("runs wide on power", "no", (), Kind.SAME, "throttle up later"),
    ("wallows", "overshoots", (), Kind.CHANGE, "rear rebound 12 -> 11 clicks"),
    ("wallows", "settles", (), Kind.SAME, "sag and tyre pressure"),
    ("kicks", "settles", (), Kind.CHANGE, "rear rebound 12 -> 11 clicks"),
    ("kicks", "creeps", (), Kind.CHANGE, "rear rebound 12 -> 14 clicks"),
    ("hops", "creeps", (), Kind.CHANGE, "rear rebound 12 -> 14 clicks"),
    ("hops", "overshoots", (), Kind.SAME, "no packing"),
    ("skips on the brakes", "closed throttle", (), Kind.CHANGE, "engine braking 3 -> 4"),
    ("skips on the brakes", "early downshift", (), Kind.SAME, "Shift down later"),
    ("loose on entry", "", (WET,), Kind.CHANGE, "engine braking 3 -> 4"),
    ("slides on drive", "", (), Kind.CHANGE, "rear compression slow 12 -> 14 clicks"),
    ("traction cuts without slip", "", (), Kind.ASK, "another tyre size"),
    ("traction cuts without slip", "no", (), Kind.CHANGE, "traction control 6 -> 5"),
    ("traction cuts without slip", "yes", (), Kind.SAME, "Do not turn traction control down"),
    ("traction cuts without slip", "no", (WET,), Kind.SAME, "Do not turn traction control down"),
    ("wheelie cut kills drive", "yes", (), Kind.CHANGE, "wheelie control 4 -> 3"),
    ("wheelie cut kills drive", "no", (), Kind.SAME, "Body forward"),
    ("lever pulses", "bumps", (), Kind.SAME, "Squeeze earlier"),
    ("lever pulses", "smooth", (ADVANCED,), Kind.SAME, "Squeeze earlier"),
    ("bars wobble", "", (), Kind.ASK, "bearings"),
    ("bars wobble", "no", (), Kind.LOOK, "before riding on"),
    ("bars wobble", "yes", (), Kind.CHANGE, "damper 12 -> 11 clicks"),
    ("weaves", "no", (), Kind.LOOK, "before riding on"),
    ("weaves", "yes", (), Kind.CHANGE, "rear rebound 12 -> 11 clicks"),
    ("weaves", "yes", (put("session", "setup.adjusters.damper", 4),), Kind.CHANGE, "rear rebound 12 -> 11"),
    ("tyre goes off", "", (), Kind.ASK, "which end"),
    ("loose in the heat", "", (), Kind.CHANGE, "front rebound 12 -> 11 clicks"),
    (
        "loose in the heat",
        "",
        (hot("2.46 bar", "2.20 bar"),),
        Kind.CHANGE,
        "front start pressure 2.10 bar -> 2.05 bar",
    ),
    ("parts ground", "", (), Kind.CHANGE, "rear preload 4 -> 5 turns"),
    ("stands up on the brakes", "", (), Kind.SAME, "on its hot target"),
    (
        "stands up on the brakes",
        "",
        (hot("2.33 bar", "2.20 bar"),),
        Kind.CHANGE,
        "front start pressure 2.10 bar -> 2.20",
    ),
    ("stands up on the brakes", "", (hot("2.46 bar", "2.20 bar"),), Kind.SAME, "over its hot target already"),
    ("between gears", "more", (), Kind.CHANGE, "rear sprocket 43 -> 44"),
    ("between gears", "fewer", (), Kind.CHANGE, "rear sprocket 43 -> 42"),
    ("on the limiter", "", (), Kind.CHANGE, "rear sprocket 43 -> 42"),
    ("missed shifts", "no", (), Kind.SAME, "Let the lever go"),
    ("missed shifts", "yes", (), Kind.OWN, "lever's height"),
    ("no feel in the wet", "", (WET,), Kind.SAME, "wet package"),
    ("arms sore", "", (), Kind.SAME, "grip the tank"),
    ("no change felt", "", (), Kind.SAME, "it goes back to base"),
    ("clutch slips", "", (), Kind.MEND, "clutch"),
    ("engine cuts out", "", (), Kind.MEND, "engine"),
    ("throttle sticks", "", (), Kind.MEND, "throttle"),
    ("jumps out of gear", "", (), Kind.MEND, "out of gear"),
    ("brakes fade", "", (), Kind.MEND, "brakes fade"),
    ("front locks", "", (), Kind.LOOK, "front ABS back up"),
    ("rear locks", "", (), Kind.LOOK, "less engine braking"),
    ("pulls to one side", "", (), Kind.SAME, "a brake that drags"),
    ("vibrates", "", (), Kind.SAME, "wheel balance"),
    ("traction lamp with slip", "", (), Kind.SAME, "keep the level or more of it"),
]


@every(("symptom", "answer", "changes", "kind", "says"), ROWS)
def test_a_symptom_leads_to_one_change_or_none(
    symptom: str, answer: str, changes: tuple[Change, ...], kind: Kind, says: str
) -> None:
    found = advised(*changes, felt(symptom, answer)).proposal
    assert (found.kind, says.casefold() in found.text.casefold()) == (kind, True), found
    assert (found.move is not None) == (kind is Kind.CHANGE)
    if found.move is not None:
        assert found.expect
        assert found.watch
        assert len(found.move.puts) == len(found.move.about) >= 1


@every(
    ("look", "hot_pressures", "kind", "says"),
    [
        ("cold tear", ("2.40 bar", "2.28 bar"), Kind.CHANGE, "rear start pressure 1.90 bar -> 1.85 bar"),
        ("cold tear", ("2.40 bar", "2.20 bar"), Kind.SAME, "on its hot target"),
        ("cold tear", ("2.40 bar", "2.12 bar"), Kind.SAME, "under its hot target already"),
        ("hot tear", ("2.40 bar", "2.12 bar"), Kind.CHANGE, "rear start pressure 1.90 bar -> 2.00 bar"),
        ("hot tear", ("2.40 bar", "2.28 bar"), Kind.SAME, "over its hot target already"),
        ("step at the grooves", ("2.40 bar", "2.20 bar"), Kind.ASK, "how does it come back"),
        ("cord", ("2.40 bar", "2.20 bar"), Kind.MEND, "cord"),
    ],
)
def test_what_a_tyre_looks_like_moves_pressure_only_toward_the_hot_target(
    look: str, hot_pressures: tuple[str, str], kind: Kind, says: str
) -> None:
    found = advised(hot(*hot_pressures), seen("rear", look)).proposal
    assert (found.kind, says in found.text) == (kind, True), found


@every(
    ("end", "hot_pressures", "says"),
    [
        ("rear", ("2.40 bar", "2.20 bar"), "rear compression slow 12 -> 13 clicks"),
        ("rear", ("2.40 bar", "2.12 bar"), "rear start pressure 1.90 bar -> 2.00 bar"),
        ("front", ("2.40 bar", "2.12 bar"), "front compression 12 -> 13 clicks"),
    ],
)
@every("word", ["tyre goes off", "fades"])
def test_a_tyre_that_goes_off_is_answered_at_the_end_that_was_named(
    word: str, end: str, hot_pressures: tuple[str, str], says: str
) -> None:
    found = advised(hot(*hot_pressures), felt(word, end=end)).proposal
    assert (found.kind, says in found.text) == (Kind.CHANGE, True), found


def test_every_symptom_has_a_cure_or_is_mended_first() -> None:
    assert set(SYMPTOMS) - set(SUSPENSION) == {
        "brakes fade",
        "throttle sticks",
        "clutch slips",
        "jumps out of gear",
        "engine cuts out",
    }
    assert set(SUSPENSION) < set(SYMPTOMS)
    assert {symptom for symptom, *_ in ROWS} == set(SYMPTOMS)


def test_every_answer_can_be_kept_and_is_used() -> None:
    cures = [*SUSPENSION.values(), *LOOKS.values()]
    asked = {word for cure in cures if cure.question for word, _ in cure.question.answers}
    assert asked == set(ANSWERS)
    for cure in cures:
        answers = {word for word, _ in cure.question.answers} if cure.question else set()
        assert all(set(option.needs) <= answers for option in cure.options)


def test_abs_is_lowered_one_step_only_for_a_quick_rider_who_felt_it_twice_in_the_dry() -> None:
    twice = went_before(BEFORE, BEFORE, {**BEFORE, "symptoms.1": {"what": "lever pulses"}})
    assert advised(felt("lever pulses", "smooth"), history=twice).proposal.move is None
    found = advised(felt("lever pulses", "smooth"), ADVANCED, history=twice).proposal
    assert found.text == "front ABS 4 -> 3 (less help)"
    assert advised(felt("lever pulses", "smooth"), ADVANCED, WET, history=twice).proposal.move is None


def test_both_legs_are_turned_alike() -> None:
    legs = {
        f"front-rebound-{leg}": {
            "end": "front",
            "what": "rebound",
            "leg": leg,
            "unit": "click",
            "range": [0, 20],
            "counted_from": "open",
        }
        for leg in ("left", "right")
    }
    found = advised(
        felt("vague", "overshoots"),
        put("bike", "adjusters", legs),
        put("session", "setup.adjusters", {"front-rebound-left": 8, "front-rebound-right": 9}),
    ).proposal
    assert found.text == (
        "front rebound left 8 -> 9 clicks (firmer); front rebound right 9 -> 10 clicks (firmer)"
    )


def test_a_step_at_the_grooves_asks_and_its_answer_is_kept_with_the_look() -> None:
    asked = advised(seen("rear", "step at the grooves")).proposal
    assert (asked.kind, asked.answer_at) == (Kind.ASK, ("look", "rear", "answer"))
    answered = put("session", "look.rear", {"seen": ["step at the grooves"], "answer": "overshoots"})
    assert advised(answered).proposal.text == "rear rebound 12 -> 11 clicks (firmer)"


def test_a_firm_damper_is_not_made_firmer() -> None:
    firm = put("session", "setup.adjusters.damper", 5)
    found = advised(firm, felt("bars wobble", "yes")).proposal
    assert (found.kind, found.move) == (Kind.LOOK, None)

"""Lines that set nothing: the pieces pointed at with what is said of each, and the pieces asked about."""

from paddock_tui.records.paths import Ref
from tests.entry.contexts import BADGER, MAGPIE, OTTER, PROFILE, RIDER

Wrong = list[tuple[str, str]]

ERRORS: list[tuple[Ref, str, Wrong]] = [
    (MAGPIE, "incident", [("incident", "incident waits for one of its fixed words")]),
    (MAGPIE, "felt wobbly t4", [("felt", "felt waits for one of its fixed words")]),
    (MAGPIE, "work gravel", [("work", "work waits for one of its fixed words")]),
    (MAGPIE, "incident leak gravel", [("gravel", 'there is no short name "gravel"')]),
    (MAGPIE, "t", [("t", "traction control waits for its value")]),
    (MAGPIE, "t w3", [("t", "traction control waits for its value")]),
    (MAGPIE, "t=", [("t", "traction control waits for its value")]),
    (MAGPIE, "t x4 w3", [("x4", '"x4": expected a level from 0 to 10, or off')]),
    (MAGPIE, "t 4.5", [("4.5", '"4.5": expected a level from 0 to 10, or off')]),
    (MAGPIE, "t4w3", [("4w3", '"4w3": expected a level from 0 to 10, or off')]),
    (MAGPIE, "t3 t4", [("t4", "a second value for traction control")]),
    (MAGPIE, "t4 5", [("5", "5: a number that no short name asks for")]),
    (MAGPIE, "5", [("5", "5: a number that no short name asks for")]),
    (MAGPIE, "+1", [("+1", "+1: a number that no short name asks for")]),
    (MAGPIE, "hot 2.3 2.1 1.9", [("1.9", "1.9: a number that no short name asks for")]),
    (
        MAGPIE,
        "- 2.05",
        [
            ("-", "- leaves out one of a pair, and no pair stands before it"),
            ("2.05", "2.05: a number that no short name asks for"),
        ],
    ),
    (MAGPIE, "t -", [("-", "- leaves out one of a pair, and traction control is not one")]),
    (
        MAGPIE,
        "= 4",
        [("=", "= stands behind a short name"), ("4", "4: a number that no short name asks for")],
    ),
    (
        MAGPIE,
        "t==4",
        [("=", "= is no value of traction control"), ("4", "4: a number that no short name asks for")],
    ),
    (MAGPIE, '"rear slid"', [('"rear slid"', "a text that no short name asks for")]),
    (MAGPIE, 'note "a\\x" t4', [('note "a\\x"', "an escape in the quotes cannot be read")]),
    (MAGPIE, "zzz 4", [("zzz", 'there is no short name "zzz"')]),
    (MAGPIE, "hott 2.3 2.1", [("hott", 'there is no short name "hott"')]),
    (MAGPIE, "gentle", [("gentle", '"gentle" needs its short name')]),
    (MAGPIE, "wading", [("wading", '"wading" needs its short name')]),
    (
        MAGPIE,
        "mode wet",
        [("wet", '"wet": expected one of the bike\'s riding modes: homing, soaring, wading, wild')],
    ),
    (MAGPIE, "t+0.5", [("+0.5", "traction control goes in whole steps, at most 999")]),
    (MAGPIE, "w+1", [("w+1", "wheelie control is not known, so it cannot be stepped")]),
    (MAGPIE, "fa+1", [("fa+1", "front ABS is at its end: 4")]),
    (MAGPIE, "parked 2575", [("2575", '"2575": expected a time of day, e.g. 10:40')]),
    (MAGPIE, "parked+5", [("parked+5", "parked is not known, so it cannot be stepped")]),
    (MAGPIE, "ago", [("ago", "ago waits for minutes")]),
    (MAGPIE, "ago 4.5", [("4.5", "4.5 is no number of minutes")]),
    (MAGPIE, "ago 900", [("900", "900 minutes ago was before today")]),
    (MAGPIE, "feel 3 4", [("feel 3 4", "feel waits for 5 figures")]),
    (MAGPIE, "feel 3 4 3 2 9", [("9", "9: expected a whole number from 1 to 5")]),
    (MAGPIE, "hot", [("hot", "hot waits for 2 figures")]),
    (MAGPIE, "hot - -", [("hot - -", "hot pressures: nothing is given")]),
    (
        MAGPIE,
        "hot 2.38 C -",
        [
            (
                "2.38 C",
                '"2.38 C" (C is temperature, not pressure): expected a pressure with its unit, e.g. 1.4 bar',
            )
        ],
    ),
    (
        MAGPIE,
        "fuel 1 gal",
        [
            (
                "1 gal",
                '"1 gal" ("gal" differs between countries): expected a volume with its unit, e.g. 7.5 l',
            )
        ],
    ),
    (MAGPIE, "fp 6 mm", [("mm", '"mm" is a unit, and no number waits for it')]),
    (MAGPIE, "laps", [("laps", "laps wait for lap times")]),
    (
        MAGPIE,
        "laps out in",
        [
            ("laps", "laps wait for lap times"),
            ("out", 'there is no short name "out"'),
            ("in", '"in" is a unit, and no number waits for it'),
        ],
    ),
    (MAGPIE, "laps 1:44 1:4x", [("1:4x", "1:4x is no lap time")]),
    (MAGPIE, "laps 1:44 1:4 1:43", [("1:4", "1:4 is no lap time")]),
    (MAGPIE, "laps 1:44 1:61.0", [("1:61.0", "1:61.0 is no lap time")]),
    (MAGPIE, "laps 423", [("423", "423 is no lap time")]),
    (MAGPIE, "laps 10:42:13", [("10:42:13", "10:42:13 is no lap time")]),
    (MAGPIE, "laps 1 1:44 3 1:43", [("3", "lap number 3 behind 1")]),
    (
        MAGPIE,
        "laps 1:44 3:28 5:13",
        [("3:28", "each time is a lap later than the one before: a running clock")],
    ),
    (MAGPIE, "laps 10x1:44 1:43", [("1:43", "a count with the best lap stands by itself")]),
    (MAGPIE, "t4 late 15", [("late", "the day runs late: that is a line by itself")]),
    (MAGPIE, "note", [("note", "the note is empty")]),
    (MAGPIE, "tyres nope", [("nope", 'there is no tyres "nope"')]),
    (MAGPIE, "abs 2", [("abs", "Magpie has no ABS")]),
    (MAGPIE, "sd 4 t4", [("sd", "Magpie has no steering damper")]),
    (MAGPIE, "setup.controls.nope 3", [("setup.controls.nope 3", "Magpie has no nope")]),
    (
        MAGPIE,
        "setup.nope.x 3",
        [
            ("setup.nope.x", 'there is no short name "setup.nope.x"'),
        ],
    ),
    (MAGPIE, "mode homing fa3", [("fa3", "front ABS is fixed at 4 by the riding mode homing")]),
    (
        MAGPIE,
        "fa3 th even mode wading",
        [("th even", "throttle response is fixed at gentle by the riding mode wading")],
    ),
    (
        MAGPIE,
        "bike otter t4",
        [("bike otter", "another bike has other words: its set-up is not read on the same line")],
    ),
    (OTTER, "sl 3 t4", [("sl", "Otter has no slide control")]),
    (OTTER, "la armed t4", [("la", "Otter has no launch control")]),
    (OTTER, "rc 3", [("rc", "Otter has no rear compression")]),
    (BADGER, "t4", [("t", "Badger has no traction control")]),
    (BADGER, "comp 3 3", [("comp", "Badger has no compression")]),
    (PROFILE, "hot 2.38 2.05", [("hot", "a profile holds no hot pressures")]),
    (RIDER, "wet", [("wet", 'there is no short name "wet"')]),
    (MAGPIE, "t4 " + "x" * 1000, [("xxx", "a line of 1003 characters; at most 1000 are read")]),
    (MAGPIE, "t4 note \ud800", [("t4 note \ud800", "a character that cannot be saved in a file")]),
]

QUESTIONS: list[tuple[Ref, str, str, str, list[str]]] = [
    (
        MAGPIE,
        "t4 hot 2.38 w3",
        "hot 2.38",
        "hot pressures 2.38: front or rear?",
        ["t4 hot 2.38 - w3", "t4 hot - 2.38 w3"],
    ),
    (MAGPIE, "preload 6.5", "preload 6.5", "preload 6.5: front or rear?", ["preload 6.5 -", "preload - 6.5"]),
    (MAGPIE, "preload -1", "preload -1", "preload -1: front or rear?", ["preload -1 -", "preload - -1"]),
    (MAGPIE, "tra 4", "tra", '"tra" may be', ["track 4", "travel 4", "t 4"]),
    (MAGPIE, "sp4", "sp", '"sp" may be', ["springs 4", "teeth 4"]),
    (
        MAGPIE,
        "mid-corner 1",
        "mid-corner",
        '"mid-corner" may be',
        ["offsets-mid-corner 1", "feel-mid-corner 1"],
    ),
    (OTTER, "comp 10 9", "comp 10 9", "rear compression 9: which?", ["slow 9 comp 10 -", "fast 9 comp 10 -"]),
]

"""Lines that can be read, and exactly the values that each sets."""

import datetime as dt
from typing import Any

from paddock_tui.records.edits import MISSING
from paddock_tui.records.paths import Ref
from tests.entry.contexts import BADGER, OTTER, PROFILE, RIDDEN, RIDER, TYRES

C, A, T = "setup.controls.", "setup.adjusters.", "setup.offsets."
"""Where controls, adjusters and trims stand."""

# Traction is 3, slide 3, front rebound 9, front preload 6.5 before each line; the surface is wet.
SETS: list[tuple[str, dict[str, Any]]] = [
    # What happened, was felt and was done, in the fixed words; the time is that of the entry.
    (
        "incident leak fork or shock weep visor dark",
        {
            "incidents.1.what": "leak",
            "incidents.1.fluid": "fork or shock weep",
            "incidents.1.at": dt.time(13, 45),
            "happened": "noted",
            "visor": "dark",
        },
    ),
    (
        "incident mend by 2026-07-01 visor dark",
        {
            "incidents.1.what": "mend by",
            "incidents.1.due": dt.date(2026, 7, 1),
            "incidents.1.at": dt.time(13, 45),
            "happened": "noted",
            "visor": "dark",
        },
    ),
    (
        "incident unwell headache heat slept 6",
        {
            "incidents.1.what": "unwell",
            "incidents.1.signs": ["headache", "heat"],
            "incidents.1.at": dt.time(13, 45),
            "happened": "noted",
            "slept": "6 h",
        },
    ),
    (
        "incident warning lamp other",
        {
            "incidents.1.what": "warning lamp",
            "incidents.1.lamp": "other",
            "incidents.1.at": dt.time(13, 45),
            "happened": "noted",
        },
    ),
    (
        "incident off the track gravel incident false neutral 3",
        {
            "incidents.1.what": "off the track",
            "incidents.1.where": "gravel",
            "incidents.1.at": dt.time(13, 45),
            "happened": "noted",
            "incidents.2.what": "false neutral",
            "incidents.2.count": 3,
            "incidents.2.at": dt.time(13, 45),
        },
    ),
    (
        "felt weaves 2 felt brakes fade lever long",
        {
            "symptoms.1.what": "weaves",
            "symptoms.1.grade": 2,
            "symptoms.2.what": "brakes fade",
            "did": "noted",
            "lever": "long",
        },
    ),
    (
        "work axle torqued front pumped t4",
        {
            "work.1.what": "axle",
            "work.1.torqued": True,
            "work.1.end": "front",
            "work.1.pumped": True,
            "work.1.at": dt.time(13, 45),
            C + "traction": 4,
        },
    ),
    (
        "work shift pattern",
        {"work.1.what": "shift pattern", "work.1.at": dt.time(13, 45)},
    ),
    # A call and its number, with and without space, = sets.
    ("t4", {C + "traction": 4}),
    ("t 4", {C + "traction": 4}),
    ("T4", {C + "traction": 4}),
    ("t=4", {C + "traction": 4}),
    ("t = 4", {C + "traction": 4}),
    ("  t4  ", {C + "traction": 4}),
    ("t4 w3", {C + "traction": 4, C + "wheelie": 3}),
    ("t4, w3; sl2", {C + "traction": 4, C + "wheelie": 3, C + "slide": 2}),
    ("t off", {C + "traction": "off"}),
    ("t 99", {C + "traction": 99}),  # out of range: readable, a rule judges it
    ("t=-1", {C + "traction": -1}),
    ("fa4 ra3 eb 2", {C + "front-abs": 4, C + "rear-abs": 3, C + "engine-braking": 2}),
    ("fr12", {A + "front-rebound": 12}),
    (
        "fr12 fc11 rr10 rc 9",
        {
            A + "front-rebound": 12,
            A + "front-compression": 11,
            A + "rear-rebound": 10,
            A + "rear-compression": 9,
        },
    ),
    ("fp 6.25 turns", {A + "front-preload": 6.25}),
    ("fp 6 1/4 turns", {A + "front-preload": 6.25}),
    ("fp6 1/2 t4", {A + "front-preload": 6.5, C + "traction": 4}),
    ("fp6,25", {A + "front-preload": 6.25}),
    ("rp 4.5 mm", {A + "rear-preload": 4.5}),
    ("fr 12 clicks", {A + "front-rebound": 12}),
    ("fh 4", {"setup.fork_height": "4 mm"}),
    ("rh 0.1 in", {"setup.rear_height": "0.1 in"}),
    # Words, initials, unique starts.
    ("traction 4", {C + "traction": 4}),
    ("tract 4", {C + "traction": 4}),
    ("whee5", {C + "wheelie": 5}),
    ("front-rebound 12", {A + "front-rebound": 12}),
    ("front rebound 12", {A + "front-rebound": 12}),
    ("Front Rebound12", {A + "front-rebound": 12}),
    ("front-reb 12", {A + "front-rebound": 12}),
    ("cs 33", {"chain_slack": "33 mm"}),
    ("best 1:43.9", {"best_lap": "1:43.9"}),
    ("engine braking 4", {C + "engine-braking": 4}),
    ("ap 1009", {"air_pressure": "1009 hPa"}),
    ("air pressure 1009 mbar", {"air_pressure": "1009 mbar"}),
    ("setup.controls.traction 4", {C + "traction": 4}),
    ("setup.controls.traction=4", {C + "traction": 4}),
    ('because."controls".traction.why "it cut in"', {"because.controls.traction.why": "it cut in"}),
    ("checks.axles-glance.status ok", {"checks.axles-glance.status": "ok"}),
    # Steps, by the step of the row; a signed number is the value where the range goes below zero.
    ("t+1", {C + "traction": 4}),
    ("t -1", {C + "traction": 2}),
    ("t−1", {C + "traction": 2}),
    ("t up 1", {C + "traction": 4}),
    ("t down 2", {C + "traction": 1}),
    ("t up1", {C + "traction": 4}),
    ("fr-2", {A + "front-rebound": 7}),
    ("fp+1", {A + "front-preload": 6.75}),
    ("rp down 1", {A + "rear-preload": 3.5}),
    ("fuel+1", {"fuel_added": "5.0 l"}),
    ("kerbs -1", {T + "kerbs": -1}),
    ("kerbs +2", {T + "kerbs": 2}),
    ("front-trim up 1", {T + "front-trim": 2}),
    ("air -3", {"air": "-3 C"}),
    ("th up 1", {C + "throttle": "gentle"}),
    ("mode -1", {"setup.mode": "wading"}),
    ("preload +1 -1", {A + "front-preload": 6.75, A + "rear-preload": 3.5}),
    ("preload up 1 down 1", {A + "front-preload": 6.75, A + "rear-preload": 3.5}),
    # Words as values.
    ("mode wading", {"setup.mode": "wading"}),
    ("mode wad t7", {"setup.mode": "wading", C + "traction": 7}),
    ("sh both ways", {C + "shifter": "both ways"}),
    ("sh both la armed 2 t4", {C + "shifter": "both ways", C + "launch": "armed 2", C + "traction": 4}),
    ("la armed t4", {C + "launch": "armed", C + "traction": 4}),
    ("sh up", {C + "shifter": "up only"}),
    ("sh off", {C + "shifter": "off"}),
    ('sh "both ways"', {C + "shifter": "both ways"}),
    ("preset rough road", {"setup.preset": "rough road"}),
    ("damping motor-set preset bumpy track", {"setup.damping": "motor-set", "setup.preset": "bumpy track"}),
    ("pl 60", {C + "pit-limiter": "60 km/h"}),
    ("pl 40 mph", {C + "pit-limiter": "40 mph"}),
    ("pl off", {C + "pit-limiter": "off"}),
    ("surface drying", {"surface": "drying"}),
    ("lever to the bar", {"lever": "to the bar"}),
    ("kind qual", {"kind": "qualifying"}),
    ("air mild track hot", {"air": "mild", "track": "hot"}),
    ("tyres magpie-wet", {"tyres": "magpie-wet"}),
    ("tyres magpie-w", {"tyres": "magpie-wet"}),
    # The words that stand alone.
    ("dry", {"surface": "dry"}),
    ("damp t4", {"surface": "damp", C + "traction": 4}),
    ("t4 drying", {C + "traction": 4, "surface": "drying"}),
    ("Wet", {"surface": "wet"}),
    ("standing", {"surface": "standing water"}),
    ("standing water t4", {"surface": "standing water", C + "traction": 4}),
    # Amounts: unit with or without space, comma or point.
    ("air 17 track 19.5", {"air": "17 C", "track": "19.5 C"}),
    ("air 17C track 66 F", {"air": "17 C", "track": "66 F"}),
    ("track temperature 20 °C", {"track": "20 C"}),
    ("humidity 84% wind 16 km/h", {"humidity": "84 %", "wind": "16 km/h"}),
    ("fuel 4,5", {"fuel_added": "4.5 l"}),
    ("fuel 1.2 US gal brim", {"fuel_added": "1.2 US gal", "filled_to_brim": True}),
    ("fuel 4.5 brim t4", {"fuel_added": "4.5 l", "filled_to_brim": True, C + "traction": 4}),
    ("brim no", {"filled_to_brim": False}),
    ("planned 20 min", {"planned_time": "20 min"}),
    ("air 17 t4", {"air": "17 C", C + "traction": 4}),
    (
        "air 17 hot 2.38 2.05",
        {"air": "17 C", "pressures.hot.front": "2.38 bar", "pressures.hot.rear": "2.05 bar"},
    ),
    ("slack 34 links 112", {"chain_slack": "34 mm", "setup.links": 112}),
    # Pairs, front then rear.
    ("hot 2.38 2.05", {"pressures.hot.front": "2.38 bar", "pressures.hot.rear": "2.05 bar"}),
    ("hot 2,38 2,05", {"pressures.hot.front": "2.38 bar", "pressures.hot.rear": "2.05 bar"}),
    ("hot 34 31.5", {"pressures.hot.front": "34 psi", "pressures.hot.rear": "31.5 psi"}),
    ("hot 238kPa 2.05 bar", {"pressures.hot.front": "238 kPa", "pressures.hot.rear": "2.05 bar"}),
    ("hot - 2.05", {"pressures.hot.rear": "2.05 bar"}),
    ("hot 2.38 -", {"pressures.hot.front": "2.38 bar"}),
    (
        "cold 2.1 1.9 hot-set 2.3 -",
        {
            "pressures.cold.front": "2.1 bar",
            "pressures.cold.rear": "1.9 bar",
            "pressures.hot.set_to_front": "2.3 bar",
        },
    ),
    (
        "cold-at 1258 cold-temperature 18",
        {"pressures.cold.at": dt.time(12, 58), "pressures.cold.temperature": "18 C"},
    ),
    ("rebound 12 11", {A + "front-rebound": 12, A + "rear-rebound": 11}),
    ("comp 12 11", {A + "front-compression": 12, A + "rear-compression": 11}),
    ("springs 9.5 85", {"setup.front_spring": "9.5 N/mm", "setup.rear_spring": "85 N/mm"}),
    ("front-sprocket 15 teeth t4", {"setup.front_sprocket": 15, C + "traction": 4}),
    ("front-sprocket 15 teeth - 44", {"setup.front_sprocket": 15, "setup.rear_sprocket": 44}),
    ("aim=clear t4", {"aim": MISSING, C + "traction": 4}),
    ("teeth 15 44", {"setup.front_sprocket": 15, "setup.rear_sprocket": 44}),
    ("heights 5 2", {"setup.fork_height": "5 mm", "setup.rear_height": "2 mm"}),
    ("starting 2.1 1.9", {"setup.front_start": "2.1 bar", "setup.rear_start": "1.9 bar"}),
    (
        "pads 4 3.8 travel 107 93",
        {
            "front_pads": "4 mm",
            "rear_pads": "3.8 mm",
            "front_travel_used": "107 mm",
            "rear_travel_used": "93 mm",
        },
    ),
    (
        "feel 3 4 3 2 5",
        {
            "feel.braking": 3,
            "feel.turning_in": 4,
            "feel.mid_corner": 3,
            "feel.driving_out": 2,
            "feel.straight": 5,
        },
    ),
    ("feel 3 - - 2 -", {"feel.braking": 3, "feel.driving_out": 2}),
    ("braking 2 turning in 4", {"feel.braking": 2, "feel.turning_in": 4}),
    ("braking 2 turn-in 4", {"feel.braking": 2, "feel.turning_in": 4}),
    # Times.
    ("parked 1102", {"parked": dt.time(11, 2)}),
    ("parked 11:02", {"parked": dt.time(11, 2)}),
    ("parked now", {"parked": dt.time(13, 45)}),
    ("ago 4", {"parked": dt.time(13, 41)}),
    ("ago 4 min t4", {"parked": dt.time(13, 41), C + "traction": 4}),
    ("went 1320 parked 13:38:30", {"went_out": dt.time(13, 20), "parked": dt.time(13, 38, 30)}),
    ("warmers used warmers on 1210", {"warmers": "used", "warmers_on": dt.time(12, 10)}),
    # Laps, notes and other texts.
    ("laps 1:42.3 1:44.310 out 1:43", {"laps.1": "1:42.3", "laps.2": "1:44.310 out", "laps.3": "1:43"}),
    ("laps 1:42,3, 1:43 in t4", {"laps.1": "1:42.3", "laps.2": "1:43 in", C + "traction": 4}),
    ("lap 58.4", {"laps.1": "58.4"}),
    ("laps 102.3 1.42.3 1'42\"3", {"laps.1": "1:42.3", "laps.2": "1:42.3", "laps.3": "1:42.3"}),
    ("laps 10x1:41.6", {"ridden_laps": 10, "best_lap": "1:41.6"}),
    ("laps Lap Time 1 1:58.9 out 2 1:44.3", {"laps.1": "1:58.9 out", "laps.2": "1:44.3"}),
    ("laps 2 1:44.3 1 1:58.9 out", {"laps.1": "1:58.9 out", "laps.2": "1:44.3"}),
    (
        "note rear slid out of 4, t2 next",
        {"notes.1.text": "rear slid out of 4, t2 next", "notes.1.at": dt.time(13, 45, 12)},
    ),
    (
        'note "rear slid" t4',
        {"notes.1.text": "rear slid", "notes.1.at": dt.time(13, 45, 12), C + "traction": 4},
    ),
    (
        't4 note said "no" twice',
        {C + "traction": 4, "notes.1.text": 'said "no" twice', "notes.1.at": dt.time(13, 45, 12)},
    ),
    ("aim brake later into 4", {"aim": "brake later into 4"}),
    ("aim met partly", {"aim_met": "partly"}),
    ('aim "clear"', {"aim": "clear"}),
    # Clearing.
    ("aim clear", {"aim": MISSING}),
    ("t clear wheelie 2", {C + "traction": MISSING, C + "wheelie": 2}),
    ("hot clear 2.05", {"pressures.hot.front": MISSING, "pressures.hot.rear": "2.05 bar"}),
    ("", {}),
]

OTHERS: list[tuple[Ref, str, dict[str, Any]]] = [
    # A bike that counts down, with calls of its own beside the built-in ones.
    (OTTER, "grip 4", {C + "rear-grip": 4}),
    (OTTER, "t4 w2 abs 1", {C + "rear-grip": 4, C + "wheelie": 2, C + "abs": 1}),
    (OTTER, "slow 8 fast up 1", {A + "rear-compression-slow": 8, A + "rear-compression-fast": 2.25}),
    (OTTER, "rcs 8 sd+2", {A + "rear-compression-slow": 8, A + "steering-damper": 11}),
    (OTTER, "sh on pl 30", {C + "shifter": "on", C + "pit-limiter": "30 mph"}),
    (OTTER, "th round", {C + "throttle": "rounded"}),
    # A fork with a screw in each leg: both are set alike, each by its own name.
    (BADGER, "fr 1.5", {A + "front-rebound-left": 1.5, A + "front-rebound-right": 1.5}),
    (BADGER, "fr+1", {A + "front-rebound-left": 2, A + "front-rebound-right": 2}),
    (BADGER, "frl 1.5", {A + "front-rebound-left": 1.5}),
    (
        BADGER,
        "rebound 1.5 1.25",
        {A + "front-rebound-left": 1.5, A + "front-rebound-right": 1.5, A + "rear-rebound": 1.25},
    ),
    # A number behind laps and notes that are there already.
    (
        RIDDEN,
        "laps 1:44 note hot",
        {"laps.1": "1:44", "notes.2.text": "hot", "notes.2.at": dt.time(13, 45, 12)},
    ),
    # Other records: the same set-up words in a profile, labels everywhere else.
    (
        PROFILE,
        "t4 fr12 teeth 15 44",
        {C + "traction": 4, A + "front-rebound": 12, "setup.front_sprocket": 15, "setup.rear_sprocket": 44},
    ),
    (PROFILE, "damp baseline", {"made_for": "damp", "baseline": True}),
    (RIDER, "weight 71,5 initials IX", {"weight": "71.5 kg", "initials": "IX"}),
    (RIDER, "weight in kit 158 lb", {"weight": "158 lb"}),
    (TYRES, "name Slicks, old", {"name": "Slicks, old"}),
    (TYRES, "front date code 2623", {"front.date_code": "2623"}),
]

"""Names and phrases that users stumble over, each under what is wrong with it; sample data with a name."""

from collections.abc import Mapping

from tests.forbidden.dangers import Danger

STUMBLES: Mapping[str, Danger] = {
    "mend": Danger(
        r"\b[Mm]end(s|ed|ing)?\b",
        "fix, repair, correct",
        ("mend its file first", "finding to mend", "lamp, cause and mend", "cut short and mended"),
        ("recommended", "amend", "tremendous"),
    ),
    "kept for saved": Danger(
        r"\bnot kept\b|\benter keeps\b|\bcould not be kept\b|\bkept already\b|\bsaid to be kept\b",
        "saved",
        ("what could not be kept", "everything is kept already", "not kept", "enter keeps it"),
        ("kept, session 5", "keeps its value with the ignition off"),
    ),
    "in hand": Danger(
        r"\bin hand\b|\b(session|profile|set-up) looked at\b|\bwhat is looked at\b",
        "current, shown",
        ("the session in hand", "session or profile looked at", "filled from what is looked at"),
        ("both tyres looked at: cuts, nails, cord", "Have the manual in the other hand"),
    ),
    "names of the debrief": Danger(
        r"\breturn slip\b|\bslip of the return\b|\b[Tt]he return (is|page|sheet)\b"
        r"|\b[Tt]he slip\b|\bpaper slip\b",
        "debrief, debrief sheet",
        ("the return slip", "slip of the return", "the return is done", "The slip is typed"),
        ("on return", "slip of the tyre", "a slip, or the wrong unit", "the debrief sheet"),
    ),
    "a bench that is no bench": Danger(
        r"\b(by|from) the bench\b|(^|── |> )bench\b",
        "calculators",
        ("worked out by the bench", "── bench"),
        ("a spring on the bench", "python -m tests.bench"),
        where="pages",
    ),
    "ledger": Danger(
        r"\b[Ll]edger\b",
        "change log",
        ("ledger · 76 changes",),
        ("change log · 76 changes",),
        where="pages",
    ),
    "limits of four kinds": Danger(
        r"\blimits page\b|\bm, limits\b|\bin the limits;|\bwider limit\b|\bsuch a limit\b|\blimits · [0-9]"
        r"|\| limit \||^Limits of our own|\blimits of (the )?rules\b",
        "thresholds, posted limits, allowed range, limits of your own",
        ("a limit of the limits page", "m, limits shows them", "A wider limit finds less"),
        ("the posted limit", "limits as posted", "the rev limit", "thresholds · 106"),
    ),
    "what a key takes over": Danger(
        r"\btake over\b|\bset back\b(?! it)|\btry it back\b|\bwrite elsewhere\b|\btake profile\b"
        r"|^profile for$|\btake last time\b",
        "use, load, restore, re-test, save to another file",
        ("take over", "set back", "try it back", "write elsewhere", "take profile"),
        ("load profile", "restore set-up", "a profile for {}"),
    ),
    "not judged": Danger(
        r"\bnot judged\b",
        "not assessed",
        ("4 not judged",),
        ("4 not assessed", "judged then, not now"),
    ),
    "the wet package in riddles": Danger(
        r"\b[Ll]ess wet than\b|\b[Nn]ot set by it\b|\bthe count says only\b",
        "not fully set for the wet; do by hand; only used in manual damping",
        ("Less wet than the wet package: riding mode", "Not set by it: wet tyres on", "the count says only"),
        ("Not fully set for the wet: riding mode", "Do by hand: wet tyres on, if there are any"),
    ),
    "a dress": Danger(
        r"\bdress\b",
        "kit on",
        ("out 13:20 in 40 min · dress in 30 min",),
        ("kit on in 30 min", "address"),
        where="pages",
    ),
    "feel": Danger(
        r"\bstops me\b|\bfive moments\b|\bmoments? of feel\b|\bs same, d differs\b|\beach lap s\b",
        "holds me back; five phases; every lap or some laps",
        ("1 stops me, 3 fine", "feel in the five moments", "s same, d differs"),
        ("1 holds me back, 3 fine, 5 could push more", "ridden differently each lap"),
    ),
    "a tyre that turned": Danger(
        r"\bturned round on the rim\b|\bturn them round\b|\bworks (from|to)$",
        "flipped on the rim; working range from, to",
        ("turned round on the rim, on this date", "tyres looked at; turn them round?", "works from"),
        ("flipped on the rim", "working range from", "It works from 70 to 90 C"),
    ),
    "words of no trade": Danger(
        r"\brate at the wheel\b|\brate that would serve\b|\blifting wheels\b|\bwheels carry at rest\b"
        r"|\blost at each\b|\bmass, ahead\b|\bfor a thin tyre\b|\bthin tyres\b"
        r"|\b(sag|speed|distance) wanted\b|\bwanted (rider )?(sag|speed in top|centre)\b|m, wanted",
        "wheel rate, suggested rate, stoppie limit, static axle loads, rpm drop, target, width ignored",
        ("rate at the wheel", "wanted rider sag", "lost at each upshift", "centre of mass, ahead"),
        ("= wheel rate", "target rider sag", "rider's centre, ahead", "rpm drop per upshift"),
    ),
    "lamp": Danger(
        r"\bwarning lamp\b(?!$)|\blit lamp\b|\blamps? (was |were )?lit\b|\blamps (tried|written)\b"
        r"|\bsingle lamp\b|\bABS lamp off\b",
        "warning light",
        ("the warning lamp of the ABS", "lamps written down", "the lamp was lit"),
        ("warning light", "the lamp of a failed ABS"),
    ),
    "a tank as dry as a track": Danger(
        r"\b(runs|running|run) dry\b|\bcounts as dry below\b|\bdry (\{\}|[0-9.]+) [lL] before\b",
        "runs out, too little to reach the flag",
        ("it runs dry 1.2 l before the flag", "dry 0.3 l before the flag", "counts as dry below this"),
        ("it runs out 1.2 l before the flag", "dry line only"),
    ),
    "drowsy": Danger(
        r"\bmakes? dull\b|\bnumber to ring\b|\b(and|against) the sky\b|\bjoining link\b|\bchain oiled\b"
        r"|\bask, who cleared\b|\bnone of it left in for a frost\b",
        "drowsy, emergency contact, forecast, clip or rivet link, lubed",
        ("medicine that makes dull", "number to ring", "tyres fit the track and the sky", "chain oiled"),
        ("no drowsy medicine", "clip or rivet link, chain lubed"),
    ),
    "old English": Danger(
        r"\banew\b|\b[Tt]ill\b|\bsuch as\b(?=[ {]*[\"0-9{]|$)|\balike\b|\b[Rr]eckon|\bgo on from there\b"
        r"|\bspent\b|\btwo of them are the way\b|\bit is so after\b|\b(quicker|faster) than a hand\b"
        r"|\bgrabs in a fright\b|[Rr]ubber that is baked",
        "again, until, e.g., similar, work out, continue, used up",
        (
            "levels anew",
            "Till then",
            "such as 8",
            "go on from there",
            "faster than a hand",
            "both legs alike",
            "two of them are the way",
        ),
        ("until then", "e.g. 8", "still open", "tilled"),
    ),
    "translated English": Danger(
        r"\blike (conditions|steps|sessions)\b|\bfixed run of keys\b|\bwants the key\b|\bmerely\b"
        r"|\blater kept but in no trend\b|\bthat cannot be, is far from\b|\bsmall helps\b"
        r"|\b[Cc]ounted and sent\b|\bA lock is waited for\b|\bThe verdict stands\b|\bNothing lost\b",
        "plain English",
        ("in like conditions", "Every row takes a fixed run of keys", "small helps stay untold", "merely"),
        ("similar conditions", "What is saved and when", "small gains go undetected"),
    ),
    "a help that is no help": Danger(
        r"\b(is|are) (called|reported as) a help\b|\bcalled a help\b|\ba help (is|from)\b|\bfalse helps?\b",
        "reported as helped; a gain",
        ("changes that do nothing is called a help", "only going back tells a help from luck"),
        ("reported as helped", "print a help topic"),
    ),
    "a source that is none": Danger(
        r"\bcommon practice\b|[;,] no source\b|\bfrom memory\b|, memory$",
        "paddock practice, unpublished",
        ("common practice, no source", "from memory", "OpenStax table 5.1, memory"),
        ("paddock practice, unpublished", "headache, confusion, sickness, memory: blank"),
    ),
    "names of persons on a page": Danger(
        r"\b(Cossalter|Barton|Fieldhouse|Garber|Mannering|Washburn|Rothfusz|OpenStax|FIM|Highway Code)\b",
        "the kind of source; who wrote it stands on the page that explains",
        ("mean piston speed 11 m/s FIM noise control", "assumed: Highway Code 227"),
        ("assumed: road-safety agency, road code", "power, ISO 1585"),
        where="pages",
    ),
    "insides of the program": Danger(
        r"\banswered by pressures\.|\((frees_most|most_help)\)",
        "labels as the pages have them",
        ("answered by pressures.cold.front", "in the bike's file (frees_most)"),
        ("answered by cold front", 'on the bike\'s page, "most help at"'),
    ),
    "short names called calls": Danger(
        r"\bthere is no call\b|\bcalls and values, e\.g\.",
        "short names",
        ('there is no call "zz"',),
        ('there is no short name "zz"',),
    ),
    "a time that nobody means": Danger(
        r"\bwhat time to take it to be\b",
        "pretend it is this time",
        ("what time to take it to be",),
        ("pretend it is this time",),
    ),
    # Figures that say more than is known.
    "laps that nobody will ride": Danger(
        r"\bneeds [0-9]{2,} more clean\b",
        "cannot be told by laps",
        ("needs 115 more clean laps to see 0.3 s",),
        ("needs 3 more clean laps",),
    ),
    "a figure finer than the tyre": Danger(
        r"(?<!about )(?<!the )\blimiter [0-9]+ (km/h|mph) in top\b",
        "about: the tyre rolls 1 to 3 % less than its size",
        ("limiter 283 km/h in top",),
        ("limiter about 283 km/h in top",),
        where="pages",
    ),
    "statistics": Danger(
        r"1\.4826|\bmedian (absolute )?deviation\b",
        "how far they spread",
        ("median deviation of those readings, times 1.4826",),
        ("median clean lap",),
    ),
    "a threshold declared": Danger(
        r"\bas (it was )?declared\b|\bso much (warmer|colder)\b",
        "default; change in air temperature",
        ("so much warmer or colder; as declared", "Every threshold stands as it was declared"),
        ("declared wet or dry", "default"),
    ),
    "a comma that nobody types": Danger(
        r"\bair=[0-9]+,[0-9]",
        "air=17.5",
        ("air=17,5",),
        ("air=17.5",),
    ),
    # Sample data that points at a real machine, place or product.
    "a real place": Danger(
        r"Alderfen|Tarn Hollow", "a name that no gazetteer has", ("Alderfen",), ("Anvilfen",), where="sample"
    ),
    "a machine that can be named": Danger(
        r"\"14(32|18) mm\"|\"23\.8 deg\"|\"203 kg\"|\"141 kW\"|= 1\.652\b|\"6[34](\.9)? mm\"|\"74 kW\""
        r"|\b2\.846\b|\b1\.947\b|levels = \[1, 8\]",
        "figures that belong to no machine",
        ('wheelbase = "1432 mm"', "primary = 1.652", "gearbox = [2.846, 1.947]"),
        ('wheelbase = "1441 mm"', "primary = 1.659"),
        where="sample",
    ),
    "another maker's trims": Danger(
        r"offsets\.(when-braking|driving-out|over-bumps|on-the-brakes)",
        "mid-corner, kerbs, front, rear",
        ("[damping.live.offsets.when-braking]",),
        ("[damping.live.offsets.mid-corner]",),
        where="sample",
    ),
}
"""What only sounds wrong: dated or translated words, names that riders do not use, figures too fine."""

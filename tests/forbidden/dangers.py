"""Words that could hurt, each under the danger that it is: what would find it, and what is said instead."""

from collections.abc import Mapping
from typing import Literal

import attrs

Where = Literal["strings", "pages", "sample"]
"""Where a word is looked for: in strings, help and the sample's words; on drawn pages alone; in raw files."""


@attrs.frozen
class Danger:
    """A pattern, what is said instead, texts that it has to find, and right uses that it leaves alone."""

    pattern: str
    instead: str
    finds: tuple[str, ...]
    leaves: tuple[str, ...] = ()
    where: Where = "strings"


DANGERS: Mapping[str, Danger] = {
    "a verdict that is leave to go": Danger(
        r"\bCLEAR\b|\bclear would be\b",
        "NO FINDINGS: in a paddock clear is permission",
        ("CLEAR so far", "and clear would be a guess"),
        ("who cleared you", "NO FINDINGS"),
    ),
    "a caution turned round": Danger(
        r"[Nn]othing found is not safe|\"[Nn]othing found\" is not",
        "no findings does not mean safe",
        ("Nothing found is not safe; in doubt more help", '"Nothing found" is not "safe"'),
        ("Nothing found. That is not the same as safe.",),
    ),
    "a promise of safety": Danger(
        r"\bguaranteed? safe\b|\bis safe to\b",
        "nothing here is called safe",
        ("it is safe to ride", "guaranteed safe"),
        ("not a guarantee of safety",),
    ),
    "brake fade": Danger(
        r"^fades$|\bthe rear loses grip after a few laps\b",
        "riders say fade of brakes: tyre goes off, brakes fade",
        ("fades", "the rear loses grip after a few laps"),
        ("brakes fade", "tyre goes off"),
    ),
    "less help in the wet": Danger(
        r"\bABS up\b|\bboth ABS up\b",
        "more help: up is less on a bike that counts down",
        ("traction and both ABS up",),
        ("more traction control and ABS, both ends",),
    ),
    "clicks without a direction": Danger(
        r"\bopened two to four\b|\bthe softer offsets\b",
        "2-4 clicks softer (out)",
        ("damping opened two to four", "or the softer offsets"),
        ("compression and rebound 2-4 clicks softer (out), or softer offsets",),
    ),
    "traction control turned down": Danger(
        r"\bLeave it: only\b|\btyre that it knows\b",
        "say what is not turned down, and when it may be",
        ("Leave it: only on a dry track", "a warm tyre that it knows"),
        ("Do not turn traction control down for this: only on a dry track",),
    ),
    "called ok without comparing": Danger(
        r"\bchain ok\b|\btyres ok: looked\b",
        "not compared: see the manual",
        ("chain ok: 32 mm at the tight point", "tyres ok: looked at"),
        ("ok: tread over its wear limit at both ends",),
    ),
    "fuel in a tyre": Danger(
        r"\bgas\b(?! law)",
        "tyre air: some fill up with the other",
        ("front gas when hot", "gas now, estimated"),
        ("By the gas law, the same air",),
    ),
    "aids called nets": Danger(
        r"\bnets?\b",
        "aids: several are low at once, what one misses no other catches",
        ("The nets are thin together.", "which net was missed"),
        ("netting", "-0.2 s"),
    ),
    "help as a bare figure": Danger(
        r"\bof the help\b|\bmean help (\{|[0-9])|\bwhich is 0\.[0-9]|\bof 0 to 1\b",
        "percent of most help",
        ("0.80 of the help", "mean help {}", "now 3, which is 0.30", "0.25 of 0 to 1"),
        ("80 % of most help", "25 %, range 0-1"),
    ),
    "the least that silences": Danger(
        r"[0-9] +start [0-9]{1,2}(?![0-9:.])",
        "suggested: start at 8; 5 is the least that removes this finding",
        ("traction control 3  start 8",),
        ("Start traction control at 8; 5 is the least", "start 13:20"),
        where="pages",
    ),
    "which way engine braking goes": Danger(
        r"\bfrees? (the rear|most)\b|\bholds the rear on\b|\bfreer\b|\bholds it\b|\bholds (more|less)$"
        r"|\bfreed below\b",
        "more or less engine braking, brakes least",
        ("frees the rear", "frees most at", "Engine braking holds the rear on a wet track", "freed below"),
        ("holds the rear down", "Rear ABS frees no wheel that the engine drags"),
    ),
    "which end comes up": Danger(
        r"\b[Ff]ork height\b(?! was changed)|(?<!ride )\brear height\b",
        "fork protrusion (more = front lower), rear ride height",
        ("fork height 5 mm", "rear height 2 mm"),
        ("fork protrusion 5 mm", "rear ride height 2 mm", "height of fork or rear"),
    ),
    "which way clicks are counted": Danger(
        r"\bnot known -> [0-9.]+ (clicks?|turns?)\b(?! (out|in)\b)|\b[0-9.]+ of [0-9]+ (click|turn)\b"
        r"|\b[0-9]+ clicks of [0-9]",
        "9 clicks out: from which end a figure is counted",
        ("front rebound not known -> 9 clicks", "front rebound 9 of 18 click", "10 clicks of 22"),
        ("not known -> 9 clicks out", "9 clicks out, of 18", "10 -> 8 clicks (firmer)"),
        where="pages",
    ),
    "an offset without a sign": Danger(
        r"\b(front trim|mid corner|kerbs) ([1-9]|0 -> [1-9])",
        "+1, and whether that is firmer",
        ("front trim 1 of -2 to 4", "kerbs 0 -> 1"),
        ("front trim +1 of -2 to 4", "front trim 0 -> +1 (firmer)"),
        where="pages",
    ),
    "kelvins": Danger(
        r"(\b[0-9]+|\{\}|\bsome) K\b(?! \*| /|\))",
        "°C difference",
        ("more than 8 K", "some K under the dial"),
        ("(0.287 kJ/(kg K) x",),
        where="pages",
    ),
    "wet against dry, which way round": Danger(
        r"\b[Ww]et to dry\b",
        "wet, if grip is 50-70 %: corner speed and braking distance",
        ("wet to dry, if grip 0.5-0.7: corner speed",),
        ("wet beside dry", "wet against dry"),
    ),
    "then for was": Danger(
        r"(?<!, )\bthen (wet|dry|damp|drying|[0-9]+)$",
        "was 8: then reads as what comes next",
        ("traction 3 then 8", "surface wet then wet"),
        ("was 8", "then 30 min"),
        where="pages",
    ),
    "which key": Danger(
        r"\bkey resets\b|\bkey-(on|off)\b|\bKey-off\b|\b(after|with) the key\b|\bkeys that are not known\b"
        r"|\bdash and key\b|\bthe key is turned\b",
        "ignition on and off; a name that is not known",
        ("key resets", "after the last key-on", "resets with the key", "keys that are not known", "Key-off"),
        ("after the last ignition-on", "the key presses", "press the key again"),
    ),
    "a gear lever": Danger(
        r"(?<!quick)\bshifter (both|up|off)\b",
        "quickshifter",
        ("shifter both ways", "shifter up only"),
        ("quickshifter both ways",),
    ),
    "an amount of slide": Danger(
        r"\b(traction|slide|wheelie) help\b|\b(little|Little) slide\b"
        r"|(^|[>·;,|▌│] ?)(traction|wheelie|slide) ([0-9]|not known)",
        "traction control, wheelie control, slide control",
        ("Little slide help for a wet track", "traction 3 range 0-10", "> wheelie 4", "slide 3"),
        ("traction control 3", "Slide control low for a wet track"),
    ),
    "one or litre": Danger(
        r"(?<![\w-])[0-9]+(\.[0-9]+)? l\b(?!\")",
        "6.5 L",
        ("fuel added 4.5 l", "065 is 6.5 l", "1 l"),
        ("4.5 L", "7 laps", "s8 l5 p5", "14 L/100km"),
        where="pages",
    ),
    "no unit of temperature": Danger(
        r"\b[0-9]+ C\b",
        "17 °C",
        ("air 17 C",),
        ("17 °C", "CARE 2"),
        where="pages",
    ),
    "preload in or out": Danger(
        r"\b[Tt]akes? preload (in|out)\b|\bpreload takes? (in|out)\b",
        "back preload off, wind preload on",
        ("Take preload out at the rear", "preload takes out"),
        ("Back preload off at the front toward 30 mm",),
    ),
    "an alarm on an empty row": Danger(
        r"\b(note|retired|baseline|flipped on the rim|turned|may be off) not known\b",
        "- for what nobody has to fill",
        ("note not known", "retired not known", "baseline not known"),
        ("circumference -", "wheelie control not known"),
        where="pages",
    ),
    "a negative answered by no": Danger(
        r"not scrubbed in: ",
        "scrubbed in: yes or no",
        ("rear tyre not scrubbed in: no (tyre set magpie)",),
        ("shiny: not scrubbed in", "rear tyre scrubbed in yes"),
    ),
    "not the word for aquaplaning": Danger(
        r"\bfloats? on the water\b|^they float\b|\bits seat on the rim\b|\btyre works too much\b"
        r"|\bthe patch is small\b",
        "aquaplanes, unseats the bead, the carcass flexes, contact patch",
        ("without grooves the tyre floats on the water", "leave its seat on the rim", "the patch is small"),
        ("the tyre aquaplanes", "the contact patch is small and hot", "the front dives and floats"),
    ),
    "the least of it at least": Danger(
        r"\bleast of it at least\b",
        "at least at its lowest setting",
        ("Switch ABS on at the front, the least of it at least",),
        ("at least at its lowest setting",),
    ),
    "a level as a share": Danger(
        r"\bout of by-hand\b|(?<![0-9:/-])\b[0-9]+ of [0-9]{1,2}-[0-9]{1,2}\b",
        "4 (range 1-4), 5 (8 = least, 1 = most)",
        ("damping mode by-hand out of by-hand", "front ABS 4 of 1-4", "5 of 8-1"),
        ("4 range 1-4", "6 of 2026-06-20", "session 5 of 16 May", "+1 of -2 to 4"),
    ),
}
"""What makes a rider do the wrong thing: leave to go, the wrong end, the wrong direction, a bare figure."""

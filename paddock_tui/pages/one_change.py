"""One change on a page of its own: what it did, what else may be the cause, everything side by side."""

import datetime as dt
from collections.abc import Iterator

from paddock_tui.advice.ledger import (
    ConditionPair,
    LedgerEntry,
    mixed_laps,
    outings_left_of,
    side_by_side,
    to_settle,
)
from paddock_tui.advice.session_laps import needs_words, shift_words, stint_of
from paddock_tui.calc.change_effect import FIRST_LEVEL, RATE, Judgement
from paddock_tui.calc.feel_effect import FEWEST_PAIRS, FeltEffect
from paddock_tui.calc.session_comparison import Compared
from paddock_tui.calc.session_luck import LEAST_LUCK, LUCK_OVER_SCATTER, Luck
from paddock_tui.facts.past import History
from paddock_tui.limits import Limits
from paddock_tui.pages.ledger import CAUTION, LEDGER, name_of
from paddock_tui.pages.ledger_pictures import effect_row, two_sessions_row
from paddock_tui.pages.pictures.effects import LEGEND
from paddock_tui.pages.pictures.laps import LEGEND_OF_TWO
from paddock_tui.pages.rows import Page, Row, Section
from paddock_tui.quantities import rounded
from paddock_tui.records.differences import old_to_new
from paddock_tui.records.paths import Ref
from paddock_tui.text import printable

TRY_BACK = "try back"
_FROM_SESSION = "session before"


def change_page(entry: LedgerEntry, history: History, now: dt.datetime, limits: Limits) -> Page:
    """Make the page of one change; `now` tells which outings are left that would settle it."""
    sections = [
        *_pictures(entry),
        Section("what it did", (*_did(entry), *_settled(entry, history, now, limits))),
        Section("what that rests on", tuple(_rests_on(entry))),
        Section("what you said", tuple(_said(entry))),
        Section("what else differed", tuple(_else(entry))),
    ]
    if entry.source is not None:
        beside = side_by_side(history, entry.source, entry.session)
        sections.append(Section("side by side", tuple(_beside(one) for one in beside), "before -> after"))
    sections.append(Section("from here", tuple(_ways(entry)), "u undoes"))
    sections = [one for one in sections if one.rows]
    value = f" {entry.changes[0].words}" if entry.changes else ""
    heading = f"change · {entry.label}{value} · {name_of(entry.session.id, entry)}"
    found = entry.lost or entry.verdict
    because = entry.judgement.why if entry.judgement is not None else ""
    return Page(
        printable(heading),
        tuple(sections),
        caution=CAUTION,
        judged=False,
        answer=printable(f"{found[:1].upper()}{found[1:]}{f': {because}' if because else ''}"),
        answer_short=printable(found),
    )


def _pictures(entry: LedgerEntry) -> Iterator[Section]:
    for row, legend in ((effect_row(entry), LEGEND), (two_sessions_row(entry), LEGEND_OF_TWO)):
        if row is not None:
            yield Section(row.label, (row,), legend)


def _did(entry: LedgerEntry) -> Iterator[Row]:
    judgement = entry.judgement
    yield _text("verdict", entry.lost or entry.verdict)
    if judgement is not None:
        yield _text("because", judgement.why)
        if judgement.needs:
            yield _text("needs", judgement.needs)


def _rests_on(entry: LedgerEntry) -> Iterator[Row]:
    judgement = entry.judgement
    if judgement is not None:
        yield from _gain(judgement)
    if entry.laps is not None:
        laps = entry.laps
        within = ""
        if laps.low_s is not None and laps.high_s is not None:
            within = f", {shift_words(laps.low_s)} to {shift_words(laps.high_s)} (95 %)"
        yield _text("these two, laps", f"{shift_words(laps.shift_s)}{within}")
        yield _text("chance of those laps", _chances(entry, laps))
    elif judgement is not None:
        need = needs_words(stint_of(entry.session.session))
        yield _text("these two, laps", f"too few clean laps to compare{'; ' + need if need else ''}")
    if entry.felt is not None and entry.felt.pairs:
        yield _text("felt, by pairs", _felt(entry.felt))
    for name, old, new in entry.feel:
        yield _text(
            f"feel {name}",
            f"{old_to_new(str(old), str(new))}, {'better' if new > old else 'worse'}; 5 is best",
        )


def _settled(entry: LedgerEntry, history: History, now: dt.datetime, limits: Limits) -> Iterator[Row]:
    laps = len(stint_of(entry.session.session).times_s) if entry.session.may_time else 0
    said = to_settle(entry, outings_left_of(history, entry, now), laps, limits)
    if said:
        yield _text("to settle it", said)


def _felt(felt: FeltEffect) -> str:
    count = f"better in {felt.better}, worse in {felt.worse}, similar in {felt.alike}"
    chance = f"; {_percent(felt.chance)} by luck" if felt.chance is not None else ""
    few = f"; feel alone says nothing under {FEWEST_PAIRS} pairs" if felt.pairs < FEWEST_PAIRS else ""
    return f"{count}{chance}{few}"


def _chances(entry: LedgerEntry, laps: Compared) -> str:
    ranks = f"{_percent(laps.chance)} by ranks ({'counted' if laps.exact else 'by the normal curve'})"
    mixed = mixed_laps(entry)
    if mixed is not None:
        ways = "all" if mixed.exact else "a drawn"
        ranks += f", {_percent(mixed.chance)} by mixing them {ways} {mixed.tried} ways"
    return f"{ranks}; of the laps alone, a session's luck comes on top"


def _gain(judgement: Judgement) -> Iterator[Row]:
    if judgement.gain_s is None or judgement.chance is None or judgement.luck is None:
        return
    to, back = judgement.steps
    steps = f"{to} time{'' if to == 1 else 's'} to it, {back} back"
    yield _text("by sessions", f"{shift_words(judgement.gain_s)} with it ({steps})")
    yield _text(
        "chance by luck", f"{_percent(judgement.chance)}, the weaker way of the two where it was both"
    )
    yield _text("luck of a session", _luck(judgement.luck))
    yield _text(
        "level",
        f"{FIRST_LEVEL:.2%} when first judged, less each time it is judged again: at most {RATE:.0%} of "
        "changes that have no effect are reported as helped, whatever learning, tyres and track do one way, "
        "while luck is no larger than that",
    )


def _luck(luck: Luck) -> str:
    sd = f"sd {rounded(luck.sd_s, 2)} s"
    if luck.learnt:
        return f"{sd}, from {luck.steps} steps between similar sessions of this rider on this bike"
    scatter = f"{LUCK_OVER_SCATTER:g} times the scatter of the laps"
    return f"{sd}, assumed: {scatter}, at least {LEAST_LUCK:.2%} of a lap; paddock practice"


def _said(entry: LedgerEntry) -> Iterator[Row]:
    because = entry.because
    pairs = (
        ("why", because.why if because is not None else None),
        ("expected", because.expect if because is not None else None),
        ("your verdict", because.verdict if because is not None else None),
    )
    for label, text in pairs:
        yield _text(label, text or "nothing written down")


def _else(entry: LedgerEntry) -> Iterator[Row]:
    if entry.lost:
        yield _text("", "not known")
        return
    before, after = entry.presets
    if before != after:
        yield _text("from its preset", old_to_new(before or "none known", after or "none known"))
    for one in entry.others:
        gone = "" if one.listed else "; not on this bike any more"
        yield _text(one.label, f"{one.words}{gone}")
    for place, said in enumerate(entry.differed):
        yield Row("", printable(said), kind="text", key=f"differed {place}")
    if not entry.others and not entry.differed:
        yield _text("", "nothing that is known")


def _beside(one: ConditionPair) -> Row:
    before, after = one.before or "not known", one.after or "not known"
    value = before if before == after else old_to_new(before, after)
    return Row(one.label, printable(value), kind="text", key=f"beside {one.label}")


def _ways(entry: LedgerEntry) -> Iterator[Row]:
    path = (LEDGER, entry.session.id, *entry.path)
    if entry.danger_back:
        yield _text("not back", f"{entry.danger_back}: nobody goes back into that to learn something")
    elif entry.source is not None and all(one.known and one.listed for one in entry.changes):
        old = entry.changes[0]
        said = f"the next session with {entry.label} {old.back}"
        yield Row("re-test", printable(said), kind="link", path=path, key=TRY_BACK)
    for label, past in (("session", entry.session), (_FROM_SESSION, entry.source)):
        if past is not None:
            ref = Ref("session", past.id)
            yield Row(label, past.id, kind="link", ref=ref, opens=ref, key=label)


def _percent(chance: float) -> str:
    return "under 0.1 %" if chance < 0.001 else f"{chance * 100:.2g} %" if chance < 0.995 else "100 %"


def _text(label: str, text: str) -> Row:
    return Row(printable(label), printable(text), kind="text", key=label or text)

"""Answers to a finding: ride with it and say why, or set what mends it."""

import datetime as dt

from paddock_tui.facts.past import reason_before
from paddock_tui.on_demand import Later, load_later
from paddock_tui.pages.actions import ActionContext
from paddock_tui.pages.message_line import message_line
from paddock_tui.pages.review import from_before
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.rules import HOLD, SERIOUS, Finding
from paddock_tui.screens.action import Action, needs_session
from paddock_tui.screens.host import Host
from paddock_tui.screens.question import Question
from paddock_tui.text import printable

accepting, withdrawing = map(Later("paddock_tui.desk.edits.values"), ("accepting", "withdrawing"))
going_through = Later("paddock_tui.desk.day.gone_through")("going_through")
load_later("paddock_tui.desk.edits.remedies")


def _accept(host: Host) -> None:
    finding, ref = host.context().finding, host.place.subject
    if finding is None or ref is None:
        return
    if finding.accepted is not None:
        back = withdrawing(host.desk.files, ref, finding.rule, finding.subject)
        host.attempt(back or "it was accepted in an earlier session of the day: take it back there")
        return

    before = reason_before(host.desk.assembled(ref).situation.history, finding.rule, finding.subject)

    def answered(text: str) -> str:
        reason = text.strip() or (before[0] if before else "")
        if not reason:
            return "say why you ride with it, or escape"
        host.do(accepting(host.desk.files, ref, finding, reason, host.desk.now(), _initials(host, ref)))
        return ""

    said: tuple[str, ...] = (f"{finding.severity}: {message_line(finding)}",)
    if before:
        said = (*said, printable(f"{before[1]}: {before[0]}; enter alone takes it again"))
    host.ask(Question("why do you ride with it?", answered, declined="not accepted", said=said))


def _initials(host: Host, ref: Ref) -> str | None:
    named = host.desk.files.data(ref).get("rider")
    loaded = host.desk.files.read(Ref("rider", named)) if isinstance(named, str) else None
    return loaded.record.initials if loaded is not None and isinstance(loaded.record, Rider) else None


def _accept_off(context: ActionContext) -> str:
    if context.profile and not context.session:
        return "a profile's findings cannot be accepted: accept them in a session"
    if context.finding is None:
        return "there is no finding to accept: r shows the review"
    if context.finding.severity > SERIOUS:
        return "a hold stands until the fact is put right: enter goes to its row"
    if context.finding.severity < SERIOUS:
        return "only a serious finding needs an answer: f sets what fixes one"
    return ""


def _remedy(host: Host) -> None:
    finding, ref = host.context().finding, host.place.subject
    if finding is not None and ref is not None:
        refs = host.desk.assembled(ref).situation.refs
        from paddock_tui.desk.edits.remedies import mending

        host.attempt(mending(host.desk.files, finding, ref, refs) or "it stands so already")


def _remedy_off(context: ActionContext) -> str:
    if context.finding is None:
        return "there is no finding to fix: r shows the review"
    if not context.finding.remedy.puts:
        return f"no key can do this: {context.finding.remedy.text}"
    return ""


ACCEPT = Action(
    "accept",
    "a",
    "accept",
    "ride with a serious finding, and say why",
    _accept_off,
    hint=17,
    do=_accept,
)

REMEDY = Action(
    "remedy",
    "f",
    "apply remedy",
    "set what answers the finding, where values can",
    _remedy_off,
    hint=16,
    do=_remedy,
)


def _before(host: Host) -> None:
    """Answer together what was written down before today, but for what holds."""
    old = _from_before(host)
    ref = host.place.subject
    listed = from_before(host.desk.facts_of(host.desk.assembled(ref).situation)) if ref is not None else ()
    said = tuple(f"{one.severity}: {message_line(one)}" for one in old if one.severity < HOLD)
    said += tuple(printable(f"{one.severity}: {one.message}") for one in listed)
    if not said:
        host.board.say("nothing from before today is open but what holds: each is answered by itself")
        return

    def answered(text: str) -> str:
        if not text.strip():
            return "your initials, or escape"
        up_to = host.desk.now().date() - dt.timedelta(days=1)
        host.attempt(going_through(host.desk.files, up_to, text.strip()))
        return ""

    host.ask(Question("gone through all of these: your initials?", answered, declined="left open", said=said))


def _from_before(host: Host) -> list[Finding]:
    ref = host.place.subject
    today = host.desk.now().date()
    if ref is None:
        return []
    found = host.desk.facts_of(host.desk.assembled(ref).situation).get("open_matters")
    old = {(one.kind, one.subject) for one in found if one.since is not None and one.since < today}
    return [one for one in host.desk.review(ref).findings if (one.rule, one.subject) in old]


BEFORE = Action(
    "before",
    "",
    "answer what is older",
    "what is open from before: one step, initials",
    needs_session,
    do=_before,
)

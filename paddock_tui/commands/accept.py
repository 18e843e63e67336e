"""`accept`: ride with a serious finding, and say why; or take that back."""

import datetime as dt

from paddock_tui.commands.common import NOT_DONE, USAGE, CommandStopped, complain, find_ref, open_desk
from paddock_tui.commands.keeping import keep_and_say
from paddock_tui.desk import accepting, withdrawing
from paddock_tui.records.paths import Ref
from paddock_tui.records.people import Rider
from paddock_tui.rules import SERIOUS
from paddock_tui.text import printable


def accept(
    folder: str, rule: str, subject: str, reason: str | None, session: str | None, at: dt.datetime | None
) -> int:
    """Accept a serious finding of the session in hand; without a reason, take the acceptance back."""
    desk = open_desk(folder, at)
    ref = find_ref(desk, session, ("session",)) if session is not None else desk.session_in_hand()
    if ref is None:
        raise CommandStopped(NOT_DONE, "there is no session whose findings could be accepted")
    if reason is None:
        back = withdrawing(desk.files, ref, rule, subject)
        if back is None:
            raise CommandStopped(NOT_DONE, f"{printable(rule)} {printable(subject)} is not accepted in {ref}")
        return keep_and_say(desk, back)
    if not reason.strip():
        raise CommandStopped(USAGE, "say why you ride with it: --reason TEXT")
    findings = [one for one in desk.review(ref).findings if one.rule == rule]
    found = [one for one in findings if one.subject == subject]
    if not found:
        near = [f"  {one.rule} {one.subject}" for one in desk.review(ref).findings if one.to_answer]
        raise CommandStopped(
            NOT_DONE,
            f"there is no finding {printable(rule)} {printable(subject)} in {ref}",
            *(["  to answer are:", *near] if near else ["  none is to be answered"]),
        )
    if found[0].severity != SERIOUS:
        word = str(found[0].severity)
        said = "stands until it is put right" if word == "hold" else "needs no answer"
        complain((f"a {word} {said}: {found[0].message}", f"  {found[0].remedy.text}"))
        return NOT_DONE
    data = desk.files.data(ref).get("rider")
    rider = desk.files.read(Ref("rider", data)) if isinstance(data, str) else None
    initials = rider.record.initials if rider is not None and isinstance(rider.record, Rider) else None
    return keep_and_say(desk, accepting(desk.files, ref, found[0], reason, desk.now(), initials))

"""The session: its facts, in the order they become known."""

from paddock_tui.advice.beside_setup import beside_session
from paddock_tui.desk.debrief.lap_timing import WHY, forbidden
from paddock_tui.limits.pressures import OFF_TARGET_CAUTION
from paddock_tui.pages.advised import advised
from paddock_tui.pages.rows import Page
from paddock_tui.pages.session import session_page, without_laps
from paddock_tui.pages.session_pictures import with_session_pictures
from paddock_tui.screens.subject import SubjectContext


def make_page(about: SubjectContext) -> Page:
    no_laps = WHY if forbidden(about.desk.files, about.loaded.data) else ""
    page = without_laps(session_page(about.loaded, about.heading, about.units), no_laps)
    if about.asked.is_reading:
        return page
    page = advised(page, about.ref, beside_session(about.desk.about(about.ref, about.assembled)))
    situation = about.assembled.situation
    if situation.session is None:
        return page
    within = situation.limits[OFF_TARGET_CAUTION]
    return with_session_pictures(page, situation.session, situation.tyres, within, timed=not no_laps)

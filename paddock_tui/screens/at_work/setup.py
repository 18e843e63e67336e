"""The set-up of a session or a profile, with what advice says beside its rows."""

from paddock_tui.advice.beside_setup import beside_setup
from paddock_tui.advice.levels import starting_levels
from paddock_tui.advice.wet_package import starting_adjusters
from paddock_tui.desk.edits.values import bike_of
from paddock_tui.desk.sessions.compared import compared_set_ups
from paddock_tui.pages.advised import advised
from paddock_tui.pages.rows import Page
from paddock_tui.pages.session import set_up_page
from paddock_tui.pages.setup_picture import with_comparisons
from paddock_tui.screens.subject import SubjectContext


def make_page(about: SubjectContext) -> Page:
    where = f" · {about.loaded.name}" if about.ref.kind == "profile" else ""
    page = set_up_page(
        about.loaded, bike_of(about.desk.files, about.ref), f"{about.heading}{where}", about.units
    )
    if about.asked.is_reading:
        return page
    asked = about.desk.about(about.ref, about.assembled)
    page = advised(page, about.ref, beside_setup(asked))
    bike, setup = about.assembled.situation.bike, getattr(about.loaded.record, "setup", None)
    if bike is None or setup is None:
        return page
    others = tuple(compared_set_ups(about.desk.files, about.assembled.situation))
    return with_comparisons(page, bike, setup, starting_levels(asked), others, starting_adjusters(asked))

"""The cases of all rules, by rule id. A new rule brings its own here, or the tests fail."""

from tests.rules.case import Cases
from tests.rules.cases import aids, checklists, modes, organiser, possible, readiness

CASES: dict[str, Cases] = {
    **aids.CASES,
    **checklists.CASES,
    **modes.CASES,
    **organiser.CASES,
    **possible.CASES,
    **readiness.CASES,
}

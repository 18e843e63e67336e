"""What importing the package costs: a clean interpreter is asked what it has loaded."""

import subprocess
import sys


def run(code: str) -> None:
    subprocess.run([sys.executable, "-c", code], check=True)


def test_importing_and_everyday_reading_do_not_load_pint() -> None:
    run(
        "import sys, paddock_tui.quantities as q\n"
        "assert str(q.parse('2.10 bar')) == '2.10 bar'\n"
        "assert q.parse('2.10 bar').show('psi') == '30.5 psi'\n"
        "assert str(q.parse_pressure('2,1')) == '2.1 bar'\n"
        "assert not {'pint', 'difflib', 'rich', 'textual'} & set(sys.modules)"
    )


def test_pint_comes_with_the_first_unit_beyond_the_table() -> None:
    run(
        "import sys, paddock_tui.quantities as q\n"
        "assert q.parse('3 stone').dimension == 'mass'\n"
        "assert 'pint' in sys.modules"
    )

"""Modules that nobody asks anything of are not loaded, and are what they are once somebody does."""

import subprocess
import sys
from pathlib import Path

from paddock_tui.put_off import NAMES, UNUSED
from tests.sample import SAMPLE
from tests.widgets.wire import Wire

_OFF = """
import sys
from paddock_tui import put_off
put_off.begin(); put_off.begin()

def there():
    return [one for one in {*put_off.UNUSED, *put_off.NAMES} if one in sys.modules]

def off():
    loader = put_off._Loader
    return sorted(one for one in there() if isinstance(sys.modules[one].__loader__, loader))

def loaded():
    return sorted({*there()} - {*off()})
"""

EVERY = sorted({*UNUSED, *NAMES})


def said(program: str) -> str:
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert not done.stderr, done.stderr
    return done.stdout


_QUICK = "from paddock_tui import quick_classes\nassert quick_classes.begin()\n"
_CHECK = f"paddock_tui.__main__.main(['check', {str(SAMPLE)!r}, '-q'])"
_TOLD = "print(loaded(), *off(), sep='\\n')"


def test_the_framework_the_libraries_and_a_check_load_none_of_them_and_import_them_all() -> None:
    """Of the reading of signatures the framework takes names that it uses at once."""
    framework, *there = said(
        f"{_OFF}\n{_QUICK}import paddock_tui.__main__, paddock_tui.app\n{_TOLD}"
    ).splitlines()
    check, *in_check = said(f"{_OFF}\nimport paddock_tui.__main__\n{_CHECK}\n{_TOLD}").splitlines()

    assert framework == "['inspect']"
    assert check == "[]"
    assert sorted({*there, *in_check}) == EVERY


def test_a_whole_run_on_a_terminal_needs_none_of_them(garage: Path, tmp_path: Path) -> None:
    told = tmp_path / "told"
    code = f"""{_OFF}
import os
own = os._exit
def ends(status):
    open({str(told)!r}, "w").write(" ".join(loaded()))
    own(status)
os._exit = ends
from paddock_tui.__main__ import script
sys.argv = ["paddock-tui", {str(garage)!r}, "--at", "2026-06-20T12:55:30"]
script()
"""
    with Wire(code, loaded=False) as wire:
        wire.read_until("? help")
        wire.after("p", mark="conditions")
        wire.after("+")
        wire.type("q")
        wire.ended()

    assert told.read_text().split() == ["inspect"]


def test_each_is_the_whole_module_once_a_name_is_asked_of_it() -> None:
    """One interpreter puts them all off, another does not."""
    ready = "import attrs, asyncio, json\nfrom importlib import import_module\n"
    whole = (
        f"for name in {EVERY!r}:\n"
        " made = import_module(name)\n"
        " getattr(made, 'no_such_name', None)\n"
        " own = made.__spec__.loader is made.__loader__\n"
        " print(name, hasattr(made, 'no_such_name'), own, type(made), sorted(dir(made)))\n"
    )

    off, *told = said(f"{_OFF}\n{ready}\nprint(off())\n{whole}\nprint(off())").splitlines()
    plain = said(f"{ready}\n{whole}").splitlines()

    # What nobody imported yet is put off when it is imported.
    assert {"asyncio.sslproto", "attr.validators", "ssl"} <= set(eval(off))
    assert told == [*plain, "[]"]
    assert len(plain) == len(EVERY)
    assert all(" False True <class 'module'> [" in line for line in plain)


def test_threads_that_ask_together_all_find_it_whole() -> None:
    program = f"""{_OFF}
import threading, mimetypes
sys.setswitchinterval(1e-6)
at_once, found = threading.Barrier(8), []
def ask():
    at_once.wait()
    found.append(mimetypes.guess_type("page.html")[0])
threads = [threading.Thread(target=ask) for _ in range(8)]
for one in threads: one.start()
for one in threads: one.join()
print(found == ["text/html"] * 8)
"""
    assert said(program) == "True\n"


def test_what_cannot_be_there_is_said_to_whoever_imports_it() -> None:
    program = f"""{_OFF}
put_off.UNUSED["ssl"] = "no_such_module"
try:
    sys.modules["_ssl"] = None
    import ssl
except ImportError:
    print("not there")
"""
    assert said(program) == "not there\n"


def test_whoever_takes_names_of_it_at_once_is_given_stand_ins_that_do_as_what_they_stand_for() -> None:
    """What is made of nothing, asked for its kind, stood upon, and called: by the stand-in and by itself."""
    program = f"""{_OFF}
from textual.command import CommandPalette, Provider
from urllib.parse import quote_from_bytes
class Mine(Provider):
    "Mine."
    async def search(self, query):
        return super().__init__
print({{"textual.command", "urllib.parse"}} <= set(off()))
print(isinstance("a", Provider), isinstance("a", Mine), issubclass(str, Provider))
print({{"textual.command", "urllib.parse"}} <= set(off()))
print(quote_from_bytes(b"a b"), "urllib.parse" in off(), "textual.command" in off())
print(Mine.__name__, issubclass(Mine.__mro__[0], Provider), "textual.command" in off())
import textual.command as whole
from textual.screen import Screen
one = Mine(Screen())
print(type(one).__mro__[1] is whole.Provider, isinstance(one, Provider), isinstance(one, Mine))
print(isinstance(one, CommandPalette), isinstance(CommandPalette(), whole.CommandPalette))
"""
    assert said(program).splitlines() == [
        "True",
        "False False False",
        "True",
        "a%20b False True",
        "Mine True False",
        "True True True",
        "False True",
    ]


def test_no_stand_in_stands_for_what_is_caught_or_is_no_function_nor_class() -> None:
    program = (
        "from importlib import import_module\n"
        f"for module, names in {NAMES!r}.items():\n"
        " for name in names:\n"
        "  one = getattr(import_module(module), name)\n"
        "  if not callable(one) or (isinstance(one, type) and issubclass(one, BaseException)):\n"
        "   print(module, name)\n"
    )
    assert said(program) == "textual.command CommandListItem\n"  # in annotations alone

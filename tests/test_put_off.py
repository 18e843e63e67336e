"""Modules that nobody asks anything of are not loaded, and are what they are once somebody does."""

import subprocess
import sys
from pathlib import Path

from paddock_tui.put_off import UNUSED
from tests.widgets.wire import Wire

_OFF = """
import sys
from paddock_tui import put_off
put_off.begin(); put_off.begin()

def off():
    return sorted(one for one in put_off.UNUSED if getattr(sys.modules.get(one), "__loader__", None).__class__
                  is put_off._Loader)
"""


def said(program: str) -> str:
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=False)
    assert not done.stderr, done.stderr
    return done.stdout


def test_the_framework_and_the_libraries_load_none_of_them() -> None:
    quick = "from paddock_tui import quick_classes\nassert quick_classes.begin()\n"

    assert said(f"{_OFF}\n{quick}import paddock_tui.app\nprint(off())") == f"{sorted(UNUSED)}\n"


def test_a_whole_run_on_a_terminal_needs_none_of_them(garage: Path, tmp_path: Path) -> None:
    told = tmp_path / "told"
    code = f"""{_OFF}
import os
own = os._exit
def ends(status):
    open({str(told)!r}, "w").write(" ".join(off()))
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

    assert told.read_text().split() == sorted(UNUSED)


def test_each_is_the_whole_module_once_a_name_is_asked_of_it() -> None:
    """One interpreter puts them all off, another does not."""
    ready = "import attrs, asyncio, json\nfrom importlib import import_module\n"
    whole = (
        f"for name in {sorted(UNUSED)!r}:\n"
        " made = import_module(name)\n"
        " own = made.__spec__.loader is made.__loader__\n"
        " print(name, hasattr(made, 'no_such_name'), own, type(made), sorted(dir(made)))\n"
    )

    off, *told = said(f"{_OFF}\n{ready}\nprint(off())\n{whole}\nprint(off())").splitlines()
    plain = said(f"{ready}\n{whole}").splitlines()

    # What nobody imported yet is put off when it is imported.
    assert {"asyncio.sslproto", "attr.validators", "ssl"} <= set(eval(off))
    assert told == [*plain, "[]"]
    assert len(plain) == len(UNUSED)
    assert all(" False True <class 'module'> [" in line for line in plain)


def test_threads_that_ask_together_all_find_it_whole() -> None:
    program = f"""{_OFF}
import threading, ipaddress
sys.setswitchinterval(1e-6)
at_once, found = threading.Barrier(8), []
def ask():
    at_once.wait()
    found.append(ipaddress.ip_network("10.0.0.0/8").num_addresses)
threads = [threading.Thread(target=ask) for _ in range(8)]
for one in threads: one.start()
for one in threads: one.join()
print(found == [2 ** 24] * 8)
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

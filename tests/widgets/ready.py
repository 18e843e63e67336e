"""A process that has loaded the program and forks a fresh one for each test that needs it at a terminal.

To load the program takes longer than most of what tests at a terminal do with it. Each forked program has
its own terminal, its own standard streams and its own end; what loading itself does at a terminal is tested
with interpreters that start from nothing (`Wire` with `loaded=False`).
"""

import json
import os
import signal
import socket
import subprocess
import sys
import time
from functools import cache
from pathlib import Path


class Forked:
    """A program that was forked, with what tests ask of a process they started."""

    def __init__(self, ready: "Ready", pid: int) -> None:
        self.ready, self.pid = ready, pid
        self.returncode: int | None = None

    def poll(self) -> int | None:
        """Return the exit status once it has ended, below zero for a signal."""
        if self.returncode is None:
            status = self.ready.ask({"poll": self.pid})
            self.returncode = None if status is None else os.waitstatus_to_exitcode(status)
        return self.returncode

    def wait(self, timeout: float = 20.0) -> int:
        """Wait for the end and return the exit status; TimeoutError after `timeout` seconds."""
        end = time.monotonic() + timeout
        while (status := self.poll()) is None:
            if time.monotonic() > end:
                raise TimeoutError(self.pid)
            time.sleep(0.01)
        return status

    def send_signal(self, number: signal.Signals) -> None:
        """Send it a signal, unless it has ended."""
        if self.poll() is None:
            os.kill(self.pid, number)

    def kill(self) -> None:
        """End it at once."""
        self.send_signal(signal.SIGKILL)


class Ready:
    """The process that forks; it ends with the one that started it."""

    def __init__(self) -> None:
        """Start it and wait until it has loaded the program."""
        self.near, far = socket.socketpair()
        env = {**os.environ, "PYTHONPATH": str(Path.cwd())}
        code = _SERVER.format(channel=far.fileno())
        self.process = subprocess.Popen([sys.executable, "-c", code], env=env, pass_fds=[far.fileno()])
        far.close()
        assert self.near.recv(5) == b"ready"

    def ask(self, what: dict[str, object], *handed: int) -> int | None:
        """Ask it one thing, handing over open files, and return its answer."""
        socket.send_fds(self.near, [json.dumps(what).encode() + b"\n"], list(handed))
        answer = self.near.recv(64)
        assert answer, "the process that forks has ended"
        found = json.loads(answer)
        assert found is None or isinstance(found, int)
        return found

    def start(self, code: str, terminal: int, env: dict[str, str]) -> Forked:
        """Start a program on a terminal, with its environment, and return it."""
        pid = self.ask({"code": code, "env": env}, terminal)
        assert pid is not None
        return Forked(self, pid)


@cache
def ready() -> Ready:
    """Return this test process's own, started at the first need."""
    return Ready()


_SERVER = """
import contextlib, fcntl, gc, importlib, json, os, pkgutil, signal, socket, sys, termios, threading, traceback
import paddock_tui.__main__, textual.app, textual.drivers.linux_driver
for found in pkgutil.walk_packages(paddock_tui.__path__, "paddock_tui."):
    importlib.import_module(found.name)
gc.collect()
gc.freeze()

def serve(channel):
    channel.sendall(b"ready")
    while True:
        sent, handed, _, _ = socket.recv_fds(channel, 1 << 16, 1)
        if not sent:
            os._exit(0)
        while not sent.endswith(b"\\n"):
            sent += channel.recv(1 << 16)
        asked = json.loads(sent)
        if "poll" in asked:
            pid, status = os.waitpid(asked["poll"], os.WNOHANG)
            channel.sendall(json.dumps(status if pid else None).encode())
            continue
        pid = os.fork()
        if not pid:
            channel.close()
            os.setsid()
            os.environ.clear()
            os.environ.update(asked["env"])
            for number in (0, 1, 2):
                os.dup2(handed[0], number)
            os.close(handed[0])
            fcntl.ioctl(0, termios.TIOCSCTTY, 0)
            signal.signal(signal.SIGHUP, signal.SIG_DFL)
            sys.stdin = sys.__stdin__ = open(0, "r", closefd=False)
            sys.stdout = sys.__stdout__ = open(1, "w", buffering=1, closefd=False)
            sys.stderr = sys.__stderr__ = open(2, "w", buffering=1, closefd=False)
            return asked["code"]
        os.close(handed[0])
        channel.sendall(json.dumps(pid).encode())

code = serve(socket.socket(fileno={channel}))
status = 0
try:
    exec(code, {{"__name__": "__main__"}})
except SystemExit as stop:
    status = stop.code or 0
except BaseException:
    traceback.print_exc()
    status = 1
for thread in threading.enumerate():
    if not thread.daemon and thread is not threading.main_thread():
        thread.join()
with contextlib.suppress(OSError, ValueError):
    sys.stdout.flush()
os._exit(status)
"""

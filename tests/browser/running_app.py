"""The app open while a test runs: in a thread of the test's process, or in a process that can be killed."""

import contextlib
import os
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from http.client import HTTPConnection
from pathlib import Path

import uvicorn
from starlette.types import ASGIApp, Receive, Scope, Send

from at_desk import make_desk
from plankwright.bootstrap import begin_search, set_up_bench
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.workshop.jobs.ports import Store

_PATIENCE_S = 60
"""A busy machine takes its time; whatever has not come by then does not come. [s]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenApp:
    """An app that is open.

    Parameters
    ----------
    url
        Where it is asked, without a slash at the end.
    desk
        What its screens work with.
    """

    url: str
    desk: Desk

    @property
    def store(self) -> Store:
        """What it keeps."""
        return self.desk.store


def real_desk(folder: Path) -> Desk:
    """Give a desk on a store of its own; searches are real and go on in processes of their own."""
    return make_desk(folder, search=set_up_bench().search, begin=begin_search)


class FromAfar:
    """An app that takes whoever asks it for another machine on the network.

    Parameters
    ----------
    app
        The app.
    """

    def __init__(self, app: ASGIApp) -> None:
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Have the app answer."""
        # An address of a home network, out of those that are nobody's (RFC 5737).
        await self._app({**scope, "client": ("192.0.2.20", 50_000)}, receive, send)


@contextlib.contextmanager
def opened(desk: Desk, *, far: str = "") -> Iterator[OpenApp]:
    """Have the app open at a free port, in a thread.

    Parameters
    ----------
    desk
        What its screens work with.
    far
        The name that it is asked by as from another machine; asked from this one when left out.
    """
    app: ASGIApp = FromAfar(make_app(desk, [far])) if far else make_app(desk)
    with _free_socket() as listening:
        config = uvicorn.Config(
            app, log_config=None, access_log=False, ws="none", timeout_graceful_shutdown=1
        )
        server = uvicorn.Server(config)
        thread = threading.Thread(target=server.run, args=([listening],), name="app", daemon=True)
        thread.start()
        try:
            _wait_for(lambda: server.started)
            yield OpenApp(url=f"http://{far or 'localhost'}:{listening.getsockname()[1]}", desk=desk)
        finally:
            server.should_exit = True
            thread.join()


class AppApart:
    """The app as it is started from a terminal, in a process of its own.

    Parameters
    ----------
    store
        The file of jobs.
    """

    def __init__(self, store: Path) -> None:
        with _free_socket() as listening:
            self._port = int(listening.getsockname()[1])
        self.url = f"http://localhost:{self._port}"
        self._command = [
            *(sys.executable, "-m", "plankwright", "app", "--no-browser", "--alone"),
            *("--store", str(store), "--port", str(self._port)),
        ]
        self._process: subprocess.Popen[bytes] | None = None

    def start(self) -> None:
        """Start it, and wait until it answers."""
        # In a session of its own, so that whatever it begins can be ended with it.
        self._process = subprocess.Popen(
            self._command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True
        )
        _wait_for(lambda: self._answers() or self._ended())

    def kill(self) -> None:
        """End it as a power cut does; what it began ends by itself or not at all."""
        if self._process is not None:
            self._process.kill()
            self._process.wait()

    def end(self) -> None:
        """End it, and all that it began."""
        if self._process is not None:
            with contextlib.suppress(ProcessLookupError):
                os.killpg(self._process.pid, signal.SIGKILL)
            self._process.wait()

    def _ended(self) -> bool:
        if self._process is not None and self._process.poll() is not None:
            raise ChildProcessError("The app ended before it answered.")
        return False

    def _answers(self) -> bool:
        asking = HTTPConnection("localhost", self._port, timeout=_PATIENCE_S)
        try:
            asking.request("GET", "/")
            return asking.getresponse().status < HTTP_FAULT
        except OSError:
            return False
        finally:
            asking.close()


HTTP_FAULT = 500
"""From here on an answer says that the fault is ours."""


def _free_socket() -> socket.socket:
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    listening.bind(("127.0.0.1", 0))
    return listening


def _wait_for(holds: Callable[[], bool]) -> None:
    end = time.monotonic() + _PATIENCE_S
    while not holds():
        if time.monotonic() > end:
            raise TimeoutError("The app did not answer in time.")
        time.sleep(0.02)

"""Open the app: where it listens, how a phone finds it, and the browser on this machine."""

import contextlib
import os
import socket
import threading
import webbrowser
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import ClassVar

import uvicorn

from plankwright.bootstrap import Bench, begin_search
from plankwright.errors import ExitCode, PlankwrightError
from plankwright.store import open_book
from plankwright.web.app import make_app
from plankwright.web.desk import Desk
from plankwright.web.door import Door, new_word
from plankwright.web.open_already import note_open, open_already
from plankwright.web.searching import SearchesUnderWay
from plankwright.workshop.jobs.ports import Store

PORT = 8642
"""Where the app listens, unless that is taken or another is asked for."""

_WORD = "word"
_TRIED = 20
_NOBODY = "192.0.2.1"
"""An address that belongs to nobody (RFC 5737): nothing is sent to it."""


class PortTakenError(PlankwrightError):
    """Something else listens where the app was told to."""

    exit_code: ClassVar[int] = ExitCode.FILE_TROUBLE


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """How the app is opened.

    Parameters
    ----------
    store
        The file of jobs.
    port
        Where it listens; the first that is free, from `PORT` on, when left out.
    alone
        Whether only this machine may ask for it.
    browse
        Whether a browser is opened.
    """

    store: Path
    port: int | None = None
    alone: bool = False
    browse: bool = True


def open_app(bench: Bench, opening: Opening, tell: Callable[[str], None]) -> None:
    """Open the app and answer until Ctrl-C.

    Parameters
    ----------
    bench
        The rooms wired together.
    opening
        How it is opened.
    tell
        Says something to whoever started it.

    Raises
    ------
    StoreError
        If the file of jobs cannot be used.
    PortTakenError
        If something else listens there.
    """
    store = open_book(opening.store, bench.files)
    if already := open_already(store):
        tell(f"Plankwright is open with these jobs already, at {already}")
        _browse(opening, already)
        return
    listening = _listen("127.0.0.1" if opening.alone else "0.0.0.0", opening.port)  # noqa: S104 - phones join
    port = listening.getsockname()[1]
    here = f"http://localhost:{port}"
    address = "" if opening.alone else _own_address()
    desk = Desk(
        bench=bench,
        store=store,
        searches=SearchesUnderWay(store, begin_search),
        address=f"http://{address}:{port}" if address else "",
        door=Door() if opening.alone else _door(store),
    )
    tell(f"Plankwright is open at {here}")
    if desk.address:
        tell(f"A phone on the same network joins by the code that {here}/phone shows.")
    tell(f"Jobs are kept in {opening.store}. Ctrl-C closes it.")
    _browse(opening, here)
    config = uvicorn.Config(
        make_app(desk, [address] if address else []),
        log_level="warning",
        access_log=False,
        server_header=False,
        timeout_graceful_shutdown=2,
    )
    note_open(store, here)
    # Ctrl-C is how the app is closed, and no interruption of anything.
    with contextlib.closing(listening), contextlib.suppress(KeyboardInterrupt):
        uvicorn.Server(config).run(sockets=[listening])
    note_open(store, "")
    tell("Closed. All that was entered is kept.")


def _browse(opening: Opening, address: str) -> None:
    if opening.browse:
        threading.Timer(0.5, webbrowser.open, [address]).start()


def _door(store: Store) -> Door:
    """Give the door with the word of last time, so that phones need not join anew each day."""
    return Door(store.setting(_WORD, new_word), partial(store.put_setting, _WORD))


def _listen(host: str, port: int | None) -> socket.socket:
    for number in _ports(port):
        listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        if os.name != "nt":  # There it would let in whoever else wants the port.
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listening.bind((host, number))
            listening.listen()
        except OSError:
            listening.close()
        else:
            return listening
    where = f"port {port}" if port else f"ports {PORT} to {PORT + _TRIED - 1}"
    raise PortTakenError(f"Something else listens at {where}: name another with --port.")


def _ports(port: int | None) -> Iterator[int]:
    yield from range(PORT, PORT + _TRIED) if port is None else (port,)


def _own_address() -> str:
    """Give the address of this machine on its network; empty when it is on none."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect((_NOBODY, 9))
        except OSError:
            return ""
        return str(asking.getsockname()[0])

"""The desk served on this machine until it is ended."""

from __future__ import annotations

import secrets
import signal
import socket
import sys
import webbrowser
from pathlib import Path

from spoonproof.desk.app import make_app
from spoonproof.desk.desk import Desk


def serve(root: Path, port: int, browser: bool) -> int:
    """Print the address, open it unless told not to, and serve. ``port`` 0: any that is free. Raises OSError."""
    import uvicorn

    from spoonproof.desk.patience import Patient

    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    listening.bind(("127.0.0.1", port))
    port = listening.getsockname()[1]
    token = secrets.token_urlsafe(24)
    desk = Desk(root)
    config = uvicorn.Config(
        make_app(desk, token, port),
        log_level="warning",
        access_log=False,
        server_header=False,
        lifespan="off",
        ws="none",
        http=Patient,
        timeout_graceful_shutdown=3,
    )
    server = uvicorn.Server(config)
    address = f"http://127.0.0.1:{port}/?token={token}"
    listening.listen(64)
    print(f"The desk is open at\n  {address}\nOnly this machine can reach it. End it with Ctrl+C.", flush=True)
    if browser and not webbrowser.open(address):
        print("No browser could be opened: copy the address into one.", file=sys.stderr)
    before = signal.getsignal(signal.SIGINT)
    try:
        server.run(sockets=[listening])
    except KeyboardInterrupt:
        pass
    finally:
        signal.signal(signal.SIGINT, before)
        desk.bench.stop()
    return 0

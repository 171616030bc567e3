"""The language server: messages in, answers out. All work is done one thing at a time on a thread of its own, so
that reading messages never waits for a check, and what was found of a text that has changed since is dropped."""

from __future__ import annotations

import asyncio
import os
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any, BinaryIO, TypeVar

from lsprotocol import types
from pygls.exceptions import JsonRpcException
from pygls.lsp.server import LanguageServer
from pygls.protocol import LanguageServerProtocol, lsp_method
from pygls.uris import to_fs_path

from spoonproof import __version__
from spoonproof.editor.bench import Bench, Look, OpenText
from spoonproof.editor.completion import completion
from spoonproof.editor.diagnostics import FIX_ALL, actions, diagnostics
from spoonproof.editor.places import UTF16, Encoding, changed
from spoonproof.editor.told import hover
from spoonproof.editor.ways import definition, outline
from spoonproof.folder import ChannelNotFound, find_channel
from spoonproof.model.text import Document

T = TypeVar("T")
DELAY = 0.04
"""Seconds of quiet after a keystroke before the text is looked at."""
_WATCHED = ("**/channel.yaml", "**/recipes/**/*.md", "**/claims/*.yaml", "**/claims/*.csv", "**/shared/**")


class _Protocol(LanguageServerProtocol):
    """The protocol with our own keeping of texts: theirs breaks lines at characters that end no line here."""

    def structure_message(self, data: dict[str, Any]) -> Any:
        """A message; a request that can't be read is answered with an error, else its editor would wait for ever."""
        try:
            return super().structure_message(data)
        except JsonRpcException as error:
            number = data.get("id")
            if isinstance(data.get("method"), str) and isinstance(number, int | str):
                self._send_response(number, None, error.to_response_error())
            raise

    @lsp_method(types.TEXT_DOCUMENT_DID_OPEN)
    def lsp_text_document__did_open(self, params: types.DidOpenTextDocumentParams) -> Any:
        yield self.fm.features[types.TEXT_DOCUMENT_DID_OPEN], (params,), None

    @lsp_method(types.TEXT_DOCUMENT_DID_CHANGE)
    def lsp_text_document__did_change(self, params: types.DidChangeTextDocumentParams) -> Any:
        yield self.fm.features[types.TEXT_DOCUMENT_DID_CHANGE], (params,), None

    @lsp_method(types.TEXT_DOCUMENT_DID_CLOSE)
    def lsp_text_document__did_close(self, params: types.DidCloseTextDocumentParams) -> Any:
        yield self.fm.features[types.TEXT_DOCUMENT_DID_CLOSE], (params,), None


class EditorServer(LanguageServer):
    """Open texts, the bench they are looked at on, and what is on its way."""

    def __init__(self, delay: float = DELAY) -> None:
        super().__init__("spoonproof", __version__, protocol_cls=_Protocol)
        self.delay = delay
        self.texts: dict[str, OpenText] = {}
        self.bench = Bench()
        self.stopped_in_order = False
        self._worker = ThreadPoolExecutor(max_workers=1, thread_name_prefix="bench")
        self._due: dict[str, asyncio.TimerHandle] = {}

    @property
    def encoding(self) -> Encoding:
        """The unit of columns that was agreed on."""
        return self.server_capabilities.position_encoding or UTF16

    def open(self, uri: str, version: int, text: str) -> None:
        """A text was opened."""
        path = _path_of(uri) or Path("untitled.md").absolute()
        self.texts[uri] = OpenText(uri, path, version, Document(path.name, text))
        self.due(uri, 0.0)

    def change(self, params: types.DidChangeTextDocumentParams) -> None:
        """A text was changed; a change of a text that is not open is passed over."""
        before = self.texts.get(params.text_document.uri)
        if before is None:
            return
        document = changed(before.document, params.content_changes, self.encoding)
        self.texts[before.uri] = OpenText(before.uri, before.path, params.text_document.version, document)
        self.due(before.uri, self.delay)

    def close(self, uri: str) -> None:
        """A text was closed: its findings go."""
        text = self.texts.pop(uri, None)
        if text is not None:
            self._worker.submit(self.bench.close, text)
            self._send(uri, None, [])

    def due(self, uri: str, delay: float) -> None:
        """Look at a text after ``delay`` seconds, unless it changes again before."""
        waiting = self._due.pop(uri, None)
        if waiting is not None:
            waiting.cancel()
        self._due[uri] = asyncio.get_running_loop().call_later(delay, self._start, uri)

    def _start(self, uri: str) -> None:
        self._due.pop(uri, None)
        loop = asyncio.get_running_loop()
        self._worker.submit(self._work, uri, loop)

    def _work(self, uri: str, loop: asyncio.AbstractEventLoop) -> None:
        """On the bench's thread."""
        text = self.texts.get(uri)
        if text is None:
            return
        try:
            found = diagnostics(self.bench.look(text), self.encoding)
            others = self.bench.resting_on(text.path)
        except Exception as error:  # ours, not the writer's: say so and stay
            found, others = [_our_fault(error)], []
        loop.call_soon_threadsafe(self._found, text, found, others)

    def _found(self, text: OpenText, found: list[types.Diagnostic], others: list[str]) -> None:
        if self.texts.get(text.uri) is not text:
            return  # it has changed while it was looked at; another look is due
        self._send(text.uri, text.version, found)
        for uri in others:
            if uri in self.texts:
                self.due(uri, self.delay)

    def _send(self, uri: str, version: int | None, found: list[types.Diagnostic]) -> None:
        self.text_document_publish_diagnostics(types.PublishDiagnosticsParams(uri, found, version))

    async def on_bench(self, work: Callable[[Look], T], uri: str) -> T | None:
        """``work`` done on the look of an open text; None when it is not open."""
        text = self.texts.get(uri)
        if text is None:
            return None
        loop = asyncio.get_running_loop()
        return await loop.run_in_executor(self._worker, lambda: work(self.bench.look(text)))

    def warm(self) -> None:
        """Load tables and register before they are needed, for the folder the editor was opened on."""
        root = _path_of(self.workspace.root_uri) if self.workspace.root_uri else None
        try:
            self._worker.submit(self.bench.warm, find_channel(root or Path.cwd()))
        except ChannelNotFound:
            return

    def saved(self, uri: str) -> None:
        """A file changed on the disk: everything open is looked at again."""
        path = _path_of(uri)
        if path is None:
            return
        self._worker.submit(self.bench.saved, path)
        for each in self.texts:
            self.due(each, self.delay)

    def stop(self) -> None:
        """No more work."""
        self.stopped_in_order = True
        for waiting in self._due.values():
            waiting.cancel()
        self._worker.shutdown(wait=False, cancel_futures=True)


def _path_of(uri: str) -> Path | None:
    """The file that an address means; None where it means none, or is no address."""
    try:
        path = to_fs_path(uri)
    except ValueError:  # a bracket that opens and does not close
        return None
    return Path(path).absolute() if path else None


def _our_fault(error: Exception) -> types.Diagnostic:
    words = f"Our fault, not yours: this text could not be checked ({type(error).__name__}: {error}). Please report it."
    nowhere = types.Range(types.Position(0, 0), types.Position(0, 1))
    return types.Diagnostic(nowhere, words, types.DiagnosticSeverity.Error, "internal-error", source="spoonproof")


def make_server(delay: float) -> EditorServer:
    """The server with everything it answers."""
    server = EditorServer(delay)
    _texts(server)
    _questions(server)
    return server


def _texts(server: EditorServer) -> None:
    @server.feature(types.INITIALIZED)
    async def initialized(_: types.InitializedParams) -> None:
        server.warm()
        workspace = server.client_capabilities.workspace
        watched = workspace.did_change_watched_files if workspace is not None else None
        if watched is not None and watched.dynamic_registration:
            watchers = [types.FileSystemWatcher(glob_pattern=pattern) for pattern in _WATCHED]
            options = types.DidChangeWatchedFilesRegistrationOptions(watchers=watchers)
            one = types.Registration("files", types.WORKSPACE_DID_CHANGE_WATCHED_FILES, options)
            await server.client_register_capability_async(types.RegistrationParams([one]))

    @server.feature(types.TEXT_DOCUMENT_DID_OPEN)
    def opened(params: types.DidOpenTextDocumentParams) -> None:
        server.open(params.text_document.uri, params.text_document.version, params.text_document.text)

    @server.feature(types.TEXT_DOCUMENT_DID_CHANGE)
    def change(params: types.DidChangeTextDocumentParams) -> None:
        server.change(params)

    @server.feature(types.TEXT_DOCUMENT_DID_CLOSE)
    def close(params: types.DidCloseTextDocumentParams) -> None:
        server.close(params.text_document.uri)

    @server.feature(types.TEXT_DOCUMENT_DID_SAVE)
    def saved(params: types.DidSaveTextDocumentParams) -> None:
        server.saved(params.text_document.uri)

    @server.feature(types.WORKSPACE_DID_CHANGE_WATCHED_FILES)
    def elsewhere(params: types.DidChangeWatchedFilesParams) -> None:
        for event in params.changes:
            server.saved(event.uri)

    @server.feature(types.SHUTDOWN)
    def shutdown(_: None = None) -> None:
        server.stop()


def _questions(server: EditorServer) -> None:
    def asked(method: str, answer: Callable[[Look, Any], Any], options: Any = None) -> None:
        """Have ``answer`` answer a request about an open text, with what it asks."""

        async def told(params: Any) -> Any:
            return await server.on_bench(lambda look: answer(look, params), params.text_document.uri)

        server.feature(method, options)(told)

    completing = types.CompletionOptions(trigger_characters=[" ", ":", "{"])
    fixing = types.CodeActionOptions(code_action_kinds=[types.CodeActionKind.QuickFix, FIX_ALL])
    asked(types.TEXT_DOCUMENT_HOVER, lambda look, ask: hover(look, ask.position, server.encoding))
    asked(types.TEXT_DOCUMENT_COMPLETION, lambda look, ask: completion(look, ask.position, server.encoding), completing)
    asked(types.TEXT_DOCUMENT_DEFINITION, lambda look, ask: definition(look, ask.position, server.encoding))
    asked(types.TEXT_DOCUMENT_DOCUMENT_SYMBOL, lambda look, _: outline(look, server.encoding))
    asked(types.TEXT_DOCUMENT_CODE_ACTION, lambda look, ask: actions(look, ask, server.encoding), fixing)


def serve(delay: float = DELAY) -> int:
    """Serve on standard input and output until told to exit: 0 after an orderly shutdown, else 1.

    Whatever else would be printed goes to standard error: on standard output there is nothing but the protocol.
    """
    out: BinaryIO = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)
    sys.stdout = sys.stderr
    server = make_server(delay)
    server.start_io(sys.stdin.buffer, out)
    return 0 if server.stopped_in_order else 1

"""One server for the messages of an editor that errs or is ill-meant."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.editor.client import Client


@pytest.fixture(scope="session")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Client]:
    """One server for all: what one test sends has to leave it whole for the next."""
    from tests.editor.test_server import CHANNEL  # not above: without the extra these modules stand aside

    folder = tmp_path_factory.mktemp("channel")
    (folder / "recipes").mkdir()
    (folder / "channel.yaml").write_text(CHANNEL, encoding="utf-8")
    with Client(folder) as made:
        yield made
        assert made.leave() == 0


@pytest.fixture
def client(server: Client) -> Iterator[Client]:
    """The server; after the test it must still find the claim of a text."""
    from tests.editor.test_hostile import CLAIM
    from tests.editor.test_server import NAME, codes

    yield server
    server.close_all()
    assert [code for code in codes(server.open(NAME, CLAIM)) if code.startswith("claim-")]
    server.close_all()

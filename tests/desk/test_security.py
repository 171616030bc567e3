"""Over plain HTTP: who may not speak to the desk, and what it will not hand out."""

from __future__ import annotations

import asyncio
import json
import socket
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from starlette.types import Message

from spoonproof.desk.app import make_app
from spoonproof.desk.desk import Desk
from tests.desk.conftest import Served, new_channel

SLUG = "potato-and-courgette-mash"


@pytest.fixture(scope="module")
def desk(asked_only: Served) -> Served:
    return asked_only


@pytest.fixture
def lures(desk: Served) -> Iterator[Path]:
    """Links in the folder of recipes that lead out of it, to a file that holds a secret."""
    outside = desk.root.parent / "out.md"
    outside.write_text("---\ntitle: SECRET\n---\n", encoding="utf-8")
    made = [desk.root / "recipes" / name for name in ("linked.md", "linked-folder", ".hidden.md")]
    made[0].symlink_to(outside)
    made[1].symlink_to(desk.root.parent)
    made[2].write_text("SECRET", encoding="utf-8")
    yield outside
    for path in made:
        path.unlink()


def test_nothing_is_answered_without_the_token(desk: Served) -> None:
    for path in ("/", f"/write/{SLUG}", "/own/desk.js", "/out/state", "/register", "/nowhere"):
        answer = desk.ask("GET", path)
        assert answer.code == 403 and "potato" not in answer.body.lower()
    assert desk.ask("GET", "/", {"X-Desk-Token": desk.token[:-1]}).code == 403
    assert desk.ask("GET", "/?token=wrong").code == 403
    assert desk.ask("GET", f"/write/{SLUG}?token={desk.token}").code == 403, "only the front door takes it"
    assert desk.ask("GET", "/", {"X-Desk-Token": desk.token}).code == 200


def test_the_way_in_leaves_the_token_in_a_strict_cookie_only(desk: Served) -> None:
    answer = desk.ask("GET", f"/?token={desk.token}")
    assert answer.code == 303 and answer.headers["location"] == "/"
    cookie = answer.headers["set-cookie"]
    assert "HttpOnly" in cookie and "samesite=strict" in cookie.lower()
    assert desk.ask("GET", "/", {"Cookie": cookie.partition(";")[0]}).code == 200


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1", "127.0.0.1:1", "localhost.evil.example:{port}", ""])
def test_a_name_that_points_here_is_refused(desk: Served, host: str) -> None:
    headers = {"Host": host.format(port=desk.port), "X-Desk-Token": desk.token}
    assert desk.ask("GET", "/", headers).code in (400, 421)


def test_its_own_names_are_taken(desk: Served) -> None:
    for host in (f"localhost:{desk.port}", f"127.0.0.1:{desk.port}"):
        assert desk.ask("GET", "/", {"Host": host, "X-Desk-Token": desk.token}).code == 200


@pytest.mark.parametrize("origin", ["https://evil.example", "null", "http://127.0.0.1:1", "http://localhost"])
def test_another_site_can_change_nothing(desk: Served, origin: str) -> None:
    cookie = f"desk-{desk.port}={desk.token}"
    before = (desk.root / "recipes" / f"{SLUG}.md").read_bytes()
    body = json.dumps({"text": "gone", "base": "", "base_text": before.decode()})
    kind = {"Cookie": cookie, "Content-Type": "application/json"}
    for path in (f"/save/{SLUG}", f"/mend/{SLUG}", "/out/start", "/recipes", f"/review/{SLUG}"):
        assert desk.ask("POST", path, {**kind, "Origin": origin}, body).code == 403
        assert desk.ask("POST", path, kind, body).code == 403, "nor one that does not say where it comes from"
        asked = {**kind, "Origin": desk.origin, "Sec-Fetch-Site": "same-site"}
        assert desk.ask("POST", path, asked, body).code == 403, "nor another port of this machine"
    assert (desk.root / "recipes" / f"{SLUG}.md").read_bytes() == before


def test_pages_can_not_be_framed_nor_read_by_others(desk: Served) -> None:
    answer = desk.get(f"/write/{SLUG}")
    policy = answer.headers["content-security-policy"]
    assert "frame-ancestors 'none'" in policy and "default-src 'none'" in policy and "unsafe" not in policy
    assert answer.headers["cache-control"] == "no-store"
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["cross-origin-resource-policy"] == "same-origin"
    assert "access-control-allow-origin" not in answer.headers
    assert desk.ask("OPTIONS", "/", {"Origin": "https://evil.example"}).code == 405


@pytest.mark.parametrize(
    "key",
    [
        "../channel", "..%2fchannel", "%2e%2e/channel", "..%2F..%2F..%2Fetc%2Fpasswd", "a/../../channel", "/etc/passwd",
        ".hidden", "x%00", "a%5c..%5cchannel", "%ff%fe", "potato-and-courgette-mash.md", "linked", "linked-folder/out",
    ],
)  # fmt: skip
def test_no_address_leads_out_of_the_recipes(desk: Served, lures: Path, key: str) -> None:
    for page in ("write", "see", "review", "script", "state"):
        answer = desk.get(f"/{page}/{key}")
        assert answer.code in (400, 404) and "SECRET" not in answer.body, page
    answer = desk.send(f"/save/{key}", text="gone", base="", base_text="")
    assert answer.code in (400, 404)
    assert "SECRET" in lures.read_text(encoding="utf-8")
    assert "title" in (desk.root / "channel.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["../../channel.yaml", "..%2f..%2fchannel.yaml", ".spoonproof-site", "x.py", ""])
def test_no_address_leads_out_of_what_was_made(desk: Served, name: str) -> None:
    (desk.root / "out" / "site").mkdir(parents=True, exist_ok=True)
    (desk.root / "out" / "site" / "x.py").write_text("SECRET", encoding="utf-8")
    assert desk.get(f"/site/{name}").code == 404
    assert desk.get(f"/shown/x/{name}").code == 404
    assert desk.get(f"/own/{name}").code == 404


def test_what_a_recipe_says_is_never_code(desk: Served) -> None:
    nasty = "<script>alert(1)</script>\"'><img src=x onerror=alert(2)>{{ 7*7 }}{% include '/etc/passwd' %}"
    text = (desk.root / "recipes" / f"{SLUG}.md").read_text(encoding="utf-8")
    text = text.replace("Potato and courgette mash", json.dumps(nasty), 1)
    path = desk.root / "recipes" / "nasty-mash.md"
    path.write_text(text + f"\n{nasty} </textarea><b>out</b>\n", encoding="utf-8")
    pages = [f"/{view}/nasty-mash" for view in ("write", "see", "review")]
    pages += [f"/film/nasty-mash/{page}.html" for page in ("script", "shots", "prompter")]
    for page in ("/", *pages, "/new-foods?recipe=nasty-mash"):
        answer = desk.get(page)
        assert answer.code == 200, answer.body[-400:]
        assert "<script>alert" not in answer.body and "<img src=x" not in answer.body
        assert "</textarea><b>" not in answer.body


@pytest.mark.parametrize(
    "body", ["[1]", "{", "[" * 5000, '{"text": 5}', '{"text": "' + "x" * (1 << 20) + 'x"}', "1e999"]
)
def test_odd_bodies_are_answered_in_words(desk: Served, body: str) -> None:
    headers = {"X-Desk-Token": desk.token, "Origin": desk.origin, "Content-Type": "application/json"}
    answer = desk.ask("POST", f"/read/{SLUG}", headers, body)
    assert answer.code in (400, 413) and answer.sent["wrong"]


@pytest.mark.parametrize("page", ["read", "save", "mend"])
def test_half_a_character_is_refused_in_words(desk: Served, page: str) -> None:
    path = desk.root / "recipes" / f"{SLUG}.md"
    before = path.read_bytes()
    text = before.decode().replace("title: ", "title: \ud83e")
    answer = desk.send(f"/{page}/{SLUG}", text=text, base="", base_text=before.decode())
    assert answer.code == 400 and "half of a character" in answer.sent["wrong"]
    assert path.read_bytes() == before


def test_a_page_that_goes_away_while_it_sends_is_no_fault(tmp_path: Path) -> None:
    received: Iterator[Message] = iter(
        [{"type": "http.request", "body": b'{"text', "more_body": True}, {"type": "http.disconnect"}]
    )

    async def receive() -> Message:
        return next(received)

    async def send(_: Message) -> None:
        pass

    names = {"host": "127.0.0.1:9", "x-desk-token": "t", "origin": "http://127.0.0.1:9"}
    headers = [(name.encode(), value.encode()) for name, value in names.items()]
    scope = {"type": "http", "method": "POST", "path": f"/read/{SLUG}", "query_string": b"", "headers": headers}
    app = make_app(Desk(new_channel(tmp_path)), "t", 9)

    async def ask() -> None:
        await app(scope, receive, send)

    # A browser opened by another test keeps a loop on this thread, so the request has a thread of its own.
    with ThreadPoolExecutor(1) as alone:
        alone.submit(asyncio.run, ask()).result(timeout=60)


def test_who_dawdles_keeps_nobody_waiting(desk: Served) -> None:
    started = f"POST /read/{SLUG} HTTP/1.1\r\nHost: 127.0.0.1:{desk.port}\r\nX-Desk-Token: {desk.token}\r\n".encode()
    begun = [b"GET / HT", started, started + b"Content-Length: 1000\r\n\r\n{"]
    waiting = [socket.create_connection(("127.0.0.1", desk.port), timeout=10) for _ in range(120)]
    for number, each in enumerate(waiting):
        each.sendall(begun[number % len(begun)])
    assert desk.get("/").code == 200
    for each in waiting:
        each.close()
    assert desk.get("/").code == 200


def test_more_than_the_desk_takes_is_refused_before_it_is_read(desk: Served) -> None:
    head = f"POST /read/{SLUG} HTTP/1.1\r\nHost: 127.0.0.1:{desk.port}\r\nX-Desk-Token: {desk.token}\r\n"
    with socket.create_connection(("127.0.0.1", desk.port), timeout=20) as endless:
        endless.sendall(f"{head}Transfer-Encoding: chunked\r\n\r\n".encode())
        for _ in range(140):  # nine million bytes
            endless.sendall(b"10000\r\n" + b"x" * 0x10000 + b"\r\n")
        assert b" 413 " in endless.recv(200)


def test_it_answers_this_machine_alone(desk: Served) -> None:
    lines = Path("/proc/net/tcp").read_text(encoding="ascii").splitlines() if Path("/proc/net/tcp").exists() else []
    listening = [line.split()[1] for line in lines if line.split()[1].endswith(f":{desk.port:04X}") and " 0A " in line]
    if not lines:
        pytest.skip("this system does not list its sockets")
    assert listening == [f"0100007F:{desk.port:04X}"]


def test_the_prompter_runs_shut_off_and_the_other_film_pages_rest(desk: Served) -> None:
    key = "potato-and-courgette-mash"
    prompter = desk.get(f"/film/{key}/prompter.html")
    policy = prompter.headers["content-security-policy"]
    assert prompter.code == 200 and "sandbox allow-scripts" in policy and "default-src 'none'" in policy
    assert "allow-same-origin" not in policy
    for page in ("script", "shots"):
        assert "script-src" not in desk.get(f"/film/{key}/{page}.html").headers["content-security-policy"]
    assert desk.get(f"/film/{key}/captions.html").code == 404

"""Which addresses may be asked at all: the resolved address is checked, and the connection goes to that same one."""

from __future__ import annotations

import ipaddress
import re
import socket
import threading
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import NamedTuple
from urllib.parse import urljoin, urlsplit, urlunsplit

LONGEST_ADDRESS = 2048
MOST_ADDRESSES = 4
RESOLVE_SECONDS = 10.0
_PORTS = {"http": 80, "https": 443}
_UNSAFE = re.compile(r"[\x00-\x20\x7f-\xa0\u2000-\u200f\u2028-\u202e\u2066-\u2069\ufeff\\]")
_TUNNELS = tuple(ipaddress.ip_network(net) for net in ("64:ff9b::/96", "64:ff9b:1::/48", "2002::/16", "2001::/32"))
"""IPv6 ranges that carry an IPv4 address inside: NAT64, 6to4, Teredo."""

Resolver = Callable[[str, int], Sequence[str]]


class Refused(Exception):
    """An address that is not asked; ``rule`` names why in one word."""

    def __init__(self, rule: str, words: str) -> None:
        super().__init__(words)
        self.rule = rule


class NoSuchHost(Exception):
    """The name could not be resolved."""


class Target(NamedTuple):
    """Where a request goes: ``url`` as sent, ``address`` the IP that is connected to, ``others`` those that are
    tried after it where it does not take the call; all of them were checked."""

    url: str
    scheme: str
    host: str
    port: int
    path: str
    address: str
    others: tuple[str, ...] = ()


def resolve(host: str, port: int) -> list[str]:
    """The IP addresses of a name, within ``RESOLVE_SECONDS``. Raises NoSuchHost."""
    found: list[str] = []

    def ask() -> None:
        try:
            answers = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)
        except (OSError, UnicodeError):
            return
        found.extend(dict.fromkeys(str(answer[4][0]) for answer in answers))

    asking = threading.Thread(target=ask, daemon=True)
    asking.start()
    asking.join(RESOLVE_SECONDS)
    if not found:
        raise NoSuchHost(host)
    return list(found)


def is_public(address: str) -> bool:
    """Whether an IP is one that anybody may reach: no private, loopback, link-local, shared (100.64/10),
    multicast, reserved or unspecified one, and none that carries another inside."""
    try:
        ip = ipaddress.ip_address(address.partition("%")[0])
    except ValueError:
        return False
    if isinstance(ip, ipaddress.IPv6Address):
        if ip.ipv4_mapped is not None:
            ip = ip.ipv4_mapped
        elif any(ip in net for net in _TUNNELS):
            return False
    return ip.is_global and not ip.is_multicast and not ip.is_reserved and not ip.is_unspecified


@dataclass(frozen=True, slots=True)
class Guard:
    """``resolver`` and ``allowed`` are replaced in tests only, to reach a server on this machine;
    ``ports`` are those that may be asked besides the usual ones."""

    resolver: Resolver = resolve
    allowed: Callable[[str], bool] = is_public
    ports: frozenset[int] = frozenset()

    def target(self, url: str) -> Target:
        """Where a request for ``url`` may go. Raises Refused, or NoSuchHost."""
        if len(url) > LONGEST_ADDRESS:
            raise Refused("unsafe-address", f"the address is longer than {LONGEST_ADDRESS} characters")
        if _UNSAFE.search(url):
            raise Refused("unsafe-address", "the address holds a space, a control or a hidden character")
        try:
            parts = urlsplit(url)
            port = parts.port
        except ValueError:
            raise Refused("unsafe-address", "the address can't be read") from None
        if parts.scheme not in _PORTS:
            raise Refused("unsafe-scheme", f"only http and https are asked, not {parts.scheme or 'nothing'}")
        if "@" in parts.netloc:
            raise Refused("unsafe-address", "the address carries a name or password")
        host = _ascii(parts.hostname or "")
        port = port if port is not None else _PORTS[parts.scheme]
        if port not in (80, 443) and port not in self.ports:
            raise Refused("unsafe-port", f"port {port} is not asked")
        addresses = self.resolver(host, port)
        if not addresses:
            raise NoSuchHost(host)
        # One private answer among public ones is how a name is turned against its asker.
        if not all(self.allowed(address) for address in addresses):
            raise Refused("private-address", f"{host} leads to an address inside a private network")
        path = urlunsplit(("", "", parts.path or "/", parts.query, ""))
        return Target(url, parts.scheme, host, port, _quoted(path), addresses[0], tuple(addresses[1:MOST_ADDRESSES]))

    def hop(self, at: Target, location: str) -> str:
        """The address a redirect leads to. Raises Refused when it goes from https to http."""
        url = urljoin(at.url, location)
        scheme = urlsplit(url).scheme if not _UNSAFE.search(url) else ""
        if at.scheme == "https" and scheme == "http":
            raise Refused("downgraded", "it leads from https to http")
        return url


def _ascii(host: str) -> str:
    """The host as it is sent. Raises Refused for none, or one that is no name."""
    host = host.rstrip(".")
    if host.isascii():
        name = host
    else:
        try:
            name = host.encode("idna").decode("ascii")
        except UnicodeError:
            raise Refused("unsafe-address", "the host is no name that can be asked") from None
    if not name or len(name) > 253 or not re.fullmatch(r"[A-Za-z0-9._:-]+", name):
        raise Refused("unsafe-address", "the host is no name that can be asked")
    return name.lower()


def _quoted(path: str) -> str:
    from urllib.parse import quote

    return quote(path, safe="/%:@!$&'()*+,;=?~-._[]")

"""A phone at the other end of the home network, before and after it is paired."""

import json
import re
import socket
import ssl
from collections.abc import Iterator
from dataclasses import dataclass
from urllib.parse import urlencode, urlsplit

import pytest
from websockets.exceptions import ConnectionClosed, InvalidStatus

from tests.app_server.asking import Answer
from tests.app_server.home_network import HomeNetwork, home_network
from tests.app_server.routes import UPGRADE, every_route
from tests.app_session import AppSession, app_session
from tests.running_app import RunningApp, started_app

PAGE = "Pair this phone"
COOKIE = "__Host-tripplan-phone"


@dataclass
class Phones:
    """An app that lets phones in, and the network they are in.

    Attributes:
        app: the app.
        network: where the phone is.
        url: what it opens, without a slash at the end.
        code: the code that the terminal shows at the start.
    """

    app: RunningApp
    network: HomeNetwork
    url: str
    code: str

    def ask(self, *questions: tuple[str, str, dict[str, str], str], of: str = "") -> list[Answer]:
        """What the phone gets for requests by method, path, headers and body."""
        asked = [[of or self.url, path, method, headers, body] for method, path, headers, body in questions]
        told = json.loads(self.network.run("tests.app_server.ask_all", given=json.dumps(asked)))
        return [Answer(status, headers, body.encode(), cookies) for status, headers, body, cookies in told]

    def type_code(self, code: str, **headers: str) -> Answer:
        """What typing a code on the pairing page brings."""
        (told,) = self.ask(("POST", "/pair", headers, urlencode({"code": code, "name": "Red phone"})))
        return told


@pytest.fixture(scope="module")
def phones(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Phones]:
    """The app, which lets phones in from the start."""
    folder = tmp_path_factory.mktemp("phones")
    with home_network() as network, started_app(folder, TRIPPLAN_PHONES=network.address) as app:
        said = app.log.read_text(encoding="utf-8")
        found = re.search(r"open (https://\S+)/ there and type (\d{6})", said)
        assert found, said
        yield Phones(app, network, found[1], found[2])


@pytest.fixture(scope="module")
def set_cookie(phones: Phones) -> str:
    """What the app answers the phone that types the right code."""
    told = phones.type_code(phones.code, Origin=phones.url)
    assert (told.status, told.headers["location"]) == (303, "/")
    (given,) = told.cookies
    return given


@pytest.fixture(scope="module")
def cookie(set_cookie: str) -> str:
    """What a paired phone shows."""
    return set_cookie.split(";")[0]


def test_nobody_but_the_pairing_page_answers_an_unpaired_phone(phones: Phones) -> None:
    """Over every route that the server lists, with a made-up cookie or none, nothing else is answered."""
    kinds: list[dict[str, str]] = [
        {},
        {"Cookie": f"{COOKIE}=made-up"},
        {"Cookie": f"{COOKIE}=", "Origin": phones.url},
        {"tripplan-visitor": "this computer", "X-Forwarded-For": "127.0.0.1"},
    ]
    questions = [(one.verb, one.path, {**one.headers, **kind}, "") for one in every_route() for kind in kinds]
    answers = phones.ask(*questions)
    assert len(answers) == len(every_route()) * len(kinds)
    for (method, path, headers, _), told in zip(questions, answers, strict=True):
        assert told.status == (200 if path == "/" and "Upgrade" not in headers else 403), (method, path)
        websocket = "Upgrade" in headers
        assert websocket or method == "HEAD" or PAGE.encode() in told.body, (method, path)
        assert b"streamlit" not in told.body.lower()
        assert b"script" not in told.body
        assert told.cookies == []


def test_the_app_itself_is_out_of_reach_for_the_network(phones: Phones) -> None:
    """The port on which this computer is answered does not answer the network."""
    port = urlsplit(phones.app.address).port
    (told,) = phones.ask(("GET", "/", {}, ""), of=f"http://{phones.network.address}:{port}")
    assert told.status == 0


def test_an_unpaired_phone_gets_no_other_host_and_no_other_origin(phones: Phones) -> None:
    """Under a name that points here, or for a page of another site, not even the pairing page is there."""
    host = urlsplit(phones.url).netloc
    answers = phones.ask(
        ("GET", "/", {"Host": "attacker.example"}, ""),
        ("GET", "/", {"Host": f"{host}.attacker.example"}, ""),
        ("POST", "/pair", {"Origin": "https://attacker.example"}, f"code={phones.code}"),
        ("POST", "/pair", {"Origin": "null"}, f"code={phones.code}"),
    )
    assert [told.status for told in answers] == [403] * 4
    assert all(PAGE.encode() not in told.body for told in answers)


def test_the_cookie_is_for_tls_this_host_and_no_script(set_cookie: str) -> None:
    """The attributes are those of RFC 6265, 4.1.2, and those that the prefix asks for (6265bis, 4.1.3.2)."""
    pair, *told = set_cookie.split("; ")
    attributes = {name.lower(): value for name, _, value in (one.partition("=") for one in told)}
    name, _, secret = pair.partition("=")
    assert name == COOKIE
    assert len(secret) >= 43  # 256 bits in base 64
    assert {"secure", "httponly"} <= set(attributes)
    assert attributes["path"] == "/"
    assert attributes["samesite"].lower() == "strict"
    assert "domain" not in attributes
    assert 0 < int(attributes["max-age"]) <= 24 * 3600


def test_a_paired_phone_opens_the_app_by_every_way(phones: Phones, cookie: str) -> None:
    """With the cookie the page, its files, the health check and the websocket answer."""
    own = {"Cookie": cookie, "Origin": phones.url}
    page, health, stream = phones.ask(
        ("GET", "/", {"Cookie": cookie}, ""),
        ("GET", "/_stcore/health", own, ""),
        ("GET", "/_stcore/stream", {**UPGRADE, **own}, ""),
    )
    assert (page.status, health.status, stream.status) == (200, 200, 101)
    assert b'<div id="root">' in page.body
    script = re.search(rb'src="\.(/static/js/[^"]+)"', page.body)
    assert script
    path = script[1].decode()
    given, kept = phones.ask(("GET", path, {"Cookie": cookie}, ""), ("GET", path, {}, ""))
    assert given.status == 200
    assert len(given.body) > 10_000
    assert kept.status == 403
    assert PAGE.encode() in kept.body


def test_another_site_cannot_use_the_phones_cookie(phones: Phones, cookie: str) -> None:
    """A foreign Origin or Host is refused over every route, whatever cookie comes along."""
    for changed in ({"Origin": "https://attacker.example"}, {"Host": "attacker.example"}):
        sent = {**changed, "Cookie": cookie}
        questions = [(one.verb, one.path, {**one.headers, **sent}, "") for one in every_route()]
        assert {told.status for told in phones.ask(*questions)} == {403}
    assert phones.app.reached_outside() == []


def test_only_current_tls_is_offered(phones: Phones) -> None:
    """Python's own client gets TLS 1.3, and 1.2 where it knows no better; an older one gets nothing."""
    parts = urlsplit(phones.url)

    def offered(most: ssl.TLSVersion) -> str | None:
        client = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        client.check_hostname, client.verify_mode = False, ssl.CERT_NONE
        client.set_ciphers("DEFAULT@SECLEVEL=0")  # so that it is the server that declines what is old
        client.maximum_version = most
        with (
            socket.create_connection((parts.hostname, parts.port), timeout=10) as plain,
            client.wrap_socket(plain) as secured,
        ):
            return secured.version()

    assert offered(ssl.TLSVersion.MAXIMUM_SUPPORTED) == "TLSv1.3"
    assert offered(ssl.TLSVersion.TLSv1_2) == "TLSv1.2"
    with pytest.warns(DeprecationWarning, match="TLSv1_1"), pytest.raises((ssl.SSLError, ConnectionError)):
        offered(ssl.TLSVersion.TLSv1_1)


def listed(computer: AppSession) -> str:
    """The number of the one phone on the list that the computer shows."""
    (phone,) = {key.removeprefix("phone_off_") for key in computer.widgets if key.startswith("phone_off_")}
    return phone


def test_what_a_phone_sees_is_decided_in_its_session(phones: Phones, cookie: str) -> None:
    """A phone for the day has no other page by any address, and no window of another access."""
    with app_session(phones.app.address, "phones") as computer:
        computer.run()
        phone = listed(computer)
        with app_session(phones.url, "household", cookie=cookie) as window:
            window.run()
            assert "turn_member_0" not in window.widgets
            window.page = "phones"
            window.run()
            assert not any(key.startswith("phone") for key in window.widgets)
            window.page = "logbook"
            window.run()
            assert "write_other" in window.widgets
            window.page = "on_the_day"
            window.run()
            assert "Which outing?" in window.said
            assert window.exceptions == []
            computer.run({f"phone_access_{phone}": "Everything"})
            with pytest.raises(ConnectionClosed) as closed:
                window.run()
            assert closed.value.rcvd is not None
            assert closed.value.rcvd.code == 1008  # policy violation: RFC 6455, 7.4.1
        with app_session(phones.url, "household", cookie=cookie) as window:
            window.run()
            assert "turn_member_0" in window.widgets
            wide = window.number
        with app_session(phones.url, "household", cookie=cookie, back_to=wide) as window:
            window.run()
            assert window.number == wide, "under the same access a phone comes back to its window"
        computer.run({f"phone_access_{phone}": "On the day and the logbook"})
        with app_session(phones.url, "household", cookie=cookie, back_to=wide) as window:
            window.run()
            assert window.number not in ("", wide)
            assert "turn_member_0" not in window.widgets
        with app_session(phones.url, "", cookie=cookie, back_to=computer.number) as window:
            window.run()
            assert window.number not in ("", computer.number), "a window of the computer is nobody else's"


def test_a_removed_phone_is_out_at_once(phones: Phones, cookie: str) -> None:
    """Removed on the computer, its open window closes, and it stands before the pairing page again."""
    with app_session(phones.app.address, "phones") as computer:
        computer.run()
        with app_session(phones.url, "", cookie=cookie) as window:
            window.run()
            computer.run(press=f"phone_off_{listed(computer)}")
            with pytest.raises(ConnectionClosed):
                window.run()
        with pytest.raises(InvalidStatus), app_session(phones.url, "", cookie=cookie):
            pass
        page, stream = phones.ask(
            ("GET", "/", {"Cookie": cookie}, ""),
            ("GET", "/_stcore/stream", {**UPGRADE, "Cookie": cookie}, ""),
        )
        assert PAGE.encode() in page.body
        assert stream.status == 403


def test_wrong_codes_wait_and_off_is_off(phones: Phones) -> None:
    """A wrong code is told and the next must wait; turned off by one press, nobody answers any more."""
    with app_session(phones.app.address, "phones") as computer:
        computer.run()
        if "phones_code" in computer.widgets:  # else the one from the start is still good
            computer.run(press="phones_code")
        assert computer.exceptions == []
        form = urlencode({"code": "12345", "name": "Guesser"})
        wrong, *hasty = phones.ask(*(("POST", "/pair", {}, form) for _ in range(3)))
        assert b"not the code" in wrong.body
        assert [told.status for told in (wrong, *hasty)] == [403, 429, 429]
        assert [told.cookies for told in (wrong, *hasty)] == [[], [], []]
        assert phones.app.server.poll() is None
        computer.run(press="phones_off")
        (told,) = phones.ask(("GET", "/", {}, ""))
        assert told.status == 0, "turned off, nobody answers"

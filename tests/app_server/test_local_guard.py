"""Only this computer, by requests to the running app as a browser would send them for another site."""

from pathlib import Path
from urllib.parse import urlsplit

import pytest

from tests.app_server.asking import ask
from tests.app_server.routes import WEBSOCKET, Route, every_route
from tests.running_app import RunningApp, started_app

REFUSED = 403


def origin_of(app: RunningApp, **changed: str) -> str:
    """The app's own origin, or one that differs in scheme, name or port."""
    parts = urlsplit(app.address)
    own = {"scheme": parts.scheme, "name": str(parts.hostname), "port": str(parts.port)} | changed
    return f"{own['scheme']}://{own['name']}:{own['port']}"


def test_the_list_of_routes_is_the_whole_server() -> None:
    """The list these tests go through has pages, the websocket, uploads, media and the static files."""
    paths = {route.path for route in every_route()}
    assert {"/", "/_stcore/stream", "/media/example", "/_stcore/upload_file/example/example"} <= paths
    assert Route(WEBSOCKET, "/_stcore/stream") in every_route()
    assert len(every_route()) > 40


@pytest.mark.parametrize(
    "host",
    ["attacker.example", "127.0.0.1.attacker.example", "192.0.2.7", "me@127.0.0.1", "127.0.0.1:x", ""],
)
def test_a_name_that_points_here_is_not_answered(running_app: RunningApp, host: str) -> None:
    """With a Host that is not this computer's (DNS rebinding) no route answers anything but a refusal."""
    for route in every_route():
        told = ask(running_app.address, route.path, route.verb, {**route.headers, "Host": host})
        assert told.status in (REFUSED, 400), f"{route} answered {told.status}"
        assert b"<html" not in told.body
    assert running_app.reached_outside() == []


@pytest.mark.parametrize(
    "changed",
    [
        {"port": "9999"},
        {"name": "localhost"},
        {"name": "attacker.example"},
        {"scheme": "https"},
        {"name": "127.0.0.1.attacker.example"},
    ],
    ids=lambda changed: "-".join(changed.values()),
)
def test_an_origin_must_be_the_same_in_scheme_name_and_port(
    running_app: RunningApp, changed: dict[str, str]
) -> None:
    """A page of another origin (RFC 6454, section 5) gets nothing by any route."""
    for route in every_route():
        headers = {**route.headers, "Origin": origin_of(running_app, **changed)}
        told = ask(running_app.address, route.path, route.verb, headers)
        assert told.status == REFUSED, f"{route} answered {told.status}"
    assert running_app.reached_outside() == []


def test_a_page_without_an_origin_of_its_own_gets_nothing(running_app: RunningApp) -> None:
    """A frame in a sandbox sends `null` for an origin (RFC 6454, section 7.1), which is nobody's."""
    for route in every_route():
        told = ask(running_app.address, route.path, route.verb, {**route.headers, "Origin": "null"})
        assert told.status == REFUSED, f"{route} answered {told.status}"


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_other_sites_may_link_but_not_embed(running_app: RunningApp, site: str) -> None:
    """By Fetch Metadata (W3C): a picture, script or frame of another page is refused, a link is not."""
    kinds = {("no-cors", "image"): 403, ("no-cors", "script"): 403, ("navigate", "iframe"): 403}
    for (mode, target), status in {**kinds, ("navigate", "document"): 200}.items():
        headers = {"Sec-Fetch-Site": site, "Sec-Fetch-Mode": mode, "Sec-Fetch-Dest": target}
        assert ask(running_app.address, headers=headers).status == status


@pytest.mark.parametrize("name", ["127.0.0.1", "localhost"])
def test_the_app_answers_its_own_pages(running_app: RunningApp, name: str) -> None:
    """Pages, the health check and the websocket open under both names of this computer, with its Origin."""
    host = f"{name}:{urlsplit(running_app.address).port}"
    own = {"Host": host, "Origin": f"http://{host}"}
    assert b"<html" in ask(running_app.address, headers=own).body
    assert ask(running_app.address, "/_stcore/health", headers=own).status == 200
    stream = Route(WEBSOCKET, "/_stcore/stream")
    assert ask(running_app.address, stream.path, stream.verb, {**stream.headers, **own}).status == 101


def test_every_answer_forbids_showing_the_app_inside_another_page(running_app: RunningApp) -> None:
    """Every answer tells the browser not to frame it, not to guess its kind, to load nothing from others."""
    answers = [
        ask(running_app.address, route.path, route.verb)
        for route in every_route()
        if route.method != WEBSOCKET
    ]
    answers.append(ask(running_app.address, headers={"Host": "attacker.example"}))
    for told in answers:
        policy = dict(
            part.strip().split(" ", 1) for part in told.headers["content-security-policy"].split(";")
        )
        assert policy["frame-ancestors"] == "'none'"
        assert policy["default-src"] == "'self'"
        assert told.headers["x-frame-options"] == "DENY"
        assert told.headers["x-content-type-options"] == "nosniff"
        assert told.headers["cross-origin-resource-policy"] == "same-origin"


def test_nobody_outside_is_asked_whatever_is_asked_of_the_app(running_app: RunningApp) -> None:
    """Requests to every route with every kind of headers, served or refused, cause no connection outside."""
    kinds: list[dict[str, str]] = [
        {},
        {"Origin": origin_of(running_app)},
        {"Origin": "http://attacker.example"},
        {"Origin": "http://attacker.example", "Host": "attacker.example"},
        {"Origin": "http://192.0.2.7:8501", "Host": "192.0.2.7:8501"},
        {"X-Forwarded-For": "192.0.2.7", "X-Forwarded-Host": "attacker.example"},
    ]
    for route in every_route():
        for headers in kinds:
            ask(running_app.address, route.path, route.verb, {**route.headers, **headers})
    assert running_app.reached_outside() == []


def test_a_start_for_the_whole_network_asks_nobody_outside_either(tmp_path: Path) -> None:
    """Started by hand on all addresses the app answers under figures only, and asks nobody for its own."""
    with started_app(tmp_path, "--server.address=0.0.0.0") as app:
        port = urlsplit(app.address).port
        figures = {"Host": f"192.0.2.7:{port}", "Origin": f"http://192.0.2.7:{port}"}
        for route in every_route():
            named = {**route.headers, "Host": f"attacker.example:{port}"}
            assert ask(app.address, route.path, route.verb, named).status == REFUSED
            ask(app.address, route.path, route.verb, {**route.headers, **figures})
        assert ask(app.address, headers=figures).status == 200
        assert app.reached_outside() == []

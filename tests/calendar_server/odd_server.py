"""A web server on loopback that answers as a test tells it, and one that stands before a real one."""

import ssl
import threading
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

from tests.calendar_server.radicale_server import Running


class Asked(BaseHTTPRequestHandler):
    """One request.

    Attributes:
        sent: what came with it.
    """

    sent: bytes


Answer = Callable[[Asked], None]


@contextmanager
def odd_server(answer: Answer, context: ssl.SSLContext | None = None) -> Iterator[tuple[str, list[str]]]:
    """A server on loopback that answers everything alike; its address, and what it was asked."""
    asked: list[str] = []

    class Handler(Asked):
        def handle_one_request(self) -> None:
            self.raw_requestline = self.rfile.readline(65537)
            if not self.raw_requestline or not self.parse_request():
                self.close_connection = True
                return
            asked.append(f"{self.command} {self.path} {self.headers.get('Authorization', '')}".strip())
            self.sent = self.rfile.read(int(self.headers.get("Content-Length") or 0))
            with suppress(ConnectionError):  # whoever asked has hung up
                answer(self)
            self.close_connection = True

        def log_message(self, *_: object) -> None:
            """Say nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    if context is not None:
        server.socket = context.wrap_socket(server.socket, server_side=True, do_handshake_on_connect=False)
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02})
    thread.start()
    scheme = "http" if context is None else "https"
    try:
        yield f"{scheme}://127.0.0.1:{server.server_address[1]}/", asked
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


def respond(status: int, body: bytes = b"", **headers: str) -> Answer:
    """One and the same answer."""

    def answer(handler: Asked) -> None:
        handler.send_response(status)
        for name, value in headers.items():
            handler.send_header(name.replace("_", "-"), value)
        handler.send_header("Content-Length", str(len(body)))
        handler.end_headers()
        handler.wfile.write(body)

    return answer


def drip(data: bytes, pause: float) -> Answer:
    """Bytes one by one, for as long as somebody takes them [s between two]."""

    def answer(handler: Asked) -> None:
        for number in range(len(data)):
            handler.wfile.write(data[number : number + 1])
            handler.wfile.flush()
            time.sleep(pause)

    return answer


def raw(data: bytes) -> Answer:
    """Exactly these bytes."""

    def answer(handler: Asked) -> None:
        handler.wfile.write(data)

    return answer


@contextmanager
def standing_before(server: Running, odd: Mapping[str, Answer]) -> Iterator[str]:
    """What it is asked goes on to a real server, but for some requests; its address.

    Args:
        server: the real one.
        odd: the answers of its own, by what the request begins with, such as 'PUT /home/mill'.
    """

    def answer(handler: Asked) -> None:
        line = f"{handler.command} {handler.path}"
        if "Authorization" not in handler.headers:
            respond(401, WWW_Authenticate='Basic realm="calendars"')(handler)
            return
        own = next((odd[begin] for begin in odd if line.startswith(begin)), None)
        if own is not None:
            own(handler)
            return
        headers = {name.replace("-", "_"): value for name, value in handler.headers.items()}
        for name in ("Host", "Content_Length", "Connection", "Authorization", "Accept_Encoding"):
            headers.pop(name, None)
        real = server.ask(
            handler.command, server.address + handler.path[1:], handler.sent.decode(), **headers
        )
        kept = ("Content-Type", "ETag", "WWW-Authenticate", "DAV")
        told = {name.replace("-", "_"): value for name, value in real.headers.items() if name in kept}
        respond(real.status_code, real.content, **told)(handler)

    with odd_server(answer) as (address, _):
        yield address

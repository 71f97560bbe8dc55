"""Only this computer: what another site makes the browser send is refused before Streamlit sees it."""

from starlette.datastructures import Headers
from starlette.types import ASGIApp, Receive, Scope, Send
from streamlit import config

from tripplan.app_server.answers import refuse, with_headers
from tripplan.app_server.requests import address_in, comes_from_elsewhere, host_name, is_this_computer
from tripplan.app_server.visitor import is_marked, mark

WRONG_HOST = "tripplan answers on this computer only, under the address it showed when it was started."
WRONG_ORIGIN = "tripplan answers its own pages only; another page asked for this."


class LocalGuard:
    """ASGI middleware in front of the app: checks Host and Origin of requests, and adds headers to answers.

    Streamlit 1.67 does not check the Host of pages and files at all, and of Origins only the name.
    """

    def __init__(self, app: ASGIApp) -> None:
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on, or refuse it."""
        if scope["type"] not in ("http", "websocket"):
            await self._app(scope, receive, send)
            return
        if is_marked(scope):  # a paired phone's, which the gate for phones has let in
            await self._app(scope, receive, with_headers(send))
            return
        headers = Headers(scope=scope)
        name = host_name(headers)
        if name is None or not _is_ours(name):
            await refuse(scope, receive, send, WRONG_HOST)
        elif comes_from_elsewhere(scope, headers):
            await refuse(scope, receive, send, WRONG_ORIGIN)
        else:
            await self._app(mark(scope), receive, with_headers(send))


def listens_to_the_network() -> bool:
    """Whether the app was started by hand so that other computers reach it."""
    address = config.get_option("server.address")
    return address is None or not is_this_computer(address)


def _is_ours(name: str) -> bool:
    """Whether a Host header is an address of this computer.

    Started by hand for the network, any address in figures is: a name can be made to point here by whoever
    owns it, figures cannot.
    """
    return is_this_computer(name) or (listens_to_the_network() and address_in(name) is not None)

"""A window of the app without a browser: it speaks Streamlit's own protocol over a websocket."""

import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from http import HTTPStatus
from typing import Any

from streamlit.proto.BackMsg_pb2 import BackMsg
from streamlit.proto.Delta_pb2 import Delta
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg
from streamlit.proto.WidgetStates_pb2 import WidgetState
from websockets.exceptions import InvalidStatus
from websockets.sync.client import ClientConnection, connect
from websockets.typing import Subprotocol

from tests.app_server.asking import trusting

PATIENCE_SECONDS = 60
"""How long an answer may take before the session counts as lost."""


class AppSession:
    """One session of the app, on one of its pages.

    Attributes:
        page: the last part of the page's address; empty for the first page.
        number: the session's, by which it can be come back to; empty before the first run.
        widgets: the id of every widget that has a key, by its key, as the last run drew them.
        texts: everything that the last run said.
        exceptions: every exception that any run has shown.
    """

    def __init__(self, socket: ClientConnection, page: str) -> None:
        self.page = page
        self.number = ""
        self.widgets: dict[str, str] = {}
        self.texts: list[str] = []
        self.exceptions: list[str] = []
        self._socket = socket

    @property
    def said(self) -> str:
        """Everything that the last run said, as one text without marks."""
        return "\n".join(self.texts).replace("\\", "").replace("**", "")

    def run(self, typed: Mapping[str, str] | None = None, press: str | None = None) -> None:
        """Let the page be drawn, after something was typed or pressed.

        Args:
            typed: texts by the keys of their fields.
            press: the key of a button.
        """
        message = BackMsg()
        state = message.rerun_script
        state.page_name = self.page
        for key, text in (typed or {}).items():
            state.widget_states.widgets.append(WidgetState(id=self.widgets[key], string_value=text))
        if press is not None:
            state.widget_states.widgets.append(WidgetState(id=self.widgets[press], trigger_value=True))
        self._socket.send(message.SerializeToString())
        self._listen()

    def _listen(self) -> None:
        while True:
            data = self._socket.recv(timeout=PATIENCE_SECONDS, decode=False)
            message = ForwardMsg()
            message.ParseFromString(data)
            match message.WhichOneof("type"):
                case "new_session":
                    self.widgets, self.texts = {}, []
                    self.number = message.new_session.initialize.session_id or self.number
                case "delta":
                    self._take(message.delta)
                case "script_finished" if message.script_finished == ForwardMsg.FINISHED_SUCCESSFULLY:
                    return
                case "script_finished" if message.script_finished == ForwardMsg.FINISHED_WITH_COMPILE_ERROR:
                    self.exceptions.append("the page does not compile")
                    return

    def _take(self, delta: Delta) -> None:
        element = delta.new_element
        kind = element.WhichOneof("type")
        if kind is None:  # a container
            return
        if kind == "exception":
            self.exceptions.append(f"{element.exception.type}: {element.exception.message}")
        drawn = getattr(element, kind)
        if kind == "html" and drawn.body.startswith("<style>"):
            return
        self.texts += [str(getattr(drawn, part)) for part in ("body", "label") if hasattr(drawn, part)]
        self._note(str(getattr(drawn, "id", "")))

    def _note(self, widget: str) -> None:
        """Keep the id of what can be used: $$ID-<hash>-<key>."""
        if widget.startswith("$$ID-"):
            self.widgets[widget.split("-", 2)[2]] = widget


@contextmanager
def app_session(address: str, page: str = "", *, cookie: str = "", back_to: str = "") -> Iterator[AppSession]:
    """A session.

    Args:
        address: where the app is; of a certificate it is not asked who signed it.
        page: the last part of the page's address; empty for the first page.
        cookie: what a paired phone shows.
        back_to: the number of a session that was out of reach; empty for a new one.
    """
    tls = trusting() if address.startswith("https") else None
    stream = f"{address.replace('http', 'ws', 1)}/_stcore/stream"
    options: dict[str, Any] = {"additional_headers": {"Cookie": cookie}} if cookie else {}
    if back_to:
        options["subprotocols"] = [Subprotocol(one) for one in ("streamlit", "none", back_to)]
    with _connected(stream, ssl=tls, **options) as socket:
        yield AppSession(socket, page)


def _connected(stream: str, **options: Any) -> ClientConnection:
    """An open websocket; while the app is busy it is tried again, as Streamlit's page does."""
    deadline = time.monotonic() + PATIENCE_SECONDS
    while True:
        try:
            opened: ClientConnection = connect(
                stream, max_size=None, proxy=None, open_timeout=PATIENCE_SECONDS, **options
            )
        except InvalidStatus as refused:
            if refused.response.status_code != HTTPStatus.SERVICE_UNAVAILABLE or time.monotonic() > deadline:
                raise
            time.sleep(0.5)
        else:
            return opened

"""Streamlit looks up this computer's public address to judge a foreign Origin; here nobody asks."""

from streamlit import net_util


def forbid_address_lookup() -> None:
    """Let Streamlit believe that this computer has no address beyond itself.

    Else a request with a foreign Origin makes it ask a public service over plain HTTP, and open a socket
    towards a public name server. The guards decide about origins before Streamlit does, so nothing is lost.
    """
    net_util.get_external_ip = _unknown
    net_util.get_internal_ip = _unknown


def _unknown() -> str | None:
    return None

"""The address under which other devices in the home network reach this computer."""

import socket
from ipaddress import AddressValueError, IPv4Address

from tripplan.errors import PlanError

PHONES_VARIABLE = "TRIPPLAN_PHONES"
"""The environment variable that lets phones in from the start: this computer's address, or `FOUND`."""
FOUND = "yes"
_SOMEWHERE = ("192.0.2.1", 9)
"""An address that belongs to nobody (RFC 5737); asking for the way there sends nothing."""


def home_address() -> IPv4Address:
    """This computer's private address (RFC 1918) on the way out.

    Raises:
        PlanError: it is in no home network.
    """
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(_SOMEWHERE)
        except OSError:
            raise PlanError("this computer is in no network") from None
        return read_home_address(asking.getsockname()[0])


def read_home_address(typed: str) -> IPv4Address:
    """An address of this computer that somebody typed.

    Raises:
        PlanError: it is no private IPv4 address, such as the internet never carries.
    """
    try:
        address = IPv4Address(typed.strip())
    except AddressValueError:
        raise PlanError(f"“{typed}” is no address such as 192.168.1.20") from None
    if not _is_home(address):
        raise PlanError(
            f"{address} is no address of a home network; those begin with 192.168, 10 or 172.16 to 31"
        )
    return address


def _is_home(address: IPv4Address) -> bool:
    return address.is_private and not address.is_loopback and not address.is_unspecified

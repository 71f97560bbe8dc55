"""Whom the family would ring."""

import re
from typing import Annotated

from pydantic import AfterValidator, Field

from tripplan.documents.model import Name, Written


def _diallable(number: str) -> str:
    if not re.fullmatch(r"[0-9+(][0-9 +()./-]{1,38}[0-9]", number):
        raise ValueError("a phone number has digits, spaces and + ( ) . / - only, such as (608) 555-0100")
    return number


Telephone = Annotated[str, AfterValidator(_diallable)]


class EmergencyContact(Written):
    """Somebody to call."""

    name: Name
    """Who it is."""
    telephone: Telephone
    """Digits, spaces, + ( ) . / and -."""


class EmergencyContacts(Written):
    """Whom the family would ring."""

    contacts: Annotated[tuple[EmergencyContact, ...], Field(max_length=10)] = ()
    """In the order they are rung."""

"""Whom to ring when something happens: the emergency number, poison advice, the family's own people."""

from dataclasses import dataclass

from tripplan.documents.outings.emergency_contacts import EmergencyContacts
from tripplan.documents.places.place import Place

FROM_MEMORY = "from memory"

_EUROPEAN_UNION = (
    "AT", "BE", "BG", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IE", "IT", "LT",
    "LU", "LV", "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK",
)  # fmt: skip

_EMERGENCY = "Emergency"
_NUMBERS: dict[str, tuple[tuple[str, str], ...]] = {
    "US": ((_EMERGENCY, "911"),),
    "CA": ((_EMERGENCY, "911"),),
    "MX": ((_EMERGENCY, "911"),),
    "GB": ((_EMERGENCY, "999"), (_EMERGENCY, "112")),
    "AU": ((_EMERGENCY, "000"),),
    "NZ": ((_EMERGENCY, "111"),),
    "CH": ((_EMERGENCY, "112"), ("Ambulance", "144")),
    "IS": ((_EMERGENCY, "112"),),
    "LI": ((_EMERGENCY, "112"),),
    "NO": ((_EMERGENCY, "112"), ("Ambulance", "113")),
    **dict.fromkeys(_EUROPEAN_UNION, ((_EMERGENCY, "112"),)),
}
"""Emergency numbers by country (ISO 3166-1). All from memory; 112 across the European Union is set by
Directive (EU) 2018/1972, article 109, from memory."""

_POISON = {"US": "1-800-222-1222"}
"""Telephone advice on poisoning by country. From memory."""


@dataclass(frozen=True)
class EmergencyLine:
    """One number to ring.

    Attributes:
        what: for what, or whom.
        telephone: the number; empty where it is not known.
        source: where it comes from.
    """

    what: str
    telephone: str
    source: str


def emergency_lines(place: Place, own: EmergencyContacts) -> tuple[EmergencyLine, ...]:
    """Whom to ring at a place, most urgent first.

    Args:
        place: the card; its country decides which numbers hold.
        own: the family's own people.
    """
    numbers = _NUMBERS.get(place.where.country, ())
    poison = _POISON.get(place.where.country)
    return (
        *(EmergencyLine(what, number, FROM_MEMORY) for what, number in numbers),
        *(
            ()
            if numbers
            else (EmergencyLine(f"{_EMERGENCY}: look the local number up before you go", "", ""),)
        ),
        *((EmergencyLine("Poison advice", poison, FROM_MEMORY),) if poison else ()),
        *(EmergencyLine(contact.name, contact.telephone, "parent") for contact in own.contacts),
        *((EmergencyLine(place.name, place.telephone, "place card"),) if place.telephone.strip() else ()),
    )

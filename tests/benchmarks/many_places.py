"""Invented places by the hundred, no two alike, for measuring how a sweep grows."""

import random
from typing import Any

from tripplan.documents.places.place import Place

_HOURS = (
    "Tu-Su {o}:00-{c}:00",
    "Mo-Su {o}:00-{c}:00",
    "Mo-Fr {o}:00-{c}:00; Sa-Su 10:00-{c}:30",
    "Apr-Oct Mo-Su {o}:00-{c}:00; Nov-Mar Fr-Su {o}:30-16:00",
    "Tu-Su {o}:00-{c}:00; PH off",
    "Th-Mo {o}:30-{c}:00; PH 12:00-{c}:00",
    "We-Su {o}:00-{c}:00; SH Mo-Su {o}:00-{c}:30",
    "Mar 15-Nov 15 Sa-Su 10:00-{c}:00; Jun-Aug Mo-Su {o}:00-{c}:30",
)


def many_places(count: int, seed: int = 1) -> tuple[Place, ...]:
    """Places within some 150 km of Peoria, Illinois; hours, board, length of stay and position are drawn.

    Args:
        count: how many.
        seed: of the random numbers.
    """
    drawn = random.Random(seed)
    return tuple(_place(number, drawn) for number in range(count))


def _place(number: int, drawn: random.Random) -> Place:
    adult = drawn.randrange(8, 26)
    child_to = drawn.choice((11, 12, 15, 17))
    free_under = drawn.choice((2, 3, 4, 5))
    offers: list[dict[str, Any]] = [
        {"name": "Adult", "price": f"{adult}.00", "ages": f"{child_to + 1}+"},
        {"name": "Child", "price": f"{adult * 2 // 3}.50", "ages": f"{free_under}-{child_to}"},
        {"name": "Small child", "price": "0.00", "ages": f"under {free_under}"},
    ]
    if drawn.random() < 0.4:
        seats = [{"count": 2, "ages": "18+"}, {"count": 4, "ages": "under 18"}]
        offers.append({"kind": "bundle", "name": "Family", "price": f"{adult * 3}.00", "seats": seats})
    if drawn.random() < 0.3:
        offers.append({"name": "Midweek", "price": f"{adult - 3}.00", "valid": "We"})
    if drawn.random() < 0.2:
        seats = [{"count": 2, "ages": "18+"}, {"count": 6, "ages": "under 18"}]
        yearly: dict[str, Any] = {"kind": "pass", "name": "Pass", "price": f"{adult * 9}.00", "months": 12}
        offers.append({**yearly, "seats": seats})
    opening: dict[str, Any] = {
        "hours": drawn.choice(_HOURS).format(o=f"{drawn.choice((9, 10))}", c=f"{drawn.choice((16, 17, 18))}")
    }
    opening["hours"] = opening["hours"].replace(" 9:", " 09:")
    if drawn.random() < 0.15:
        opening["entry_times"] = ["10:00", "11:30", "13:00", "14:30"]
    return Place.model_validate(
        {
            "id": f"place-{number}",
            "name": f"Place {number}",
            "currency": "USD",
            "where": {
                "town": "Somewhere",
                "country": "US",
                "subdivision": "IL",
                "latitude": 40.69 + drawn.uniform(-1.3, 1.3),
                "longitude": -89.59 + drawn.uniform(-1.6, 1.6),
                "time_zone": "America/Chicago",
                "metropolitan": drawn.random() < 0.1,
            },
            "visit": {
                "shortest_minutes": drawn.choice((45, 60, 90)),
                "comfortable_minutes": drawn.choice((90, 120, 150, 180)),
                "pushchairs": drawn.random() < 0.7,
                "indoors": drawn.choice(("indoors", "outdoors", "both")),
            },
            "opening": opening,
            "offers": offers,
            "parking": {"price": f"{drawn.choice((0, 0, 5, 8))}.00"},
            "prices_read": {"on": "2026-11-02", "source": "drawn", "give_or_take_percent": 5},
        }
    )

"""Strategies for small price boards, parties and passes, with every kind of rule mixed."""

from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from hypothesis import strategies as st

from tests.builders import make_place
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import Offer
from tripplan.documents.places.place import Place

DAY = date(2026, 12, 8)
ARRIVAL = datetime(2026, 12, 8, 10, 0, tzinfo=ZoneInfo("America/Chicago"))
TODAY = date(2026, 12, 1)
NAMES = (
    *("Ada", "Ben", "Cleo", "Dan", "Eva", "Fay", "Gus", "Hal"),
    *("Ida", "Jon", "Kim", "Leo", "Mia", "Ned", "Oda", "Pip"),
)
BANDS = ("any", "any", "under 3", "3-12", "13-17", "18+", "18+", "65+", "under 18", "3+", "12-23 months")
PRICES = ("0", "2", "4.50", "5", "7.25", "9", "10", "12", "14.99", "20")
GOOD_ON_ARRIVAL, BAD_ON_ARRIVAL = "Tu 09:00-10:30", "Sa-Su"
"""Times that hold on `ARRIVAL`, a Tuesday at ten, and that do not."""
AGES = (1, 2, 4, 8, 8, 12, 15, 30, 30, 40, 67)


@dataclass(frozen=True)
class Question:
    """One question to the calculator."""

    place: Place
    party: tuple[Member, ...]
    household: frozenset[str]
    held: tuple[HeldPass, ...]
    others: tuple[Place, ...]
    car_seats: int | None = None


def person(
    name: str, years: int, statuses: tuple[str, ...] = (), *, family: str = "", day: str = "06-15"
) -> Member:
    """Somebody of so many years on the day of the visit."""
    born = f"{DAY.year - years}-{day}"
    return Member.model_validate({"name": name, "born": born, "statuses": statuses, "family": family})


prices = st.sampled_from(PRICES)
bands = st.sampled_from(BANDS)
needs = st.sampled_from((*[()] * 4, ("student",), ("carer", "resident")))


def rarely(
    strategy: st.SearchStrategy[Any], otherwise: Any = None, *, in_: int = 4
) -> st.SearchStrategy[Any]:
    """A rule that most offers do not have."""
    return st.one_of(*[st.just(otherwise)] * (in_ - 1), strategy)


companions = st.fixed_dictionaries(
    {
        "ages": st.sampled_from(("18+", "18+", "any", "13-17")),
        "needs": st.sampled_from(((), (), ("student",))),
        "must_pay": st.sampled_from((True, True, False)),
        "each_allows": st.integers(1, 2),
    }
)
any_tickets = st.fixed_dictionaries(
    {
        "kind": st.just("ticket"),
        "price": prices,
        "ages": bands,
        "needs": needs,
        "one_status_covers": st.sampled_from((1, 1, 2, 3)),
        "companions": rarely(companions),
        "at_least": st.sampled_from((1, 1, 1, 1, 2, 3)),
        "at_most": rarely(st.integers(1, 3)),
        "one_free_per": rarely(st.integers(1, 3), in_=5),
        "leader_ages": st.sampled_from(("18+", "any")),
    }
)
beside_others = st.fixed_dictionaries(
    {
        "kind": st.just("ticket"),
        "price": st.sampled_from(("0", "0", "2", "4.50")),
        "ages": st.sampled_from(("under 3", "under 18", "3-12", "18+", "any")),
        "companions": companions,
    }
)
for_groups = st.fixed_dictionaries(
    {
        "kind": st.just("ticket"),
        "price": st.sampled_from(("3", "5.50", "7")),
        "ages": st.sampled_from(("any", "any", "under 18", "18+")),
        "at_least": st.integers(2, 4),
        "one_free_per": st.sampled_from((None, 1, 2, 3)),
    }
)
by_status = st.fixed_dictionaries(
    {
        "kind": st.just("ticket"),
        "price": st.sampled_from(("0", "3", "6")),
        "needs": st.sampled_from((("student",), ("carer", "resident"))),
        "one_status_covers": st.integers(1, 3),
    }
)
for_mixed_groups = st.fixed_dictionaries(
    {
        "kind": st.just("ticket"),
        "price": st.sampled_from(("4", "6.25", "0")),
        "ages": st.just("18+"),
        "other_ages": st.sampled_from(
            (
                ({"ages": "under 18", "price": "3"},),
                ({"ages": "3-12", "price": "2.50"}, {"ages": "13-17", "price": "5"}),
            )
        ),
        "at_least": st.integers(1, 4),
        "at_most": rarely(st.integers(2, 3)),
        "one_free_per": st.sampled_from((None, None, 2)),
    }
)
on_birthdays = st.fixed_dictionaries(
    {
        "kind": st.just("ticket"),
        "price": st.sampled_from(("0", "2")),
        "good_on": st.sampled_from(("birthday", "birth month")),
        "companions": rarely(companions, in_=2),
    }
)
discounts = st.fixed_dictionaries(
    {
        "kind": st.just("discount"),
        "percent_off": st.sampled_from(("25", "33.3", "100")),
        "needs": st.sampled_from(((), ("student",), ("carer", "resident"))),
        "ages": bands,
        "one_status_covers": st.sampled_from((1, 1, 2)),
        "at_most": rarely(st.integers(1, 2)),
    }
)
tickets = st.one_of(
    any_tickets, beside_others, for_groups, by_status, for_mixed_groups, on_birthdays, discounts
)
seats = st.lists(st.fixed_dictionaries({"count": st.integers(1, 3), "ages": bands}), min_size=1, max_size=2)
bundles = st.fixed_dictionaries(
    {
        "kind": st.just("bundle"),
        "price": st.sampled_from(("6", "10", "12", "15", "19.50", "24", "0")),
        "seats": seats,
        "extras": rarely(
            st.fixed_dictionaries(
                {"price": prices, "ages": bands, "at_most": st.one_of(st.none(), st.integers(1, 2))}
            ),
            in_=2,
        ),
        "needs": needs,
        "must_include": rarely(st.sampled_from(("18+", "under 18"))),
        "at_least": st.sampled_from((1, 1, 2, 3)),
        "at_most": rarely(st.integers(1, 2)),
        "one_family": st.sampled_from((False, False, True)),
        "per_car": st.sampled_from((False, False, False, True)),
        "counts_everybody": st.sampled_from((False, False, False, True)),
    }
)
passes = st.fixed_dictionaries(
    {
        "kind": st.just("pass"),
        "price": st.sampled_from(("12", "25", "40", "0")),
        "months": st.just(12),
        "seats": seats,
        "named": st.booleans(),
        "guests_percent_off": st.sampled_from(("0", "33.3", "50", "100")),
        "guests_at_most": st.sampled_from((0, 1, 2)),
        "guests_per_year": st.sampled_from((None, None, 2, 3)),
    }
)
fees = st.one_of(
    st.fixed_dictionaries(
        {
            "price": st.sampled_from(("0.75", "1.50", "3")),
            "per": st.sampled_from(("order", "ticket")),
            "online_only": st.booleans(),
        }
    ),
    st.fixed_dictionaries({"percent": st.sampled_from(("4", "2.5")), "online_only": st.booleans()}),
)
when_vouchers_count = {
    "valid": rarely(st.sampled_from((GOOD_ON_ARRIVAL, BAD_ON_ARRIVAL))),
    "book_days_ahead": st.sampled_from((0, 0, 0, 7, 8)),
    "last_day": rarely(st.sampled_from((TODAY, TODAY - timedelta(days=1)))),
}
vouchers = st.one_of(
    st.fixed_dictionaries(
        {
            **when_vouchers_count,
            "percent_off": st.sampled_from(("10", "12.5", "100")),
            "needs": needs,
            "people_at_most": st.sampled_from((None, None, 1, 2, 3)),
        }
    ),
    st.fixed_dictionaries(
        {**when_vouchers_count, "amount_off": st.sampled_from(("3", "15", "40")), "needs": needs}
    ),
)


for_few = st.one_of(
    st.fixed_dictionaries(
        {
            "kind": st.just("bundle"),
            "price": st.sampled_from(("3", "6", "7")),
            "seats": st.just([{"count": 4}]),
            "extras": rarely(st.fixed_dictionaries({"price": st.sampled_from(("0", "1"))}), in_=2),
            "at_most": rarely(st.integers(1, 2), in_=2),
            "one_family": st.booleans(),
            "per_car": st.booleans(),
            "counts_everybody": st.booleans(),
        }
    ),
    st.fixed_dictionaries(
        {
            "kind": st.just("pass"),
            "price": st.sampled_from(("9", "25")),
            "months": st.just(12),
            "seats": st.just([{"count": 1}]),
            "guests_percent_off": st.sampled_from(("50", "100")),
            "guests_at_most": st.integers(1, 3),
            "guests_per_year": st.sampled_from((2, 3)),
        }
    ),
    st.just({"kind": "ticket", "price": "0", "ages": "under 3"}),
    for_mixed_groups,
    discounts,
)
"""Offers for one family, one car, so many guests: cheap enough that their limits are what decides."""


LEAVING = ARRIVAL + timedelta(hours=3)
LIMITS = {
    "valid": (GOOD_ON_ARRIVAL, BAD_ON_ARRIVAL),
    "first_day": (DAY, DAY + timedelta(days=1)),
    "last_day": (DAY, DAY - timedelta(days=1)),
    "book_days_ahead": (7, 8),
    "longest_stay_minutes": (180, 179),
    "leave_by": (time(13), time(12, 59)),
}
"""Limits in time that a visit from ten to one, asked about a week before, just keeps to, and just breaks."""


@st.composite
def with_limits(draw: st.DrawFn, asked: st.SearchStrategy[Question]) -> tuple[Question, Question]:
    """A question to a board with limits in time, and one to a board of the offers that keep to them."""
    question = draw(asked)
    place = question.place
    limited, good = [], []
    for offer in place.offers:
        keeps = draw(st.sampled_from((True, True, False)))
        name = draw(st.sampled_from(tuple(LIMITS)))
        with_limit = offer.model_copy(update={name: LIMITS[name][not keeps]})
        limited.append(with_limit)
        if keeps:
            good.append(with_limit)

    def asked_of(offers: list[Offer]) -> Question:
        return replace(question, place=place.model_copy(update={"offers": tuple(offers)}), held=())

    return asked_of(limited), asked_of(good)


@st.composite
def with_add_ons(draw: st.DrawFn, asked: st.SearchStrategy[Question]) -> Question:
    """A question to a board on which some offers include something beside entry, or make it cheaper."""
    question = draw(asked)
    place, names = question.place, st.sampled_from([offer.name for offer in question.place.offers])
    add_ons = [
        {
            "name": f"Add-on {number}",
            "price": draw(st.sampled_from(("2", "4.50", "9"))),
            "ages": draw(st.sampled_from(("any", "any", "3+", "under 18"))),
            "needs": draw(rarely(st.just(("student",)), ())),
            "valid": draw(rarely(st.sampled_from((GOOD_ON_ARRIVAL, BAD_ON_ARRIVAL)))),
            "least_height": draw(rarely(st.sampled_from(("42 in", "120 cm", "215 cm")), in_=2)),
            "most_height": draw(rarely(st.sampled_from(("48 in", "135 cm", "220 cm")))),
            "with_ticket": [
                {"offers": [draw(names)], "price": draw(st.sampled_from(("0", "1", "5")))}
                for _ in range(draw(st.integers(0, 2)))
            ],
        }
        for number in range(1, draw(st.integers(2, 3)))
    ]
    including = draw(st.sets(names, max_size=2))
    offers = [
        {**offer.model_dump(), "includes": ["Add-on 1"] if offer.name in including else []}
        for offer in place.offers
    ]
    card = {**place.model_dump(), "offers": offers, "add_ons": add_ons}
    tall = st.sampled_from((None, "41.9 in", "42 in", "3 ft 8", "120 cm", "135.5 cm"))
    party = tuple(
        Member.model_validate({**member.model_dump(), "height": draw(tall)}) for member in question.party
    )
    return replace(question, place=Place.model_validate(card), party=party)


def named(values: list[dict[str, Any]], word: str) -> list[dict[str, Any]]:
    """Give each of a list its own name."""
    return [{"name": f"{word} {number}", **value} for number, value in enumerate(values, start=1)]


@st.composite
def questions(
    draw: st.DrawFn, people: tuple[int, int], offers: int, *, groups: bool = False, few: bool = False
) -> Question:
    """A board and a party.

    Args:
        draw: hypothesis' own.
        people: fewest and most people.
        offers: most offers beside the usual two tickets.
        groups: whether many people are alike, as in a class.
        few: whether the board has the offers `for_few` rather than any.
    """
    count = draw(st.integers(*people))
    ages = (8, 8, 8, 30) if groups else AGES
    party = tuple(
        person(
            name,
            draw(st.sampled_from(ages)),
            draw(st.sampled_from((*[()] * 4, ("student",), ("carer",), ("resident", "student")))),
            family=draw(st.sampled_from(("", "", "", "next door"))),
            day=draw(st.sampled_from(("06-15", "06-15", "06-15", "12-08", "12-01"))),
        )
        for name in NAMES[:count]
    )
    usual = [
        {"kind": "ticket", "price": draw(st.sampled_from(("8", "12", "15.75"))), "ages": "13+"},
        {"kind": "ticket", "price": draw(st.sampled_from(("5", "6.50", "12"))), "ages": "under 13"},
    ]
    special = for_few if few else st.one_of(tickets, tickets, bundles, passes)
    board = named(
        [
            *usual[: draw(st.sampled_from((2, 2, 2, 1, 0)))],
            *draw(st.lists(special, min_size=1, max_size=offers)),
        ],
        "Offer",
    )
    for offer in board:
        offer["online_only"] = draw(st.sampled_from((False, False, True)))
    all_names = [offer["name"] for offer in board]
    some_vouchers = named(draw(st.lists(vouchers, max_size=2)), "Voucher")
    for voucher in some_vouchers:
        if draw(st.booleans()):
            voucher["offers"] = tuple(draw(st.sets(st.sampled_from(all_names), min_size=1, max_size=2)))
    place = make_place(
        offers=board,
        fees=named(draw(st.lists(fees, max_size=2)), "Fee"),
        vouchers=some_vouchers,
        sales_tax=draw(
            rarely(st.sampled_from(({"percent": "8.25"}, {"percent": "7", "on_fees": True})), in_=3)
        ),
    )
    elsewhere = draw(st.sampled_from(("100", "50", "25")))
    other = make_place(
        id="other-museum",
        name="Other museum",
        offers=[
            {
                "name": "Friends",
                **draw(passes),
                "elsewhere": [
                    {
                        "place": "test-museum",
                        "percent_off": elsewhere,
                        "at_most": draw(st.sampled_from((None, 1, 2))),
                    }
                ],
            },
            {"name": "Both", "price": "19", "also_at": [{"place": "test-museum"}]},
        ],
    )
    held = []
    owned = [("test-museum", offer["name"]) for offer in board if offer["kind"] == "pass"]
    for card, name in [*owned, ("other-museum", "Friends"), ("other-museum", "Both")]:
        if draw(st.integers(0, 5)) >= (3 if few else 5):
            holders = draw(st.lists(st.sampled_from(NAMES[:count]), min_size=1, max_size=3, unique=True))
            held.append(
                HeldPass(
                    place=card,
                    offer=name,
                    holders=tuple(holders),
                    valid_until=DAY,
                    guests_so_far=draw(st.integers(0, 2)),
                )
            )
    household = frozenset(NAMES[: count - draw(st.integers(0, count - 1))])
    return Question(place, party, household, tuple(held), (other,), draw(st.sampled_from((None, 2, 3))))

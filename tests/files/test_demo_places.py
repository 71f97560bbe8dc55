"""The invented demo scenario keeps the promises that its README makes."""

import re
import tomllib
from collections.abc import Callable
from datetime import date, datetime, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

import holidays
import icalendar
import pytest
import recurring_ical_events
import vobject
from geopy.distance import geodesic

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.family.household import Household
from tripplan.documents.places.offers import Bundle, Pass, Ticket
from tripplan.documents.places.place import Place
from tripplan.files.calendar_reader.reading import read_here
from tripplan.files.cards.household_file import load_household
from tripplan.files.cards.logbook_file import load_logbook_entry
from tripplan.files.cards.place_card import load_place_cards
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission
from tripplan.planning.opening.hours import hours_on
from tripplan.values.opening_hours import open_spans

DEMO = Path(__file__).resolve().parents[2] / "demo_places"
CARDS = sorted((DEMO / "places").glob("*.toml"))
CALENDARS = sorted((DEMO / "calendars").glob("*.ics"))
TODAY = date(2026, 11, 25)
EIGHT_WEEKS = tuple(TODAY + timedelta(days=n) for n in range(57))
FIFTH_BIRTHDAY = date(2026, 12, 18)


def _toml(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"), parse_float=Decimal)


@pytest.fixture(scope="module")
def household() -> Household:
    """The demo family."""
    return Household.model_validate(_toml(DEMO / "household.toml"))


@pytest.fixture(scope="module")
def places() -> dict[str, Place]:
    """Every demo place by its file's name."""
    return {path.stem: Place.model_validate(_toml(path)) for path in CARDS}


def _plain(place: Place) -> list[Ticket]:
    """Single tickets that anybody of the right age can buy on any day."""
    return [
        offer
        for offer in place.offers
        if isinstance(offer, Ticket)
        and not offer.needs
        and offer.valid is None
        and offer.at_least == 1
        and not (offer.companions and offer.companions.needs)
    ]


def _single_price(place: Place, months: int) -> Decimal | None:
    return min((ticket.price for ticket in _plain(place) if months in ticket.ages), default=None)


def _open_days(place: Place, days: tuple[date, ...], out_of_school: frozenset[date]) -> list[date]:
    closed_for = holidays.country_holidays("US", subdiv=place.where.subdivision, years=[2026, 2027])
    zone = place.where.zone
    return [
        day
        for day in days
        if open_spans(
            place.opening.hours,
            datetime(day.year, day.month, day.day, tzinfo=zone),
            datetime(day.year, day.month, day.day, 23, 59, tzinfo=zone),
            frozenset(closed_for),
            out_of_school,
        )
    ]


def test_every_card_and_the_household_pass_the_check_without_a_remark(places: dict[str, Place]) -> None:
    """Reading the demo as a parent would gives every card and the household, and no fault or warning."""
    cards = load_place_cards(DEMO / "places", TODAY)
    assert [str(finding) for finding in cards.findings] == []
    assert {card.id for card in cards.places} == set(places)
    family = load_household(DEMO / "household.toml", TODAY)
    assert family.findings == ()
    assert family.value is not None


def test_every_card_is_named_after_its_id(places: dict[str, Place]) -> None:
    """A card's file name is its id, so that passes and records can point to it."""
    assert {name: place.id for name, place in places.items()} == {name: name for name in places}


def test_there_are_at_least_eight_places_in_three_states(places: dict[str, Place]) -> None:
    """The family can choose among at least eight places, and three states have at least two each."""
    by_state = [place.where.subdivision for place in places.values()]
    assert len(places) >= 8
    assert {state for state in by_state if by_state.count(state) >= 2} == {"IA", "IL", "WI"}


def test_distances_make_naps_and_rests_matter_differently(
    household: Household, places: dict[str, Place]
) -> None:
    """Places lie 25 to 260 km from home in a straight line (WGS84, by geopy), near ones and far ones."""
    home = household.home.point
    away = [
        geodesic(
            (home.latitude, home.longitude), (place.where.point.latitude, place.where.point.longitude)
        ).km
        for place in places.values()
    ]
    assert 25 <= min(away) < 60
    assert 200 < max(away) <= 260


def test_the_family_has_the_ages_it_is_known_for(household: Household) -> None:
    """On November 25, 2026: two adults, a grandparent of 67, children of 11, 7 and 4 years and 16 months."""
    months = [member.months_on(TODAY) for member in household.members]
    assert [m // 12 for m in months[:-1]] == [39, 41, 67, 11, 7, 4]
    assert months[-1] == 16
    assert household.car is not None
    assert household.car.seats >= len(household.members)


def test_the_youngest_has_one_midday_nap(household: Household) -> None:
    """Bram sleeps once, at 12:30 for 100 minutes, also in the car and the pushchair; nobody else naps."""
    (nap,) = household.members[-1].naps
    assert (nap.start.isoformat(), nap.minutes, nap.in_car, nap.in_pushchair) == ("12:30:00", 100, True, True)
    assert not any(member.naps for member in household.members[:-1])


def test_a_fifth_birthday_changes_a_price_at_several_places_and_leaves_others_alone(
    household: Household, places: dict[str, Place]
) -> None:
    """Turning five on December 18 costs more at four places or more, and the same at three or more."""
    odile = next(member for member in household.members if member.name == "Odile")
    before, after = odile.months_on(FIFTH_BIRTHDAY - timedelta(days=1)), odile.months_on(FIFTH_BIRTHDAY)
    assert (before // 12, after // 12) == (4, 5)
    changed = {
        place.id
        for place in places.values()
        if _single_price(place, before) is not None
        and _single_price(place, before) != _single_price(place, after)
    }
    assert len(changed) >= 4
    assert len(places) - len(changed) >= 3


@pytest.mark.parametrize(
    ("place_id", "before", "after"),
    [
        # By hand from the cards. Tours: 3 x 19.50 + 2 x 11.00 = 80.50; five fees of 1.25 = 6.25;
        # 5.5 % of 80.50 = 4.43. With a third child tour: 91.50 + 7.50 + 5.03.
        ("candlewick-sink-cave", "91.18", "104.03"),
        # Nest of four 38.00 and the three left over, 9.50 + 5.00 + 0; then 9.50 + 9.50 + 0.
        ("ledgewing", "52.50", "57.00"),
        # One vat seats the six who are three or older: 66.00; the order's fee 3.00; 5.5 % of 66.00 = 3.63.
        ("rag-and-reed", "72.63", "72.63"),
    ],
)
def test_the_whole_family_pays_what_the_board_says_before_and_after_the_birthday(
    place_id: str, before: str, after: str, household: Household, places: dict[str, Place]
) -> None:
    """On the Saturdays before and after the birthday the cheapest way in costs what it does by hand."""
    place = places[place_id]
    for day, total in ((date(2026, 12, 12), before), (date(2026, 12, 19), after)):
        arrival = datetime(day.year, day.month, day.day, 13, tzinfo=place.where.zone)
        admission = cheapest_admission(place, household.members, arrival, today=TODAY)
        assert isinstance(admission, Admission)
        assert admission.total.amount == Decimal(total)


def test_everybody_can_get_in_everywhere_on_a_plain_day(
    household: Household, places: dict[str, Place]
) -> None:
    """No price board leaves out an age that the family has, before or after the birthday."""
    missing = {
        (place.id, member.name, day)
        for place in places.values()
        for member in household.members
        for day in (TODAY, FIFTH_BIRTHDAY)
        if _single_price(place, member.months_on(day)) is None
    }
    assert missing == set()


def test_plain_tickets_never_overlap_in_age(places: dict[str, Place]) -> None:
    """Two plain tickets of a card are never for the same age, so each age has one plain price."""
    overlapping = {
        (place.id, one.name, other.name)
        for place in places.values()
        for position, one in enumerate(_plain(place))
        for other in _plain(place)[position + 1 :]
        if one.ages.overlaps(other.ages)
    }
    assert overlapping == set()


PRICE_BOARD_KINDS: dict[str, Callable[[Place], bool]] = {
    "free for small children with a paying adult": lambda p: any(
        isinstance(o, Ticket) and o.price == 0 and o.companions is not None and not o.companions.needs
        for o in p.offers
    ),
    "carer free": lambda p: any(
        isinstance(o, Ticket) and o.companions is not None and bool(o.companions.needs) for o in p.offers
    ),
    "family bundle with a price for extra children": lambda p: any(
        isinstance(o, Bundle) and len(o.seats) > 1 and o.extras is not None for o in p.offers
    ),
    "bundle for any so many people": lambda p: any(
        isinstance(o, Bundle) and len(o.seats) == 1 for o in p.offers
    ),
    "group with a free leader": lambda p: any(
        isinstance(o, Ticket) and o.at_least >= 10 and o.one_free_per is not None and not o.needs
        for o in p.offers
    ),
    "pass with guests": lambda p: any(isinstance(o, Pass) and o.guests_at_most > 0 for o in p.offers),
    "pass honoured elsewhere": lambda p: any(isinstance(o, Pass) and bool(o.elsewhere) for o in p.offers),
    "pass by name": lambda p: any(isinstance(o, Pass) and o.named for o in p.offers),
    "free day": lambda p: any(
        isinstance(o, Ticket) and o.price == 0 and o.valid is not None for o in p.offers
    ),
    "cheap day": lambda p: any(
        isinstance(o, Ticket) and o.price > 0 and o.valid is not None and not o.needs for o in p.offers
    ),
    "home-education day to be booked": lambda p: any(
        isinstance(o, Ticket) and o.needs == ("home educated",) and o.at_least > 1 and o.book_days_ahead > 0
        for o in p.offers
    ),
    "educator and helper": lambda p: any(
        isinstance(o, Ticket) and o.needs == ("home educator",) and o.one_status_covers > 1 for o in p.offers
    ),
    "resident": lambda p: any(
        isinstance(o, Ticket) and any("resident" in need for need in o.needs) for o in p.offers
    ),
    "benefit card": lambda p: any(isinstance(o, Ticket) and "benefit card" in o.needs for o in p.offers),
    "senior": lambda p: any(isinstance(o, Ticket) and o.ages.first >= 60 * 12 for o in p.offers),
    "infants by months": lambda p: any(isinstance(o, Ticket) and o.ages.last == 23 for o in p.offers),
    "only the car pays": lambda p: (p.parking.price or 0) > 0 and all(t.price == 0 for t in _plain(p)),
    "free entry, paid add-ons": lambda p: (
        p.parking.price == 0 and bool(p.add_ons) and all(t.price == 0 for t in _plain(p))
    ),
    "timed entry": lambda p: bool(p.opening.entry_times),
    "booking fee per ticket": lambda p: any(fee.per == "ticket" for fee in p.fees),
    "booking fee per order": lambda p: any(fee.per == "order" for fee in p.fees),
    "sales tax on top": lambda p: p.sales_tax is not None,
    "voucher": lambda p: bool(p.vouchers),
    "parking paid": lambda p: (p.parking.price or 0) > 0,
    "parking free": lambda p: p.parking.price == 0,
    "parking unknown": lambda p: p.parking.price is None,
}


@pytest.mark.parametrize("kind", PRICE_BOARD_KINDS)
def test_each_kind_of_price_board_stands_somewhere(kind: str, places: dict[str, Place]) -> None:
    """Every way of charging that the demo promises is found on at least one card."""
    assert any(PRICE_BOARD_KINDS[kind](place) for place in places.values())


def test_no_two_price_boards_are_alike(places: dict[str, Place]) -> None:
    """Every card charges in its own combination of ways."""
    ways = [
        frozenset(kind for kind, holds in PRICE_BOARD_KINDS.items() if holds(place))
        for place in places.values()
    ]
    assert len(set(ways)) == len(places)


def test_passes_point_to_places_that_exist(places: dict[str, Place]) -> None:
    """Where a pass counts elsewhere, the other card is in the folder."""
    named = {
        other.place
        for place in places.values()
        for offer in place.offers
        if isinstance(offer, Pass)
        for other in offer.elsewhere
    }
    assert named
    assert named <= set(places)


def test_statuses_that_the_family_holds_are_asked_for_somewhere(
    household: Household, places: dict[str, Place]
) -> None:
    """What the cards call a status and what the family calls it are the same words."""
    held = {status for member in household.members for status in member.statuses}
    asked = {
        need
        for place in places.values()
        for offer in place.offers
        if isinstance(offer, Ticket)
        for need in offer.needs
    } | {need for place in places.values() for voucher in place.vouchers for need in voucher.needs}
    assert held <= asked


def test_every_card_tells_a_parent_what_she_needs(places: dict[str, Place]) -> None:
    """Each card has topics, cautions, three questions, an address, and prices read in 2026 before today."""
    for place in places.values():
        assert place.visit.topics, place.id
        assert place.visit.cautions, place.id
        assert len(place.visit.questions) >= 3, place.id
        assert place.where.address, place.id
        assert date(2026, 1, 1) <= place.prices_read.on <= TODAY, place.id


def test_every_topic_can_be_studied_at_two_places(places: dict[str, Place]) -> None:
    """A topic can be compared when several places teach it; at most one topic stands alone."""
    topics = [topic for place in places.values() for topic in place.visit.topics]
    assert len({topic for topic in topics if topics.count(topic) == 1}) <= 1


def test_no_address_on_the_net_or_telephone_number_can_reach_anybody(places: dict[str, Place]) -> None:
    """Web addresses lie under the reserved example domains, and telephone numbers are 555-01xx."""
    for place in places.values():
        assert not place.web or re.fullmatch(r"https://[a-z-]+\.example\.(org|com)", place.web), place.id
        assert not place.telephone or re.fullmatch(r"\(\d{3}\) 555-01\d\d", place.telephone), place.id


def test_several_places_are_open_in_winter_and_some_are_closed(places: dict[str, Place]) -> None:
    """In the eight weeks from today seven places or more open on ten days or more, and two never open."""
    open_days = {place.id: len(_open_days(place, EIGHT_WEEKS, frozenset())) for place in places.values()}
    assert sum(count >= 10 for count in open_days.values()) >= 7
    assert [name for name, count in sorted(open_days.items()) if count == 0] == [
        "speckled-oxbow-mill",
        "wrens-turn-lock",
    ]


def test_nobody_opens_on_christmas_day_but_the_prairie(places: dict[str, Place]) -> None:
    """Only the reserve, which has no staff at the gate, is open on December 25."""
    christmas = (date(2026, 12, 25),)
    out_of_school = frozenset(christmas)
    assert [p.id for p in places.values() if _open_days(p, christmas, out_of_school)] == ["lantern-bluestem"]


def test_school_breaks_open_the_cave_on_winter_weekdays(places: dict[str, Place]) -> None:
    """The cave opens on Tuesday, December 29 in the school break and on no other Tuesday in December."""
    cave = places["candlewick-sink-cave"]
    tuesdays = tuple(date(2026, 12, n) for n in (1, 8, 15, 22, 29))
    assert _open_days(cave, tuesdays, frozenset({date(2026, 12, 29)})) == [date(2026, 12, 29)]


@pytest.mark.parametrize("path", CALENDARS, ids=lambda path: path.stem)
def test_calendar_lines_end_and_fold_as_the_standard_says(path: Path) -> None:
    """Lines end in CR LF and carry at most 75 octets (RFC 5545, 3.1)."""
    content = path.read_bytes()
    lines = content.split(b"\r\n")
    assert lines[-1] == b""
    assert not any(b"\n" in line or b"\r" in line for line in lines)
    assert max(len(line) for line in lines) <= 75


@pytest.mark.parametrize("path", CALENDARS, ids=lambda path: path.stem)
def test_calendars_have_what_the_standard_requires(path: Path) -> None:
    """Every entry has its own UID, a DTSTAMP in UTC and an end after its start; every TZID is defined."""
    calendar = icalendar.Calendar.from_ical(path.read_bytes())
    assert isinstance(calendar, icalendar.Calendar)
    events = calendar.walk("VEVENT")
    assert not calendar.errors
    assert {"PRODID", "VERSION"} <= set(calendar)
    assert len({str(event["UID"]) for event in events}) == len(events) >= 8
    for event in events:
        assert not event.errors
        assert event.decoded("DTSTAMP").utcoffset() == timedelta(0)
        assert event.decoded("DTEND") > event.decoded("DTSTART")
        assert event["DTEND"].params.get("VALUE") == event["DTSTART"].params.get("VALUE")
    used = set(re.findall(r"TZID=([^:;]+)", path.read_text(encoding="utf-8")))
    assert used <= {str(zone["TZID"]) for zone in calendar.walk("VTIMEZONE")}


@pytest.mark.parametrize("path", CALENDARS, ids=lambda path: path.stem)
def test_a_second_reader_sees_the_same_entries(path: Path) -> None:
    """A reader from another hand (vobject) accepts the file and finds the same starts and titles."""
    ours = {
        (str(event["SUMMARY"]), event.decoded("DTSTART"))
        for event in icalendar.Calendar.from_ical(path.read_bytes()).walk("VEVENT")
    }
    other = vobject.readOne(path.read_bytes().decode())
    assert other.validate()
    assert {(event.summary.value, event.dtstart.value) for event in other.vevent_list} == ours


@pytest.mark.parametrize("path", CALENDARS, ids=lambda path: path.stem)
def test_the_reader_of_the_app_has_nothing_to_remark(path: Path, household: Household) -> None:
    """Read for the next eight weeks, each calendar gives entries and no warning."""
    window = DateSpan(first=EIGHT_WEEKS[0], last=EIGHT_WEEKS[-1])
    read = read_here(path.read_bytes(), path.name, window, household.home.zone)
    assert read.findings == ()
    assert read.value is not None
    assert read.value.entries


def test_only_some_of_the_family_entries_take_time(household: Household) -> None:
    """A birthday, a due date, a declined invitation and a meet that was called off leave the family free."""
    path = DEMO / "calendars" / "quillmarsh-family.ics"
    window = DateSpan(first=EIGHT_WEEKS[0], last=EIGHT_WEEKS[-1])
    content = read_here(path.read_bytes(), path.name, window, household.home.zone).value
    assert content is not None
    assert {entry.summary for entry in content.entries if not entry.takes_time} == {
        "Odile's birthday",
        "Library books due",
        "Neighborhood cookie exchange",
        "Swim meet",
    }


def _titles_on(name: str, day: date) -> set[str]:
    calendar = icalendar.Calendar.from_ical((DEMO / "calendars" / f"{name}.ics").read_bytes())
    return {str(event["SUMMARY"]) for event in recurring_ical_events.of(calendar).at(day)}


@pytest.mark.parametrize(
    ("name", "first", "last", "title"),
    [
        (
            "limekiln-bluffs-district-ia",
            date(2026, 12, 23),
            date(2027, 1, 1),
            "Winter Break - No School",
        ),
        ("otter-slough-district-wi", date(2026, 12, 24), date(2027, 1, 1), "Winter Recess - No School"),
    ],
)
def test_a_winter_break_ends_with_its_last_free_day(name: str, first: date, last: date, title: str) -> None:
    """The exclusive end of an all-day entry is the morning after the last free day."""
    assert title in _titles_on(name, first)
    assert title in _titles_on(name, last)
    assert title not in _titles_on(name, first - timedelta(days=1))
    assert title not in _titles_on(name, last + timedelta(days=1))


def test_choir_is_skipped_over_the_holidays() -> None:
    """Choir meets on Tuesdays but for December 22 and 29."""
    tuesdays = [date(2026, 12, 1) + timedelta(weeks=n) for n in range(6)]
    assert [day for day in tuesdays if "Children's choir" in _titles_on("quillmarsh-family", day)] == [
        date(2026, 12, 1),
        date(2026, 12, 8),
        date(2026, 12, 15),
        date(2027, 1, 5),
    ]


def test_the_logbook_is_of_this_family_and_these_places(
    household: Household, places: dict[str, Place]
) -> None:
    """Six outings, all over, without a warning; those to a place with a card fell on days it was open."""
    entries = [
        load_logbook_entry(path, TODAY, household) for path in sorted((DEMO / "logbook").glob("*.toml"))
    ]
    assert len(entries) == 6
    assert all(read.findings == () for read in entries)
    assert len({entry.place for read in entries if (entry := read.usable()).place}) == 5
    for read in entries:
        entry = read.usable()
        if entry.place is not None:
            hours = hours_on(places[entry.place], entry.day, set(), set())
            moments = entry.moments
            assert moments.arrived is not None
            assert moments.left_place is not None
            assert any(
                span.opens <= moments.arrived <= moments.left_place <= span.closes for span in hours.spans
            ), entry.id

"""Prices as venues write them are read with who pays, at which ages, and the words they came from.

The texts are our own; the ways of writing are common practice, no source.
"""

from decimal import Decimal

import pytest

from tripplan.reading.prices.facts import FamilyPrice, PassPrice
from tripplan.reading.prices.prices import read_prices
from tripplan.reading.vocabulary import plain_text

READ = [
    (
        "Adults $14, seniors (65+) $12, children 3-12 $9, under 3 free",
        "adult 13-64 14; senior 65+ 12; child 3-12 9; child under 3 0",
    ),
    (
        "General Admission: $12 | Seniors (60+) & Military: $10 | Youth 4-17: $8 | Children 3 and under: free",
        "anyone 4+ 12; senior 60+ 10; military None 10; youth 4-17 8; child under 4 0",
    ),
    (
        "Tickets: Adults £12.50, Children (4-15) £8.50, Under 4s free, Concessions £10",
        "adult 16+ 12.50; child 4-15 8.50; child under 4 0; reduced None 10",
    ),
    (
        "Erwachsene 9,50 €, Kinder (4-14 Jahre) 5 €, Kinder unter 4 Jahren frei, Gruppen ab 15 Personen 7,50 € pro Person",
        "adult 15+ 9.50; child 4-14 5; child under 4 0; anyone None 7.50 at least 15",
    ),
    (
        "Admission: $8 adults; $6 students with ID; $5 ages 5-11; free for 4 and under.",
        "adult 12+ 8; student None 6 if with ID; child 5-11 5; child under 5 0",
    ),
    ("Adults\n$16\nSeniors 62+\n$14\nKids 2-12\n$12\nUnder 2\nFree", "adult 13-61 16; senior 62+ 14; child 2-12 12; child under 2 0"),
    ("Eintritt frei für Kinder bis 6 Jahre. Kinder 7-14: 3,50 €. Erwachsene: 7 €.", "child under 7 0; child 7-14 3.50; adult 15+ 7"),
    ("Online: $12 adult, $9 child", "adult None 12 if Online; child None 9 if Online"),
    ("Adults 14, children 9", "adult None 14; child None 9"),
    ("Kids 5 and under are free, 6-12 are $4 and everyone else is $7", "child under 6 0; child 6-12 4; anyone 6+ 7"),
    ("The cost is $6.50 for adults, $4.50 for children 12 and under, and free for children under 3.",
     "adult 13+ 6.50; child 3-12 4.50; child under 3 0"),
    ("Residents: adults $8, children $4", "adult None 8 if Residents; child None 4 if Residents"),
    ("first Sunday free", "anyone None 0 on first Sunday"),
    ("Adults $10. $2 off for adults online.", "adult None 10; adult None 8 if online"),
    ("Seniors (65+) 15% off; Admission $10", "anyone None 10; senior 65+ 8.50"),
    ("Adults $10, kids 3-12 half price", "adult 13+ 10; child 3-12 5.00"),
    ("$2 off for residents. Adults $14, kids $9",
     "adult None 14; child None 9; adult None 12 if residents; child None 7 if residents"),
    ("\tAdults\tKids (3-12)\nWeekdays\t$5\t$3\nWeekends\t$7\t$4",
     "adult None 5 on Weekdays; child 3-12 3 on Weekdays; adult None 7 on Weekends; child 3-12 4 on Weekends"),
    ("Adults / children: weekdays $5 / $3; weekends $7 / $4",
     "adult None 5 on weekdays; child None 3 on weekdays; adult None 7 on weekends; child None 4 on weekends"),
    ("Free on Tuesdays. Adults $14", "anyone None 0 on on Tuesdays.; adult None 14"),
    ("General admission: Adults (18-64) $18.95 | Youth (3-17) $12.95 | Toddlers (2 & under) FREE",
     "adult 18-64 18.95; youth 3-17 12.95; infant under 3 0"),
    ("Adult .......... $12\nChild (4-11) ... $8\nMilitary w/ID .. $10", "adult 12+ 12; child 4-11 8; military None 10 if w/ID"),
    ("Admission is free for members and children under 2. All others $9.", "member None 0; child under 2 0; anyone 2+ 9"),
    ("Adults 13+ $15 in advance, $18 at the gate.", "adult 13+ 15 if in advance; adult 13+ 18 if at the gate"),
    ("Ages 3-12: $20\nAges 13+: $25\nSave $2 per ticket when you buy online.",
     "child 3-12 20; anyone 13+ 25; child 3-12 18 if online; anyone 13+ 23 if online"),
    ("Mon-Thu $8, Fri-Sun $12. Under 2 no charge.", "anyone 2+ 8 on Mon-Thu; anyone 2+ 12 on Fri-Sun; child under 2 0"),
    ("We charge $10/car on weekdays and $15/car on weekends and holidays.",
     "car None 10 on weekdays; car None 15 on weekends, holidays"),
    ("Off-peak: adults £11, children £8. Peak (weekends & school holidays): adults £13.50, children £10.",
     "adult None 11 if Off-peak; child None 8 if Off-peak; "
     "adult None 13.50 if Peak on weekends, school holidays; child None 10 if Peak on weekends, school holidays"),
    ("$25 for a family of five, or $7 a person.", "anyone None 7"),
    ("Tuesday: admission is pay-what-you-wish. Other days: adults $12", "anyone None 0 on Tuesday; adult None 12"),
    ("Under-5s and toddlers free. Adults £8.50", "child under 5 0; infant None 0; adult None 8.50"),
    ("Eintritt: 5 € / erm. 3 €. Freier Eintritt für Kinder und Jugendliche bis 18 Jahre.",
     "anyone 19+ 5; reduced None 3; child under 19 0; youth under 19 0"),
    ("Kinder bis einschließlich 5 Jahre: frei | Kinder 6-17: 4,50 EUR | Senioren ab 65: 6 EUR",
     "child under 6 0; child 6-17 4.50; senior 65+ 6"),
    ("Adult £18.95 (online £16.95), Child 2-15 £16.95 (online £14.95)",
     "adult 16+ 18.95; adult 16+ 16.95 if online; child 2-15 16.95; child 2-15 14.95 if online"),
    ("Child $9 (1-17), Adult $10", "child 1-17 9; adult 18+ 10"),
    ("Seniors 65 and better are $26.95.", "senior 65+ 26.95"),
    ("Erwachsene 5 €, Kinder ab 6 J. 3,50 €", "adult None 5; child 6+ 3.50"),
    ("Adults: $17, Children under 2: Free, SNAP families: $3", "adult None 17; child under 2 0; anyone 2+ 3 if SNAP families"),
    ("$10 per vehicle (one to eight people)", "car None 10"),
    ("Adult (Ages 13-64) $9.50\nGroup rate (15+) $7.00 per person", "adult 13-64 9.50; anyone None 7.00 at least 15"),
    ("Admission: Adults $8/Seniors, students $6/Under 12 free", "adult 12+ 8; senior None 6; student None 6; child under 12 0"),
    ("$10 adults; $8 youth 4-17 and seniors 60+", "adult 18-59 10; youth 4-17 8; senior 60+ 8"),
    ("Eintrittspreise: Erw. 6,- €; Kinder/Jugendliche (6-17 J.) 3,- €; Gruppen (ab 10 Pers.) 5,- € p. P.",
     "adult 18+ 6; child 6-17 3; youth 6-17 3; anyone None 5 at least 10"),
    ("Erwachsene: 15 Euro / Schüler, Studierende, Rentner: 11 Euro", "adult None 15; student None 11; senior None 11"),
    ("Adult - 13.00 / Child - 9.00 / Senior - 11.00", "adult None 13.00; child None 9.00; senior None 11.00"),
    ("Ticket | Price\nAdult | $15\nChild (2-12) | $11\nInfant (under 2) | Free", "adult 13+ 15; child 2-12 11; infant under 2 0"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "expected"), READ, ids=[text[:30] for text, _ in READ])
def test_prices_are_read_as_they_are_meant(text: str, expected: str) -> None:
    """Each price stands with its visitor, ages, days, group and condition, and nothing is left over."""
    read = read_prices(plain_text(text))
    told = [
        f"{p.person} {p.ages} {p.price}"
        + (f" at least {p.group_of}" if p.group_of else "")
        + (f" if {', '.join(p.conditions)}" if p.conditions else "")
        + (f" on {p.days}" if p.days else "")
        for p in read.entry
    ]
    assert told == expected.split("; ")
    assert not read.not_understood
    assert all(p.words in plain_text(text) for p in read.entry)


def test_families_passes_and_parking_are_told_apart_from_entry() -> None:
    """A family's price, a pass and the car are no tickets."""
    read = read_prices(
        "family of up to 6 $45; Family (2 adults + 3 children) £38; annual pass $80; parking $6"
    )
    assert [(f.price, f.people, f.adults, f.children) for f in read.families] == [
        (Decimal(45), 6, None, None),
        (Decimal(38), None, 2, 3),
    ]
    assert [(p.price, p.yearly) for p in read.passes] == [(Decimal(80), True)]
    assert (read.parking, read.entry) == (Decimal(6), ())
    assert isinstance(read.families[0], FamilyPrice)
    assert isinstance(read.passes[0], PassPrice)


@pytest.mark.parametrize(
    "text",
    [
        "Soup of the day $5, burger $12, kids menu $7",
        "kayak rental $20 per person",
        "Hayride $3 extra",
        "Children under 90cm go free",
        "Buy one adult ticket, get one child ticket free",
        "plus $1.50 booking fee",
        "Single-occupant vehicle: $4",
        "Dogs $2",
        "$5 for a vehicle with one person",
        "Führung 40 € zzgl. Eintritt",
        "Geburtstagskinder haben freien Eintritt",
        "$12 first child, $10 each sibling, adults free",
        "Members get 20% off in the gift shop",
        "Groups of 10 or more 15% off",
        "8% sales tax is added",
    ],
)
def test_what_is_no_entry_price_is_left_word_for_word(text: str) -> None:
    """A menu, a donation or a rental is never taken for a ticket."""
    read = read_prices(text)
    assert not read.entry
    assert not read.off
    assert read.not_understood == (text,)


def test_where_only_a_donation_is_asked_entry_is_free() -> None:
    """Nobody must pay it, so it is told and no price; beside a price it changes nothing."""
    asked = read_prices("Suggested donation of $5 per adult.")
    assert [price.price for price in asked.entry] == [0]
    assert asked.not_understood
    beside = read_prices("Adults $14. A voluntary donation of $2 per car is welcome.")
    assert [price.price for price in beside.entry] == [14]

"""Every fault of a written form shows at once, in plain words, and none does harm."""

import re
from collections.abc import Iterator
from decimal import Decimal
from functools import partial
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tripplan.documents.family.household import Household
from tripplan.documents.places.offers import prices_in
from tripplan.documents.places.place import Place
from tripplan.errors import Finding, InputFaults, Weight
from tripplan.files.toml.toml_text import LONGEST_KEY, parse_toml, shown, write_toml
from tripplan.files.toml.written import MOST_FAULTS, form_text, read_form

JARGON = re.compile(r"input should|value error|validation|pydantic|tuple|nonetype|cannot be read", re.I)

GOOD = """
id = "a-mill"
name = "A mill"
currency = "USD"
[where]
country = "US"
latitude = 41.5
longitude = -90.5
time_zone = "America/Chicago"
[opening]
hours = "Tu-Su 10:00-17:00"
[[offers]]
name = "Adult"
price = 12.50
ages = "13+"
[prices_read]
on = 2026-11-02
source = "board"
"""


def faults_of(text: str | bytes, form: type[Any] = Place) -> dict[str, str]:
    """The findings of a text as field and message."""
    return {f.field: f.message for f in read_form(text, "a-mill.toml", form).findings}


def with_line(line: str, *, under: str) -> str:
    """The good card with one more line under a heading."""
    return GOOD.replace(f"{under}\n", f"{under}\n{line}\n")


def test_a_good_card_has_no_findings() -> None:
    """A card without fault is read whole, its numbers exact."""
    read = read_form(GOOD, "a-mill.toml", Place)
    assert read.findings == ()
    assert prices_in(read.usable().offers[0])[0] == Decimal("12.50")


def test_every_kind_of_fault_is_told_at_once_with_file_field_and_value() -> None:
    """A syntax slip, an unknown field, a wrong type and a missing field come in one list."""
    text = (
        GOOD.replace("price = 12.50", "price = 12,50")
        .replace('name = "A mill"', "")
        .replace("ages =", "agse =")
        .replace("latitude = 41.5", 'latitude = "north"')
    )
    read = read_form(text, "a-mill.toml", Place)
    assert read.value is None
    told = {(f.file, f.field, f.value) for f in read.findings}
    assert told == {
        ("a-mill.toml", "line 14", "price = 12,50"),
        ("a-mill.toml", "name", ""),
        ("a-mill.toml", "offers[0].agse", "13+"),
        ("a-mill.toml", "where.latitude", "north"),
    }
    with pytest.raises(InputFaults) as raised:
        read.usable()
    assert len(raised.value.findings) == 4


def test_what_stood_on_an_unreadable_line_is_not_called_missing() -> None:
    """The price that could not be read is told once, as a slip, and not again as missing."""
    assert list(faults_of(GOOD.replace("price = 12.50", "price = 12,50"))) == ["line 14"]


def test_a_heading_that_stands_twice_takes_its_fields_along() -> None:
    """Fields under a heading that cannot be read are not blamed on the heading before."""
    assert list(faults_of(GOOD + '[opening]\nhours = "24/7"\n')) == ["line 19"]


@pytest.mark.parametrize(
    ("line", "under", "field", "part"),
    [
        ("prise = 3", "[[offers]]", "offers[0].prise", "did you mean price?"),
        ('currency = "USD"', "[opening]", "opening.currency", "belongs at the top of the file"),
        ("at_least = 0", "[[offers]]", "offers[0].at_least", "must be 1 or more"),
        ("at_least = 2.5", "[[offers]]", "offers[0].at_least", "must be a whole number"),
        ("refundable = 7", "[[offers]]", "offers[0].refundable", "must be true or false"),
        ("first_day = 20261105", "[[offers]]", "offers[0].first_day", "must be a date such as"),
        ('needs = "educator"', "[[offers]]", "offers[0].needs", "must be a list"),
        ("needs = [3]", "[[offers]]", "offers[0].needs[0]", "must be a text in quotation marks"),
        ("companions = 3", "[[offers]]", "offers[0].companions", "must be a heading"),
        (
            'kind = "coupon"',
            "[[offers]]",
            "offers[0].kind",
            "must be one of 'ticket', 'discount', 'bundle', 'pass'",
        ),
        ("entry_times = [630]", "[opening]", "opening.entry_times[0]", "a time of day reads like 12:30"),
        ('entry_times = ["1230"]', "[opening]", "opening.entry_times[0]", "a time of day reads like 12:30"),
        ("book_days_ahead = -5", "[opening]", "opening.book_days_ahead", "must not be negative"),
        ("book_days_ahead = 1000", "[opening]", "opening.book_days_ahead", "must be 365 or less"),
        ("give_or_take_percent = nan", "[prices_read]", "prices_read.give_or_take_percent", "a number"),
        ('subdivision = "Ill."', "[where]", "where.subdivision", "does not have the right form: ISO 3166-2"),
    ],
)
def test_a_fault_is_said_in_plain_words(line: str, under: str, field: str, part: str) -> None:
    """Each kind of slip has a sentence of its own, at the field where it stands."""
    found = faults_of(with_line(line, under=under))
    assert part in found[field]
    assert len(found) == 1


@pytest.mark.parametrize(
    ("price", "part"),
    [
        ("-1", "must not be negative"),
        ('"12.50 EUR"', "the price is in EUR, but the currency given above is USD"),
        ("12.505", "USD is paid with at most 2 digits"),
        ('"twelve"', "a price is a number such as 12.50"),
        ("true", "a price is a number such as 12.50"),
        ("1e9", "must be 100000 or less"),
        ("[]", "must be a number"),
    ],
)
def test_a_price_that_cannot_be_paid_is_refused(price: str, part: str) -> None:
    """Negative prices, foreign ones, ones with too many digits and ones that are none are named."""
    assert part in faults_of(GOOD.replace("12.50", price))["offers[0].price"]


@pytest.mark.parametrize("price", ["12.50", "12.5", '"12.50"', '"12.50 USD"', '"12.50usd"'])
def test_a_price_may_be_a_number_or_a_text_with_the_currency(price: str) -> None:
    """All usual spellings of one price are one price."""
    read = read_form(GOOD.replace("12.50", price), "x", Place)
    assert prices_in(read.usable().offers[0])[0] == Decimal("12.50")


def test_a_currency_without_small_coins_takes_whole_prices() -> None:
    """Yen has no decimals (ISO 4217)."""
    text = GOOD.replace('"USD"', '"JPY"')
    assert "at most 0 digits" in faults_of(text)["offers[0].price"]
    assert faults_of(text.replace("12.50", "1250")) == {}


def test_a_price_by_the_gallon_may_have_more_digits() -> None:
    """What a gallon or a mile costs is not paid as such, and pumps show three decimals."""
    text = form_text(make_household()).replace("3.12", "3.129")
    assert read_form(text, "x", Household).usable().car is not None


def ages_rule(place: Place, file: str) -> Iterator[Finding]:
    """For tests: tells the ages of each ticket, and thereby what a rule was shown."""
    for index, offer in enumerate(place.offers):
        if offer.kind == "ticket":
            yield Finding(file, f"offers[{index}].ages", str(offer.ages), f"{offer.name} is for {offer.ages}")


def test_rules_run_although_a_field_is_wrong() -> None:
    """What a rule finds about sound fields stands beside the fault of another field."""
    text = GOOD.replace("12.50", "-1")
    found = [f.message for f in read_form(text, "x", Place, [ages_rule]).findings]
    assert found == ["must not be negative", "Adult is for 13+"]


def test_what_hangs_on_a_stand_in_is_not_told() -> None:
    """A rule's finding that changes with the stand-in, or stands at the faulty field, is left out."""
    for wrong in ('ages = "old"', "ages = []"):
        text = GOOD.replace('ages = "13+"', wrong)
        assert [f.field for f in read_form(text, "x", Place, [ages_rule]).findings] == ["offers[0].ages"]
    nameless = read_form(GOOD.replace('name = "Adult"', ""), "x", Place, [ages_rule])
    assert [f.field for f in nameless.findings] == ["offers[0].name"]


def test_a_fault_of_the_whole_is_told_beside_the_faults_of_its_fields() -> None:
    """Names that stand twice show together with a wrong price, and the rules still run."""
    text = form_text(make_household()).replace('"Bo"', '"Ann"') + "\n[food]\npacked_adult = -2\n"

    def rule(_household: Household, file: str) -> Iterator[Finding]:
        yield Finding(file, "members", "", "the rule ran")

    read = read_form(text, "x", Household, [rule])
    assert [f.message for f in read.findings] == [
        "must not be negative",
        "every member needs a name of their own; twice: Ann",
        "the rule ran",
    ]


def constant_rule(finding: Finding, _place: Place, _file: str) -> Iterator[Finding]:
    """For tests: a rule that always finds the same."""
    yield finding


def test_a_warning_does_not_stop_the_reading() -> None:
    """With nothing but warnings there is a value; a rule's fault takes it away."""
    for weight, usable in ((Weight.WARNING, True), (Weight.FAULT, False)):
        finding = Finding("x", "name", "", "odd", weight)
        read = read_form(GOOD, "x", Place, [partial(constant_rule, finding)])
        assert (read.value is not None) is usable
        assert read.findings == (finding,)


def test_a_file_with_endless_faults_is_cut_short() -> None:
    """Beyond a hundred faults the list ends with how many more there are."""
    read = read_form(GOOD + "[visit]\ntopics = [" + "1," * 500 + "]", "x", Place)
    assert len(read.findings) == MOST_FAULTS + 1
    assert read.findings[-1].message == "and 400 more faults"


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("k" * 1_000_000 + " = 1", "larger than 256 KB"),
        ("x" * (LONGEST_KEY + 1) + " = 1", "a name is longer than 200 characters"),
        (".".join("a" * 100_000) + " = 1", "so many dots"),
        ('"a b" . ' * 20_000 + "c = 1", "so many dots"),
        ("[" + ".".join("a" * 100_000) + "]", "so many dots"),
        ("a = " + "[" * 100_000, "too deep"),
        ("a = " + "{a = " * 50_000, "too deep"),
        ("a = " + "[" * 20 + "]" * 20, "more than 12 deep"),
        ("a = [" + "1," * 100_000 + "]", "more than 20000 values"),
        ("\n".join(f"k{n}.a = 1" for n in range(20_000)), "more than 20000 values"),
        ("a = '" + "x" * 50_000 + "'", "a text is longer"),
        ("a = " + "9" * 5000, "too many digits"),
        ("a = 1e99999999999999999999", "too many digits"),
    ],
)
def test_a_hostile_file_is_refused_with_one_finding(text: str, part: str) -> None:
    """Files made to exhaust a reader are turned away before they cost anything."""
    parsed = parse_toml(text, "x.toml")
    assert parsed.values is None
    assert [part in f.message for f in parsed.findings] == [True]
    assert len(parsed.findings[0].value) <= 60


@pytest.mark.parametrize(
    ("text", "line", "part"),
    [
        ("a b = 1", 1, "a line is a name, an equals sign and a value"),
        ("a = 1\n= 2", 2, "a line starts with a name"),
        ("a = hello", 1, "no text in quotation marks"),
        ('a = "hello\nb = 1', 1, "closed with one on the same line"),
        ('a = """hello\nb = 1', 2, "not closed before the file ends"),
        ("a = [1, 2\nb = 1", 2, "a list opened with [ is closed with ]"),
        ("a = {b = 1\nc = 1", 1, "fields opened with { are closed with }"),
        ("a = 1\na = 2", 2, "given a value before"),
        ("[a\n", 1, "a heading is a name in [ ]"),
        ("a = 2026-02-30", 1, "there is no such date"),
        ("a = {b = 1, b = 2}", 1, "stands twice between these"),
    ],
)
def test_a_slip_of_syntax_names_its_line(text: str, line: int, part: str) -> None:
    """What is not TOML is told by line, with what a line should look like."""
    finding = parse_toml(text, "x.toml").findings[0]
    assert finding.field == f"line {line}"
    assert part in finding.message


def test_bytes_are_utf8_with_or_without_a_mark() -> None:
    """A byte order mark is passed over; other encodings are refused by line."""
    for encoding in ("utf-8", "utf-8-sig"):
        assert parse_toml('name = "Mühle"'.encode(encoding), "x").values == {"name": "Mühle"}
    broken = parse_toml(b'a = 1\nname = "M\xfchle"', "x")
    assert broken.values is None
    assert broken.findings[0].field == "line 2"
    assert parse_toml('name = "Mühle"'.encode("utf-16"), "x").values is None


def test_what_is_shown_is_short_and_moves_nothing() -> None:
    """Control characters and turned directions are escaped, long values cut at 60 characters."""
    assert shown("a\x1b[2J\u202eb\n") == "a\\x1b[2J\\u202eb\\n"
    assert len(shown("x" * 1000)) == 60
    assert shown(True) == "true"
    assert shown({"a": 1}) == ""


def test_markup_and_formulas_are_plain_text() -> None:
    """A name with a script or a command is read as the text it is."""
    text = GOOD.replace("A mill", "<script>alert(1)</script>").replace("Adult", "=cmd|' /C calc'!A0")
    place = read_form(text, "x", Place).usable()
    assert place.name == "<script>alert(1)</script>"
    assert place.offers[0].name == "=cmd|' /C calc'!A0"


JUNK = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-(10**9), 10**9),
    st.decimals(allow_nan=False, allow_infinity=True),
    st.just(Decimal("nan")),
    st.text(max_size=30),
    st.dates(),
    st.times(),
    st.lists(st.integers(), max_size=3),
    st.dictionaries(st.sampled_from(["price", "ages", "kind", "x"]), st.integers(), max_size=2),
)


def slots(values: Any) -> list[tuple[Any, Any]]:
    """Every place in nested tables and lists where a value stands."""
    pairs = (
        values.items() if isinstance(values, dict) else enumerate(values) if isinstance(values, list) else ()
    )
    return [slot for key, inner in pairs for slot in [(values, key), *slots(inner)]]


@given(st.data())
def test_random_junk_never_breaks_the_reading(data: st.DataObject) -> None:
    """Whatever stands in a few fields, there is a form or there are faults in plain words."""
    form = data.draw(st.sampled_from([make_place(), make_household()]))
    values: Any = parse_toml(form_text(form), "x").values
    for _ in range(data.draw(st.integers(1, 4))):
        holder, key = data.draw(st.sampled_from(slots(values)))
        junk = data.draw(JUNK)
        if junk is not None:
            holder[key] = junk
        elif isinstance(holder, dict):
            holder.pop(key, None)
    read = read_form(write_toml(values), "x", type(form), [])
    assert (read.value is None) == bool(read.findings)
    assert [f for f in read.findings if JARGON.search(f.message)] == []
    assert len({f.field for f in read.findings}) == len(read.findings)

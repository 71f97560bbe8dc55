"""Prices and hours as real venues write them, labelled by hand, are read right.

Source: short factual strings from public pages with their meaning labelled by one reader
(`../shared/data/texts/*.jsonl`, see its SOURCES.md). They were in view while the rules were written.
"""

import json
from datetime import date, datetime, time
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from opening_hours import OpeningHours, State

from tripplan.reading.hours.hours import read_hours
from tripplan.reading.prices.facts import EntryPrice
from tripplan.reading.prices.prices import read_prices
from tripplan.reading.vocabulary import plain_text

TEXTS = Path(__file__).resolve().parents[3] / "shared/data/texts"
ALSO_CALLED = {"concession": "reduced", "chaperone": "teacher"}

pytestmark = pytest.mark.skipif(not TEXTS.is_dir(), reason="the labelled texts lie beside the checkout")


def labelled(name: str) -> list[dict[str, Any]]:
    """Every labelled text of a file."""
    return [json.loads(line) for line in (TEXTS / name).read_text(encoding="utf-8").splitlines()]


def label(band: dict[str, Any]) -> tuple[object, ...]:
    """A labelled price: who, from and to which age [months], how much."""
    first = band.get("age_min_months", None if band["age_min"] is None else band["age_min"] * 12)
    last = band.get("age_max_months", None if band["age_max"] is None else band["age_max"] * 12 + 11)
    amounts = (band["price_min"], band["price_max"]) if band["price"] is None else (band["price"],)
    return ALSO_CALLED.get(band["who"], band["who"]), first or 0, last, *(Decimal(str(a)) for a in amounts)


def as_label(price: EntryPrice) -> tuple[object, ...]:
    """A price that was read, in the form of a label."""
    ages = price.ages
    amounts = (price.price,) if price.highest is None else (price.price, price.highest)
    return price.person, ages.first if ages else 0, ages.last if ages else None, *amounts


def test_labelled_prices_are_read_right() -> None:
    """At least 85 % of whole texts and 95 % of single prices; what is wrong or lacking is told."""
    texts = labelled("price_texts.jsonl")
    whole = bands = right = untold = 0
    for text in texts:
        meaning = text["meaning"]
        read = read_prices(plain_text(text["text"]))
        wanted = [label(band) for band in meaning["bands"] if not band.get("implied")]
        got = [as_label(price) for price in read.entry]
        hits = sum(band in got for band in wanted)
        extra = sum(price not in wanted for price in got)
        bands, right = bands + len(wanted), right + hits
        untold += extra + (0 if read.not_understood or read.off else len(wanted) - hits)
        counts = len(read.families) == len(meaning["bundles"]) and len(read.passes) == len(meaning["passes"])
        whole += hits == len(wanted) and not extra and counts
    assert whole >= 0.85 * len(texts)
    assert right >= 0.95 * bands
    assert untold <= 0.02 * bands


def test_labelled_hours_mean_the_same_all_year() -> None:
    """At least 85 % of the texts are open at the same times of 2027 as their label says."""
    begins, ends = (datetime.combine(date(year, 1, 1), time()) for year in (2027, 2028))

    def open_at(rules: str) -> list[tuple[datetime, datetime]] | None:
        rules = rules.replace(
            "; PH Mo open", ""
        )  # holds only beside regular hours, which that text does not give
        if not rules:
            return None
        spans: list[tuple[datetime, datetime]] = []
        for start, end, state, _ in OpeningHours(rules).intervals(begins, ends):
            if state == State.OPEN:
                joins = bool(spans) and spans[-1][1] == start  # a comment alone may part two spans
                spans.append((spans.pop()[0] if joins else start, end))
        return spans

    texts = labelled("hours_texts.jsonl")
    same = 0
    for text in texts:
        read = read_hours(plain_text(text["text"]))
        same += open_at(read.opening_hours) == open_at(text["opening_hours"]) and read.last_entry == text.get(
            "last_entry"
        )
    assert same >= 0.85 * len(texts)

"""Logbook entries for tests; every field can be changed by name."""

from typing import Any

from tripplan.documents.logbook.entry import LogbookEntry


def make_entry(**changes: Any) -> LogbookEntry:
    """A day at the test museum: receipts, all four times, one nap, two children."""
    values: dict[str, Any] = {
        "id": "2026-11-14-test-museum",
        "day": "2026-11-14",
        "title": "Test museum",
        "place": "test-museum",
        "party": ["Ann", "Cy", "Di"],
        "currency": "USD",
        "paid": [
            {"kind": "admission", "amount": "23.00"},
            {"kind": "food", "amount": "18.40", "what": "soup"},
        ],
        "left_home": "09:20",
        "arrived": "10:25",
        "left_place": "12:40",
        "home_again": "13:50",
        "home_zone": "America/Chicago",
        "km": 128.0,
        "fullness": "some company",
        "naps": [{"member": "Di", "minutes": 55, "where": "car"}],
        "children": [
            {
                "member": "Cy",
                "did": "turned the model mill",
                "learned": "why the stones are dressed",
                "subjects": [{"subject": "science", "hours": "1.5"}, {"subject": "history"}],
                "hours": "2.5",
            }
        ],
        **changes,
    }
    return LogbookEntry.model_validate(values)

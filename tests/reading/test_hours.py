"""Opening hours as venues write them are read into OpenStreetMap's syntax.

The texts are our own; the ways of writing are common practice, no source.
"""

import pytest

from tripplan.reading.hours import read_hours
from tripplan.reading.vocabulary import plain_text

READ = [
    ("Tue-Sat 10-5, Sun noon-5, closed Mondays, Thanksgiving and Dec 25",
     "Tu-Sa 10:00-17:00; Su 12:00-17:00; Mo off; Nov Th[4] off; Dec 25 off"),
    ("Monday - Friday: 9:00 AM - 5:00 PM\nSaturday & Sunday: 10 AM - 6 PM", "Mo-Fr 09:00-17:00; Sa,Su 10:00-18:00"),
    ("Summer Hours: June 20 through Labor Day\nFridays from 11:00 to 7:00",
     "Jun 20-Sep Mo[1] Fr 11:00-19:00"),
    ("Dienstag bis Sonntag 10 bis 18 Uhr, montags geschlossen", "Tu-Su 10:00-18:00; Mo off"),
    ("Open daily 9-5 except Christmas Day", "Mo-Su 09:00-17:00; Dec 25 off"),
    ("1st and 3rd Saturdays of the month, 12-3pm", "Sa[1,3] 12:00-15:00"),
    ("Sat & Sun 1 - 5 p.m.; April to October only", "Apr-Oct Sa,Su 13:00-17:00"),
    ("open 9 am-8 pm daily (except Thursdays, 9 am-4:30 pm)", "Mo-Su 09:00-20:00; Th 09:00-16:30"),
    ("Mon-Thu 11:00 to 1:00 and 3:00 to 5:00", "Mo-Th 11:00-13:00,15:00-17:00"),
    ("We close at noon on Christmas Eve. Open daily 9am to 4pm.", "Mo-Su 09:00-16:00; Dec 24 09:00-12:00"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "expected"), READ, ids=[text[:30] for text, _ in READ])
def test_hours_are_read_as_they_are_meant(text: str, expected: str) -> None:
    """Days, times, seasons and closing days come out as one rule each."""
    read = read_hours(plain_text(text))
    assert set(read.opening_hours.split("; ")) == set(expected.split("; "))
    assert not read.not_understood


@pytest.mark.parametrize(
    ("text", "latest", "minutes"),
    [
        ("last entry 4:15", "16:15", None),
        ("Letzter Einlass 17 Uhr", "17:00", None),
        ("Last admission one hour before closing.", None, 60),
        ("last tour 30 minutes before closing", None, 30),
    ],
)
def test_the_last_entry_is_a_time_or_so_long_before_closing(
    text: str, latest: str | None, minutes: int | None
) -> None:
    """It is read by the clock or by the minutes before closing, and is no opening time."""
    read = read_hours(text)
    assert (read.last_entry, read.last_entry_minutes_before_close, read.opening_hours) == (
        latest,
        minutes,
        "",
    )


@pytest.mark.parametrize(
    ("text", "doubt"),
    [
        ("four days a week from 10 a.m. to 5 p.m.", "Which days of the week"),
        ("Open year-round, dawn to dusk", "dawn to dusk"),
        ("Museum open daily, Memorial Day-Labor Day.", "No times"),
        ("Tue-Sat 10-5", "Morning or afternoon"),
    ],
)
def test_what_is_left_open_is_a_doubt(text: str, doubt: str) -> None:
    """Nothing is filled in silently."""
    assert any(doubt in said for said in read_hours(text).doubts)

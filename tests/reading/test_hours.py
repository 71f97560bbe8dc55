"""Opening hours as venues write them are read into OpenStreetMap's syntax.

The texts are our own; the ways of writing are common practice, no source.
"""

import pytest

from tripplan.reading.hours.hours import read_hours
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
    ("Summer (Memorial Day-Labor Day): daily 9-6. Winter: Thurs-Sun 10-4. Closed Dec 24, 25, and Jan 1.",
     "Sep Mo[1]-May Mo[-1] Th-Su 10:00-16:00; May Mo[-1]-Sep Mo[1] Mo-Su 09:00-18:00; Dec 24 off; Dec 25 off; Jan 01 off"),
    ("Tuesday - Friday from 9:30 to 4:30; Saturdays till 6. We are closed on Sundays and Mondays except federal holidays.",
     "Tu-Fr 09:30-16:30; Sa 09:30-18:00; Su,Mo off; PH 09:30-16:30"),
    ("Open daily 10am - 5.30pm. Closed 24-26 December. Half term: open until 6pm.",
     "Mo-Su 10:00-17:30; SH 10:00-18:00; Dec 24 off; Dec 25 off; Dec 26 off"),
    ("Di-So 10-18 Uhr, Do bis 20 Uhr, montags geschlossen. Feiertags geöffnet außer 24., 25. und 31.12.",
     "Tu-Su 10:00-18:00; Th 10:00-20:00; Mo off; PH 10:00-18:00; Dec 24 off; Dec 25 off; Dec 31 off"),
    ("1 April to 30 September: daily 10am-6pm. 1 October - 31 March: weekends 10am-4pm.",
     "Apr 01-Sep 30 Mo-Su 10:00-18:00; Oct 01-Mar 31 Sa-Su 10:00-16:00"),
    ("Open year round Wed-Sun, 10 a.m. - 4 p.m. Open Memorial Day and July 4. Closed all other holidays.",
     "We-Su 10:00-16:00; PH off; May Mo[-1] 10:00-16:00; Jul 04 10:00-16:00"),
    ("M-F 8-4:30\nSat/Sun 10-6", "Mo-Fr 08:00-16:30; Sa,Su 10:00-18:00"),
    ("24.12. und 31.12.: 10 - 14 Uhr\n1.1. geschlossen", "Dec 24 10:00-14:00; Dec 31 10:00-14:00; Jan 01 off"),
    ("9:00 am to 5:30 pm daily (closing at 3 pm on Christmas Eve)", "Mo-Su 09:00-17:30; Dec 24 09:00-15:00"),
    ("10:00 - 17:00 Tue-Sun. Closed Mondays (except bank holidays) and 24 December - 1 January.",
     "Tu-Su 10:00-17:00; Mo off; PH 10:00-17:00; Dec 24-Jan 01 off"),
    ("Daily 9 a.m.-5 p.m. (April-September: until 6 p.m.)", "Mo-Su 09:00-17:00; Apr-Sep Mo-Su 09:00-18:00"),
    ("Mittwoch bis Sonntag von 11 bis 17 Uhr, in den Ferien täglich", "We-Su 11:00-17:00; SH 11:00-17:00"),
    ("Täglich außer montags 10-17 Uhr", "Mo-Su 10:00-17:00; Mo off"),
    ("We open at 10 and close at 4, Tuesday through Saturday.", "Tu-Sa 10:00-16:00"),
    ("School holidays: daily 10-5. Term time: Thu-Sun 10-4.", "Th-Su 10:00-16:00; SH 10:00-17:00"),
    ("Wed - Sun 8 a.m. - 8 p.m. from May through August, and 8 a.m. - 5 p.m. from September through April.",
     "May-Aug We-Su 08:00-20:00; Sep-Apr We-Su 08:00-17:00"),
    ("Ostern bis 31. Oktober: Dienstag-Freitag 13-17 Uhr, Samstag/Sonntag/Feiertag 10-17 Uhr",
     "easter-Oct 31 Tu-Fr 13:00-17:00; easter-Oct 31 Sa,Su 10:00-17:00; easter-Oct 31 PH 10:00-17:00"),
    ("Monday\n9AM-5PM\nTuesday\nClosed", "Mo 09:00-17:00; Tu off"),
    ("Open 7 days, Easter to end of October, 10am to 5pm", "easter-Oct 31 Mo-Su 10:00-17:00"),
    ("Open Memorial Day weekend through Labor Day, 10am to 6pm daily", "May Mo[-1]-Sep Mo[1] Mo-Su 10:00-18:00"),
    ("From 8 a.m. to 8 p.m. (April 1 - Sept. 30) and 8 a.m. to 5 p.m. (Oct. 1 - March 31)",
     "Apr 01-Sep 30 08:00-20:00; Oct 01-Mar 31 08:00-17:00"),
    ("Open year-round except major holidays: Tues-Fri 12-5, Sat 10-5", "Tu-Fr 12:00-17:00; Sa 10:00-17:00; PH off"),
    ("Sun 11:00-16:00 (Nov-Feb closes 15:30)", "Su 11:00-16:00; Nov-Feb Su 11:00-15:30"),
    ("Mo Ruhetag, Di. - Fr. 14 - 17 Uhr; Winterpause vom 1. November bis 31. März",
     "Tu-Fr 14:00-17:00; Mo off; Nov 01-Mar 31 off"),
    ("Mo-So 9-19 Uhr, November-März 9-17 Uhr", "Mo-Su 09:00-19:00; Nov-Mar Mo-Su 09:00-17:00"),
    ("Daily 10am-5pm April to October, 10am-4pm November to March",
     "Apr-Oct Mo-Su 10:00-17:00; Nov-Mar Mo-Su 10:00-16:00"),
    ("Open 24 hours", "00:00-24:00"),
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


@pytest.mark.parametrize(
    ("text", "opening_hours"),
    [
        ("Museum: Wed-Sun 10am-5pm\nGift Shop: daily 10am-5:30pm", "We-Su 10:00-17:00"),
        ("Summer hours\nMon-Fri 9am-5pm\nWinter hours\nMon-Fri 10am-4pm", ""),
        ("Mon-Fri 9am-5pm, last Friday until late", "Mo-Fr 09:00-17:00"),
        ("Open from mid-April to October, daily 9am-5pm", "Apr-Oct Mo-Su 09:00-17:00"),
    ],
)
def test_what_hours_leave_out_is_told(text: str, opening_hours: str) -> None:
    """Hours of a shop, of a summer without dates, and what no rule has read are named; they change nothing else."""
    read = read_hours(plain_text(text))
    assert read.opening_hours == opening_hours
    assert read.not_understood or read.doubts

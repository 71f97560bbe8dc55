"""What the guide quotes of the program's own accuracy, made from the committed tables of errors."""

import re
import textwrap
from pathlib import Path

from tripplan.planning.travel.estimate_tables import METROPOLITAN_AREAS, UNITED_STATES
from tripplan.planning.travel.rush_hours import METROPOLITAN_RUSH, VERY_LARGE_CITY_RUSH

HERE = Path(__file__).resolve().parent
GUIDE = HERE.parents[1] / "tripplan" / "guide" / "figures.md"
WIDTH = 119


def with_figures(guide: str) -> str:
    """The guide's text with the figures as the tables now have them."""
    for bullet in (_distance_and_time(), _full_roads(), _how_full()):
        (begin,) = re.findall(r"^- \*\*[^*]+\*\*", bullet)
        old = re.findall(rf"^{re.escape(begin)}.*?(?=^- |\Z)", guide, re.MULTILINE | re.DOTALL)
        if len(old) != 1:
            raise ValueError(f"the guide has {len(old)} paragraphs that begin with {begin}")
        guide = guide.replace(old[0], f"{bullet}\n")
    return guide


def _paragraph(text: str) -> str:
    return textwrap.fill(
        f"- {text}", WIDTH, subsequent_indent="  ", break_on_hyphens=False, break_long_words=False
    )


def _distance_and_time() -> str:
    closer = [(100 * (error.km or 0), 100 * (error.minutes or 0)) for error in UNITED_STATES.errors]
    short, middle, far = (f"{km:.0f} % and {minutes:.0f} %" for km, minutes in closer)
    in_cities, around_them = (100 * (error.minutes or 0) for error in METROPOLITAN_AREAS.errors[:2])
    return _paragraph(
        "**Distance and time** are estimated from the straight line, with curves fitted to open tables of "
        "drives in the United States, in Belgium, Great Britain and southern Lower Saxony, and between "
        "European cities. Of drives in the United States that were kept out of the fit, half were "
        f"closer than {short} (distance and time) below 20 km (12 mi) of straight line, {middle} below "
        f"160 km (100 mi), and {far} further. Within metropolitan areas, which have curves of their own from "
        f"one county of Texas, half were closer than {in_cities:.0f} % of the time below 20 km (12 mi) and "
        f"{around_them:.0f} % further. Where you set up real roads these count instead: the time is for "
        "empty roads, and its range admits up to 30 % more for traffic. What you type in from having driven "
        "it wins."
    )


def _full_roads() -> str:
    (large,) = {hours.factor for hours in METROPOLITAN_RUSH}
    *_, rush, by_day = (hours.factor for hours in VERY_LARGE_CITY_RUSH)
    return _paragraph(
        "**Full roads** count on working days where home or the place lies in or near a large city of the "
        f"United States: {large} times the time on empty roads from 6 to 9 in the morning and from 4 to 7 in "
        f"the afternoon, as the Federal Highway Administration has it for 52 of them, and {rush} times, with "
        f"{by_day} times in between, in the very largest. How full roads are on Saturdays and Sundays, in "
        "smaller towns and in other countries is not known, and nothing is added; under *Household* you can "
        "say so yourself."
    )


def _how_full() -> str:
    table = (HERE / "crowd_fit.md").read_text(encoding="utf-8")
    (every,) = re.findall(r"^\| all \|.*$", table, re.MULTILINE)
    _, _, days, *shares = (cell.strip() for cell in every.strip("|").split("|"))
    skill, over_weekends, error = (100 * float(share) for share in shares)
    return _paragraph(
        "**How full it may be** is the chance that a day is among the busiest fifth of the place's year. It "
        "rests on daily counts of a zoo, of leisure cyclists, of a riverside path and of three museums, on "
        "public holidays, the weeks before Christmas and the school calendars you bring; a card can name the "
        "kind of place, who comes, the fullest days, the busiest months, school classes, free days and "
        "special days. At places "
        f"that were left out of the fit, {days} days in all, it foretold the busy "
        f"days {skill:.0f} % better than "
        f'"every day 1 in 5" (Brier skill score) and {over_weekends:.0f} % better than "weekends and '
        f'holidays"; its chances were off by {error:.1f} percentage points on average. Your own notes of '
        "how full a place was count beside that: about four of one kind of day weigh as much."
    )


if __name__ == "__main__":
    GUIDE.write_text(with_figures(GUIDE.read_text(encoding="utf-8")), encoding="utf-8")

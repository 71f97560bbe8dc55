"""School holidays, guesses and typical years against published calendars.

Open data: OpenPotato, openholidaysapi.data, commit dd3dfa8 (ODbL), files under ../shared/data/school; read there
and not copied. Districts: New York City 2025-26, the list of the Department of Education as CBS New York quotes it;
Chicago and Miami-Dade 2025-26, news pages. England 2025-27: schools' own pages.
"""

import csv
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import numpy as np
import pytest

from tests.missing import missing
from tripplan.planning.calendars import DateSpan, SchoolCalendar, with_next_year_expected
from tripplan.planning.crowds.school_regions import built_in_calendar, region_called
from tripplan.planning.crowds.schools import school_days
from tripplan.planning.crowds.typical_year import OUT_ON_A_WEEKDAY, typical_days
from tripplan.planning.where import Point

DAY = timedelta(days=1)

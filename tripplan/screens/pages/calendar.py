"""The calendar page."""

from tripplan.screens import calendar
from tripplan.screens.frame import open_page

calendar.render(open_page())

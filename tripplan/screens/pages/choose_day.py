"""The choose day page."""

from tripplan.screens import choose_day
from tripplan.screens.widgets.frame import open_page

choose_day.render(open_page())

"""The choose day page."""

from tripplan.screens.choose_day import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

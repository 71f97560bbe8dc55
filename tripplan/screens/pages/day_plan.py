"""The day plan page."""

from tripplan.screens.day_plan import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

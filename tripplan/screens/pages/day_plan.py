"""The day plan page."""

from tripplan.screens import day_plan
from tripplan.screens.frame import open_page

day_plan.render(open_page())

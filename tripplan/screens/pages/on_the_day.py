"""The page for the phone on the day."""

from tripplan.screens.day_plan import on_the_day
from tripplan.screens.widgets.frame import open_page

on_the_day.render(open_page(may_change_whose=False))

"""The calendar page."""

from tripplan.screens.calendar import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

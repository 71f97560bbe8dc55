"""The logbook page."""

from tripplan.screens.logbook import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

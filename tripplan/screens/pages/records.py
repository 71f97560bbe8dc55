"""The Records page."""

from tripplan.screens.records import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

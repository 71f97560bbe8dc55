"""The places page."""

from tripplan.screens.places import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

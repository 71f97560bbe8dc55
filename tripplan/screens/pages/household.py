"""The household page."""

from tripplan.screens.household import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

"""The study units page."""

from tripplan.screens.study import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

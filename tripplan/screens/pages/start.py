"""The page one lands on."""

from tripplan.screens.start import page
from tripplan.screens.widgets.frame import open_page

page.render(open_page())

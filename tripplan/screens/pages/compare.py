"""The compare page."""

from tripplan.screens import compare
from tripplan.screens.widgets.frame import open_page

compare.render(open_page())

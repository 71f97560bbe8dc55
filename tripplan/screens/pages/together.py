"""The with others page."""

from tripplan.screens import together
from tripplan.screens.widgets.frame import open_page

together.render(open_page())

"""The with others page."""

from tripplan.screens import together
from tripplan.screens.frame import open_page

together.render(open_page())

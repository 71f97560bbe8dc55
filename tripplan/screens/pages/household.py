"""The household page."""

from tripplan.screens import household
from tripplan.screens.frame import open_page

household.render(open_page())

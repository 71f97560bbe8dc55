"""The places page."""

from tripplan.screens import places
from tripplan.screens.frame import open_page

places.render(open_page())

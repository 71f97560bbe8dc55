"""The passes page."""

from tripplan.screens import passes
from tripplan.screens.frame import open_page

passes.render(open_page())

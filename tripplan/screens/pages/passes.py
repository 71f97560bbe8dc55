"""The passes page."""

from tripplan.screens import passes
from tripplan.screens.widgets.frame import open_page

passes.render(open_page())

"""Moved to tripplan.planning.wording."""

from tripplan.planning.wording import *  # noqa: F403

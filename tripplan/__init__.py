"""tripplan: plans and prices family outings for one household."""

import zoneinfo

from tripplan.version import __version__

# A system's time zone rules can be older than the pinned tzdata package, and zoneinfo would prefer them.
zoneinfo.reset_tzpath(to=())

__all__ = ["__version__"]

"""What a page is given to show."""

from dataclasses import dataclass
from datetime import date

from tripplan.planning.family.family import Family
from tripplan.records.opening import Which
from tripplan.records.store import Records
from tripplan.services import Services


@dataclass(frozen=True)
class View:
    """What a page is given to show.

    Attributes:
        services: the real parts.
        which: whose data is shown.
        family: that family; None before the parent has entered a household.
        today: the date by the clock at home.
    """

    services: Services
    which: Which
    family: Family | None
    today: date

    @property
    def records(self) -> Records:
        """The records that the page shows, even if another window has switched meanwhile."""
        return self.services.records_of(self.which)

    @property
    def invented(self) -> bool:
        """Whether what is shown is of an invented family."""
        return self.family is not None and self.family.household.invented

    def file_name(self, name: str) -> str:
        """What a file is called that is written of this family; an invented one's says so."""
        return f"demo-{name}" if self.invented else name

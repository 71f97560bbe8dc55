"""Options that several commands have in common, and how words of the command line are read.

Each command's options are a dataclass; what stands in its annotations is all that the parser knows of them.
"""

from dataclasses import dataclass
from datetime import date
from typing import Annotated, Any, Literal

from typer import Argument, BadParameter, Option

USUAL_WEEKS = 6
"""How many weeks, counted from tomorrow, are looked at when no dates are given."""
LONGEST_NAME = 80
"""As `tripplan.documents.model.LONGEST_NAME`, which is not loaded here [characters]."""
BETWEEN_WORDS = "\x1f"
"""Stands between the words of one option, where it takes several; nobody can type it."""


TaskOptions = Any
"""The options of whichever task of a command is meant."""


class Words(tuple[str, ...]):
    """The words that follow an option, up to the next option."""

    __slots__ = ()


class Dates(tuple[date, ...]):
    """The dates that follow an option, up to the next option."""

    __slots__ = ()


def words(text: str | Words) -> Words:
    """The words of an option that takes several, or its default as it is."""
    return text if isinstance(text, Words) else Words(text.split(BETWEEN_WORDS))


def option(name: str, help: str, metavar: str | None = None, panel: str | None = None, **more: Any) -> Any:  # noqa: A002, ANN401 - as Typer has it
    """An option, with its help, the word that stands for its value, and the part of the help it stands in."""
    return Option(name, help=help, metavar=metavar, rich_help_panel=panel, **more)


def several(name: str, help: str, metavar: str, panel: str | None = None, **more: Any) -> Any:  # noqa: A002, ANN401
    """An option that takes all words up to the next option."""
    return option(name, help, f"{metavar} ...", panel, **{"parser": words, **more})


def argument(metavar: str, help: str, **more: Any) -> Any:  # noqa: A002, ANN401
    """A word without an option's name before it."""
    return Argument(metavar=metavar, help=help, **more)


def date_said(text: str) -> date:
    """A date."""
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise BadParameter(f"a date reads like 2026-12-08, not {text[:40]!r}") from None


def dates_said(text: str) -> Dates:
    """The dates of an option that takes several."""
    return Dates(map(date_said, words(text)))


def name_said(text: str) -> str:
    """A name to keep on record."""
    said = text.strip()
    if not 0 < len(said) <= LONGEST_NAME:
        raise BadParameter(f"a name has 1 to {LONGEST_NAME} characters, not {len(said)}")
    return said


def only_one(**chosen: bool) -> None:
    """Refuse options that exclude each other.

    Raises:
        BadParameter: more than one was given.
    """
    given = [f"--{name}" for name, there in chosen.items() if there]
    if len(given) > 1:
        raise BadParameter(f"{' and '.join(given)} exclude each other")


Replace = Annotated[bool, option("--replace", "write over a file that is there already")]
CarriedOut = Annotated[bool, option("--yes", "carry it out; without this, only tell what would change")]
PlaceArgument = Annotated[str, argument("PLACE", "id or name of a place")]
DayArgument = Annotated[str, argument("DATE", "day of the visit")]
Paper = Annotated[
    Literal["a4", "letter"] | None,
    option("--paper", "what a PDF is printed on; as usual at home where not given"),
]


@dataclass(frozen=True, kw_only=True)
class DataOptions:
    """Where the records lie."""

    data: Annotated[str | None, option("--data", "where the records lie", "FOLDER")] = None


@dataclass(frozen=True, kw_only=True)
class RecordsOptions(DataOptions):
    """Whose records, and where they lie."""

    demo: Annotated[bool, option("--demo", "use the invented demo family")] = False
    own: Annotated[
        bool, option("--own", "use your own records; whichever the screens show where neither is given")
    ] = False

    def __post_init__(self) -> None:
        """Refuse both at once."""
        only_one(demo=self.demo, own=self.own)

    @property
    def which(self) -> Literal["demo", "family"] | None:
        """Whose records are named."""
        return "demo" if self.demo else "family" if self.own else None


@dataclass(frozen=True, kw_only=True)
class OwnRecordsOptions(RecordsOptions):
    """What a task that works on the records alone has."""

    today: Annotated[str | None, option("--today", "act as if today were this date", "DATE")] = None


_WHOSE = "Whose outing"


@dataclass(frozen=True, kw_only=True)
class PlanningOptions(OwnRecordsOptions):
    """Whose outing: the family, its places and calendars, and who goes."""

    household: Annotated[
        str | None,
        option(
            "--household",
            "a household file, instead of the family on record and its calendars",
            "FILE",
            panel=_WHOSE,
        ),
    ] = None
    places: Annotated[
        Words | None,
        several(
            "--places", "place cards or folders of them, instead of those on record", "PATH", panel=_WHOSE
        ),
    ] = None
    school_calendar: Annotated[
        Words | None,
        several(
            "--school-calendar",
            "files (.ics or .csv) of school districts around the home, besides those on record",
            "FILE",
            panel=_WHOSE,
        ),
    ] = None
    party: Annotated[
        Words | None,
        several("--party", "who goes; everybody where not given", "NAME", panel=_WHOSE),
    ] = None


@dataclass(frozen=True, kw_only=True)
class SpanOptions:
    """The first and the last day."""

    first: Annotated[str | None, option("--from", "the first day; tomorrow where not given", "DATE")] = None
    last: Annotated[
        str | None,
        option("--to", f"the last day; {USUAL_WEEKS} weeks in all where not given", "DATE"),
    ] = None


@dataclass(frozen=True, kw_only=True)
class JsonOption:
    """An answer for programs."""

    json: Annotated[bool, option("--json", "answer in JSON, for programs")] = False

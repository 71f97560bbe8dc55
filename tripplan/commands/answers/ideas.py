"""The JSON answer of `tripplan idea list`."""

from dataclasses import dataclass

from tripplan.commands.answers.common import RecordsAnswer
from tripplan.commands.answers.json_keys import json_keys
from tripplan.documents.places.idea import Idea
from tripplan.language.sentences import Fact


@dataclass(frozen=True)
class IdeaTold:
    """An idea on record.

    Attributes:
        idea: as it is on record; what is null is not known.
        assumed: what is taken for what is not known, and which figures are guesses.
        to_ask: what it would take to know.
    """

    idea: Idea
    assumed: tuple[Fact, ...]
    to_ask: tuple[Fact, ...]


@dataclass(frozen=True, kw_only=True)
class IdeaListAnswer(RecordsAnswer):
    """The ideas on record.

    Attributes:
        ideas: by name.
    """

    ideas: tuple[IdeaTold, ...]


json_keys(
    IdeaTold,
    "id=idea.id name=idea.name noted_on=idea.noted_on topics=idea.topics money=idea.money"
    " drive_minutes=idea.drive_minutes where=idea.where hours=idea.hours web=idea.web"
    " telephone=idea.telephone notes=idea.notes source=idea.source assumed to_ask",
)

"""The JSON answers of `tripplan compare` and `tripplan days`."""

from dataclasses import dataclass
from datetime import date

from tripplan.commands.answers import outing as _outing  # noqa: F401 - states the keys of outings
from tripplan.commands.answers.common import OPENING, Answer
from tripplan.commands.answers.json_keys import json_keys
from tripplan.planning.compare.choose import Candidate, DayInShort
from tripplan.planning.compare.flips.flip import Flip
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.sweep.misses import Miss
from tripplan.planning.sweep.wishes import Wish


@dataclass(frozen=True, kw_only=True)
class CompareAnswer(Answer):
    """Places side by side, least likely total first, those without a day last.

    Attributes:
        candidates: the places; the best day of one is null where no day can be done.
        chances_cheapest: for each place that has a day, the chance that it is the cheapest of them [0-1].
        too_close_to_call: whether the order is not sure enough to be told.
        flips: each input, and what it must become for another place to be the cheapest ("total") or, hassle
            counted, the better day out ("felt_cost").
    """

    candidates: tuple[Candidate, ...]
    chances_cheapest: tuple[float, ...]
    too_close_to_call: bool
    flips: tuple[Flip, ...]


@dataclass(frozen=True)
class NearMiss:
    """A day that nearly came first.

    Attributes:
        place: the id of its place.
        day: when.
        miss: in what it is better, and what it costs more.
    """

    place: str
    day: date
    miss: Miss


@dataclass(frozen=True)
class LeftOut:
    """A place that nobody asked about, because the family was there lately or is going there.

    Attributes:
        place: its id.
        day: when.
    """

    place: str
    day: date


@dataclass(frozen=True, kw_only=True)
class DaysAnswer(Answer):
    """Days of a span: the best of each place, least cost plus hassle first, then the second best of each.

    Attributes:
        count: how many can be done as wished; no more than `--most` of them are told.
        outings: the best of them.
        passed_over: the days that cannot be done.
        wishes: what was wished of a day, in words.
        not_as_wished: how many further days can be done, but not as wished.
        nearly: days that are better than the best in one respect.
        left_out: the places left out without `--again`.
    """

    count: int
    outings: tuple[Outing, ...]
    passed_over: tuple[NoOuting, ...]
    wishes: tuple[Wish, ...]
    not_as_wished: int
    nearly: tuple[NearMiss, ...]
    left_out: tuple[LeftOut, ...]


json_keys(
    CompareAnswer,
    f"{OPENING} span=question.span(first,last) candidates chances_cheapest too_close_to_call flips",
)
json_keys(DayInShort, "day total felt_cost=generalized_cost.weighed")
json_keys(Flip, "measure what now at new_first sentence")
json_keys(
    DaysAnswer,
    f"{OPENING} span=question.span(first,last) count outings passed_over wishes=wishes.words not_as_wished "
    "nearly left_out",
)
json_keys(LeftOut, "place day")
json_keys(
    NearMiss,
    "place day better=miss.better costs_more=miss.costs_more felt_more=miss.felt_more sentence=miss.sentence",
)

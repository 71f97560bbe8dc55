"""What differs between two states of a document, field by field and in words."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time
from decimal import Decimal
from typing import cast

from tripplan.documents.field_spec import asked, within_phrase
from tripplan.documents.model import Written
from tripplan.documents.places.offer_sentences import ages_in_words, fee_sentence, sentence, voucher_sentence
from tripplan.documents.places.offers import Fee, Offer, OfferRules, Voucher
from tripplan.language import wording
from tripplan.values.ages import AgeBand
from tripplan.values.money import Money

NOTHING = "nothing"
_NO_MONEY = ("percent", "percent_off", "factor", "consumption")
_NAMING = ("id", "name", "place", "what", "text")
"""What tells the entries of a list apart, where all have one of these and no two the same."""

Path = tuple[str, ...]


@dataclass(frozen=True)
class Difference:
    """One field that differs.

    Attributes:
        path: the steps to it, entries of a list by their name or number; tells two fields apart.
        field: what it is called.
        before: what it said, in words.
        after: what it says, in words.
    """

    path: Path
    field: str
    before: str
    after: str


def differences(before: Written, after: Written) -> tuple[Difference, ...]:
    """Every field in which two documents of one type differ, in the order of their form.

    An entry of a list is followed by its name where it has one, so that moving it is no difference.
    """
    walk = _Walk(getattr(before, "currency", None), getattr(after, "currency", None))
    return tuple(walk.between((), (), before, after))


def entry_names(entries: Sequence[object]) -> tuple[str, ...] | None:
    """What tells the entries of a list apart, or None where nothing does.

    Args:
        entries: forms, or the dictionaries they are written as.
    """
    for field in _NAMING:
        names = [
            entry.get(field) if isinstance(entry, dict) else getattr(entry, field, None) for entry in entries
        ]
        if all(isinstance(name, str) for name in names) and len(set(names)) == len(names):
            return tuple(str(name) for name in names)
    return None


@dataclass(frozen=True)
class _Walk:
    """The way through two documents; prices before and after may be in two currencies."""

    currency_before: str | None
    currency_after: str | None

    def between(self, path: Path, words: Path, before: object, after: object) -> Iterator[Difference]:
        if before == after and (
            self.currency_before == self.currency_after or not _holds_money(path, before)
        ):
            return
        if isinstance(before, Written) and type(before) is type(after):
            for name in type(before).model_fields:
                word = _called(type(before), name)
                inner = (*words, within_phrase(word) if words else word)
                there, now = (_worded(one, name) for one in (before, after))
                yield from self.between((*path, name), inner, there, now)
        elif isinstance(before, tuple) and isinstance(after, tuple) and _of_forms(before, after):
            yield from self._lists(path, words, before, after)
        else:
            yield Difference(
                path,
                ", ".join(words),
                _in_words(before, path, self.currency_before),
                _in_words(after, path, self.currency_after),
            )

    def _lists(
        self, path: Path, words: Path, before: tuple[object, ...], after: tuple[object, ...]
    ) -> Iterator[Difference]:
        names_before, names_after = entry_names(before), entry_names(after)
        if names_before is None or names_after is None:
            names_before, names_after = _numbers(before), _numbers(after)
        there, now = dict(zip(names_before, before, strict=True)), dict(zip(names_after, after, strict=True))
        for name in dict.fromkeys((*names_before, *names_after)):
            # A name alone says what it is.
            word = f"{words[-1].removesuffix('s')} {name}" if name.isdigit() else name
            yield from self.between((*path, f"[{name}]"), (*words[:-1], word), there.get(name), now.get(name))


def _of_forms(*lists: tuple[object, ...]) -> bool:
    return all(isinstance(entry, Written) for entries in lists for entry in entries)


def _numbers(entries: Sequence[object]) -> tuple[str, ...]:
    return tuple(str(number) for number in range(1, len(entries) + 1))


def _holds_money(path: Path, value: object) -> bool:
    if isinstance(value, Written | tuple):
        return True  # which of its fields are prices is seen one step further on
    return isinstance(value, Decimal) and _is_money(path)


def _is_money(path: Path) -> bool:
    return bool(path) and not path[-1].endswith(_NO_MONEY)


def _called(form: type[Written], name: str) -> str:
    field = asked(form, name)
    return field.called or field.label_in()


def _worded(form: Written, name: str) -> object:
    """A field's value, or the word that its screen has for it."""
    value, words = getattr(form, name), asked(type(form), name).words
    return words.get(value, value) if isinstance(value, str) else value


def _in_words(value: object, path: Path, currency: str | None) -> str:
    match value:
        case None | "" | ():
            return NOTHING
        case bool():
            return "yes" if value else "no"
        case Decimal():
            return _amount(value, currency) if currency and _is_money(path) else f"{value.normalize():f}"
        case datetime():
            return f"{wording.day(value.date())}, {value:%H:%M}"
        case date():
            return wording.day(value)
        case time():
            return f"{value:%H:%M}"
        case AgeBand():
            return ages_in_words(value)
        case tuple():
            return wording.listed([_in_words(one, path, currency) for one in value])
        case Written():
            return _form_in_words(value, currency)
        case _:
            return str(value)


def _amount(amount: Decimal, currency: str) -> str:
    money = Money(amount, currency)
    # A price per gallon may have more digits than anybody can pay.
    return wording.money(money) if money.rounded().amount == amount else f"{amount.normalize():f} {currency}"


def _form_in_words(form: Written, currency: str | None) -> str:
    if currency is not None:
        match form:
            case OfferRules():
                return sentence(cast("Offer", form), currency).removesuffix(".")
            case Fee():
                return fee_sentence(form, currency).removesuffix(".")
            case Voucher():
                return voucher_sentence(form, currency).removesuffix(".")
    told = []
    for name, field in type(form).model_fields.items():
        value = _worded(form, name)
        if field.is_required() or getattr(form, name) != field.get_default(
            call_default_factory=True, validated_data={}
        ):
            word = within_phrase(_called(type(form), name))
            told.append(f"{word} {_in_words(value, (name,), currency)}")
    return "; ".join(told) or "as usual"

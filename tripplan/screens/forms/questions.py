"""The fields of a written form as questions: what each is called, how it is filled in, what is usual."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, time
from decimal import Decimal
from enum import Enum
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from annotated_types import Ge, Gt, Le
from pydantic import BaseModel
from pydantic.fields import FieldInfo

from tripplan.documents.family.birth_date import BirthDate
from tripplan.documents.field_spec import Control, FieldSpec, Unit, asked_in, forms_in


@dataclass(frozen=True)
class Setting:
    """What a family's own data say about the way in which it is asked.

    Attributes:
        units: in which it reads distances, 'mi' or 'km'.
        currency: ISO 4217 code of the document's money.
        offered: what can be picked: values and their words, by the name that `FieldSpec.offered` gives.
        country: ISO 3166-1 alpha-2 code, by which numbers and dates are read; US if not said.
        today: on which an age that is typed holds; None where none is asked for.
    """

    units: str = "km"
    currency: str = ""
    offered: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    country: str = "US"
    today: date | None = None


TypedAs = Literal["text", "number", "minutes", "birth date"]


@dataclass(frozen=True)
class Question:
    """One field of a form as a page asks it.

    Attributes:
        path: where it stands in its document, with dots.
        name: part of its widget's key.
        asked: what it is called and how it is asked.
        control: with what it is filled in.
        usual: what counts when it is left out; None for nothing.
        ends: the least and the most that it takes, where it is a number that has both.
        inner: the plain questions about each entry of a list, or about what stands behind a tick.
        entry: how the key of an entry's field is made from its index and its own name.
        leave_out: code of what its tick to take an entry out is called; without one an emptied entry goes.
        waiting: so many empty entries wait below those that there are.
        typed_as: what is typed into its line, which people write in many ways.
    """

    path: str
    name: str
    asked: FieldSpec
    control: Control
    usual: object = None
    ends: tuple[float, float] | None = None
    inner: tuple["Question", ...] = ()
    entry: str = ""
    leave_out: str = ""
    waiting: int = 1
    typed_as: TypedAs = "text"

    def value_in(self, document: object) -> object:
        """What a document says; what is usual where there is none, or where it has no such part."""
        value: Any = document
        for step in self.path.split("."):
            if value is None:
                return self.usual
            value = getattr(value, step)
        return value

    def of_entry(self, index: int, name: str) -> str:
        """The name of a field of an entry."""
        return self.entry.format(index=index, name=name)


def questions(
    form: type[BaseModel],
    *names: str,
    under: str = "",
    leaving_out: Collection[str] = (),
    plain: bool = False,
    short: bool = False,
) -> tuple[Question, ...]:
    """Everything that a form asks for, in its own order.

    Args:
        form: the form.
        names: which of its fields, in this order; all that are asked for when left out.
        under: where the form stands in its document; empty for the document itself.
        leaving_out: fields that the page asks for elsewhere.
        plain: whether to leave out fields that are forms or lists of forms.
        short: whether a widget's key has the field's own name only, without the path to it.
    """
    found = []
    for name in names or form.model_fields:
        info = form.model_fields[name]
        asked = asked_in(form, name)
        inner = forms_in(info.annotation)
        if asked is None or name in leaving_out or len(inner) > 1 or (inner and plain and not asked.control):
            continue
        path = f"{under}.{name}" if under else name
        found.append(_question(path, name if short else path, asked, info))
    return tuple(found)


def in_order(listed: Sequence[Question], names: Sequence[str]) -> Sequence[Question]:
    """Some questions by their names and in that order; all of them where no name is given."""
    by_name = {one.name: one for one in listed}
    return [by_name[name] for name in names] if names else listed


def prefixed(listed: tuple[Question, ...], prefix: str) -> tuple[Question, ...]:
    """The same questions about one of several, such as one child, with keys of its own."""
    escaped = prefix.replace("{", "{{").replace("}", "}}")
    return tuple(replace(one, name=f"{prefix}_{one.name}", entry=f"{escaped}_{one.entry}") for one in listed)


def entries(form: type[BaseModel], name: str, *, entry: str, leave_out: str) -> tuple[Question, ...]:
    """The question about a list whose entries are added by a button and ticked out, for a page that has both.

    Args:
        form: the form that holds the list.
        name: the field.
        entry: how the key of an entry's field is made from its index and its own name.
        leave_out: the code of what the tick that takes an entry out is called.
    """
    return tuple(replace(one, entry=entry, leave_out=leave_out, waiting=0) for one in questions(form, name))


def _question(path: str, name: str, asked: FieldSpec, info: FieldInfo) -> Question:
    control = asked.control or _control(info.annotation, asked)
    inner: tuple[Question, ...] = ()
    if control in (Control.PART, Control.ROWS):
        (form,) = forms_in(info.annotation)
        inner = questions(form, plain=True)
    usual = None if info.is_required() else info.get_default(call_default_factory=True, validated_data={})
    if info.is_required() and control in (Control.CHOICE, Control.RADIO):
        usual = next(iter(asked.words), None)
    entry = f"{name}{{index}}_{{name}}"
    typed_as = _typed_as(info.annotation, asked) if control is Control.LINE else "text"
    return Question(path, name, asked, control, usual, _ends(info), inner, entry, typed_as=typed_as)


def _typed_as(annotation: object, asked: FieldSpec) -> TypedAs:
    bare = _bare(annotation)
    if bare is BirthDate:
        return "birth date"
    if bare not in (int, float, Decimal):
        return "text"
    return "minutes" if asked.unit is Unit.MINUTES else "number"


def _control(annotation: object, asked: FieldSpec) -> Control:
    if asked.unit is Unit.KILOMETRES:
        return Control.DISTANCE
    bare = _bare(annotation)
    if get_origin(bare) is tuple:
        (inner, *_) = get_args(bare)
        if forms_in(inner):
            return Control.ROWS
        if _bare(inner) is time:
            return Control.TIMES
        return Control.SOME if get_origin(_bare(inner)) is Literal else Control.COMMAS
    if forms_in(bare):
        return Control.PART
    if get_origin(bare) is Literal or (isinstance(bare, type) and issubclass(bare, Enum)):
        return Control.CHOICE
    return {bool: Control.TICK, time: Control.CLOCK, date: Control.DAY}.get(bare, Control.LINE)  # type: ignore[call-overload, no-any-return]


def _bare(annotation: object) -> object:
    """A type without what is noted about it, and without None."""
    if get_origin(annotation) is Annotated:
        return _bare(get_args(annotation)[0])
    if get_origin(annotation) in (Union, UnionType):
        (bare, *others) = [part for part in get_args(annotation) if part is not type(None)]
        return annotation if others else _bare(bare)
    return annotation


def _ends(info: FieldInfo) -> tuple[float, float] | None:
    notes = [*info.metadata, *_notes(info.annotation)]
    low = next((float(n.ge if isinstance(n, Ge) else n.gt) for n in notes if isinstance(n, Ge | Gt)), None)  # type: ignore[arg-type]
    high = next((float(n.le) for n in notes if isinstance(n, Le)), None)  # type: ignore[arg-type]
    return None if low is None or high is None else (low, high)


def _notes(annotation: object) -> list[object]:
    if get_origin(annotation) is Annotated:
        return [one for note in get_args(annotation)[1:] for one in getattr(note, "metadata", [note])]
    return [note for part in get_args(annotation) for note in _notes(part)]

"""What the fields of a form say for a document, and what was typed as a document's file would hold it."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from datetime import date, time
from decimal import Decimal, InvalidOperation
from typing import Any

from tripplan.documents.field_spec import Control
from tripplan.errors import Finding
from tripplan.language import wording
from tripplan.reading.typed.amounts import amount_in
from tripplan.reading.typed.clocks import clock_in, half_is_asked
from tripplan.reading.typed.dates import birth_as_typed, birth_in
from tripplan.reading.typed.durations import minutes_in
from tripplan.screens.forms.questions import Question, Setting, TypedAs
from tripplan.screens.widgets.fields import FieldValue, lines_in, listed_in, put
from tripplan.values.units import KM_PER_MILE

Raw = dict[str, Any]
"""A document, or a part of one, as its file would hold it, before it is checked."""
Typed = Mapping[str, Any]
"""What stands in the fields, by their names."""


def on_record(listed: Sequence[Question], document: object, setting: Setting) -> dict[str, FieldValue]:
    """What the fields say for a document.

    Args:
        listed: the questions.
        document: the document; None for what is usual in a new one.
        setting: the family's units and words.
    """
    said: dict[str, FieldValue] = {}
    for question in listed:
        value = question.value_in(document)
        if question.control is Control.PART:
            said[question.name] = value is not None
            for inner in question.inner:
                said[f"{question.name}.{inner.name}"] = shown(inner, inner.value_in(value), setting)
        elif question.control is Control.ROWS:
            entries = value if isinstance(value, tuple) else ()
            for index in range(len(entries) + question.waiting):
                entry = entries[index] if index < len(entries) else None
                said |= entry_fields(question, index, entry, setting)
        else:
            said[question.name] = shown(question, value, setting)
    return said


def entry_fields(question: Question, index: int, entry: object, setting: Setting) -> dict[str, FieldValue]:
    """What the fields of one entry of a list say; an entry that waits is empty.

    Args:
        question: about the list.
        index: of the entry.
        entry: the entry; None for one that waits.
        setting: the family's units and words.
    """
    said: dict[str, FieldValue] = {}
    for inner in question.inner:
        value = None if entry is None and inner.control is not Control.TICK else inner.value_in(entry)
        said[question.of_entry(index, inner.name)] = shown(inner, value, setting)
    if question.leave_out:
        said[question.of_entry(index, "gone")] = False
    return said


def shown(question: Question, value: Any, setting: Setting) -> FieldValue:  # noqa: ANN401 - of whatever type the field has
    """A value as its field shows it.

    Args:
        question: the field.
        value: what a document holds; None for nothing.
        setting: the family's units and words.
    """
    match question.control:
        case Control.TICK:
            return bool(value)
        case Control.CLOCK | Control.DAY:
            return value if isinstance(value, time | date) else None
        case Control.SOME | Control.WORDS | Control.OWN_WORDS:
            return list(value or ())
        case Control.COMMAS | Control.TIMES:
            return ", ".join(_text(one) for one in value or ())
        case Control.LINES:
            return "\n".join(value or ())
        case Control.DISTANCE:
            return "" if value is None else distance_text(value, setting.units)
        case Control.RADIO | Control.PILLS:
            return None if value is None else _text(value)
        case Control.LINE if question.typed_as == "birth date":
            return birth_as_typed(_text(value), setting.country)
        case _:
            return _text(value)


def _text(value: object) -> str:
    if value is None:
        return ""
    if isinstance(value, time):
        return wording.clock(value)
    # An exponent, as in 1E+2, is no price that somebody would type.
    return f"{value:f}" if isinstance(value, Decimal) else str(value)


def distance_text(km: float, units: str) -> str:
    """A distance in the family's unit as a field shows it, to a tenth."""
    value = Decimal(str(km)) / (KM_PER_MILE if units == "mi" else 1)
    return f"{value:.1f}".removesuffix(".0")


def put_changes(
    raw: Raw, listed: Sequence[Question], typed: Typed, before: Typed, setting: Setting
) -> list[Finding]:
    """Write into a document what was changed; all else stays to the letter, also what no field can show.

    Args:
        raw: the document as its file holds it; changed. Empty for a new one.
        listed: the questions.
        typed: what stands in the fields.
        before: what the fields say for the document; empty for a new one.
        setting: the family's units and words.

    Returns:
        What the form itself could not read.
    """
    found: list[Finding] = []
    for question in listed:
        if question.control is Control.PART:
            found += _put_part(raw, question, typed, before, setting)
        elif question.control is Control.ROWS:
            found += _put_rows(raw, question, typed, before, setting)
        elif question.name not in before or typed[question.name] != before[question.name]:
            found += _put_one(raw, question, typed[question.name], setting)
    return found


def _put_part(
    raw: Raw, question: Question, typed: Typed, before: Typed, setting: Setting
) -> Iterator[Finding]:
    holder, name = _holder(raw, question.path)
    if not typed[question.name]:
        holder.pop(name, None)
        return

    def within(fields: Typed) -> Typed:
        return {
            inner.name: fields[key]
            for inner in question.inner
            if (key := f"{question.name}.{inner.name}") in fields
        }

    then = within(before) if name in holder else {}
    part = holder.setdefault(name, {})
    yield from _at(question.path, put_changes(part, question.inner, within(typed), then, setting))


def _put_rows(
    raw: Raw, question: Question, typed: Typed, before: Typed, setting: Setting
) -> Iterator[Finding]:
    holder, name = _holder(raw, question.path)
    there = holder.get(name, [])
    rows: list[Raw] = []
    for index in range(rows_in(question, typed)):
        now, then = entry_in(question, typed, index), entry_in(question, before, index)
        gone = typed[question.of_entry(index, "gone")] if question.leave_out else is_empty(question, now)
        if gone:
            continue
        known = index < len(there)
        row = dict(there[index]) if known else {}
        path = f"{question.path}[{len(rows)}]"
        yield from _at(path, put_changes(row, question.inner, now, then if known else {}, setting))
        rows.append(row)
    if rows or there:
        holder[name] = rows


def rows_in(question: Question, typed: Collection[str]) -> int:
    """How many entries of a list have fields."""
    first, count = question.inner[0].name, 0
    while question.of_entry(count, first) in typed:
        count += 1
    return count


def entry_in(question: Question, fields: Typed, index: int) -> Typed:
    """What stands in the fields of one entry, by their own names."""
    named = {inner.name: question.of_entry(index, inner.name) for inner in question.inner}
    return {name: fields[key] for name, key in named.items() if key in fields}


def is_empty(question: Question, entry: Typed) -> bool:
    """Whether nothing stands in the fields of an entry; ticks alone say nothing."""
    return not any(entry[inner.name] for inner in question.inner if inner.control is not Control.TICK)


def _at(path: str, findings: Sequence[Finding]) -> Iterator[Finding]:
    for found in findings:
        yield Finding("", f"{path}.{found.field}", found.value, found.message)


def _holder(raw: Raw, path: str) -> tuple[Raw, str]:
    *holders, name = path.split(".")
    for holder in holders:
        raw = raw.setdefault(holder, {})
    return raw, name


def _put_one(raw: Raw, question: Question, typed: Any, setting: Setting) -> list[Finding]:  # noqa: ANN401
    if question.control is Control.DISTANCE:
        return _put_distance(raw, question, str(typed).strip(), setting.units)
    put(raw, question.path, "" if typed is None else _written(question, typed, setting))
    texts = {Control.CLOCK_TYPED: [str(typed)], Control.TIMES: listed_in(str(typed))}.get(
        question.control, []
    )
    return [
        Finding("", question.path, text, _WHICH_HALF.format(text)) for text in texts if half_is_asked(text)
    ]


_WHICH_HALF = "morning or afternoon? Write {0}am or {0}pm."


def _written(question: Question, typed: Any, setting: Setting) -> object:  # noqa: ANN401
    match question.control:
        case Control.CLOCK:
            return f"{typed:%H:%M}"
        case Control.CLOCK_TYPED:
            return clock_text(typed)
        case Control.CODE:
            return typed.strip().upper()
        case Control.COMMAS:
            return listed_in(typed)
        case Control.TIMES:
            return [clock_text(one) for one in listed_in(typed)]
        case Control.LINES:
            return lines_in(typed)
        case Control.LINE:
            return typed_text(typed, question.typed_as, setting)
        case Control.SOME | Control.WORDS:
            return [one for one in (question.asked.words or typed) if one in typed]
        case _:
            return typed


def typed_text(typed: str, typed_as: TypedAs, setting: Setting) -> str:
    """A line as a file holds it, from the ways in which people write it; what reads like nothing stays.

    Args:
        typed: what stands in the field.
        typed_as: what it is.
        setting: by whose country and day it is read.
    """
    told = str(typed).strip()
    match typed_as:
        case "number":
            return amount_in(told, setting.country) or told
        case "minutes":
            minutes = minutes_in(told)
            return told if minutes is None else str(minutes)
        case "birth date" if setting.today is not None:
            return birth_in(told, setting.country, setting.today) or told
    return str(typed)


def clock_text(text: str) -> str:
    """A time of day as a file holds it, from '9', '9:05', '905', '9.05 pm' or 'noon'; else the text itself.

    Where morning or afternoon is not said, the hour stands as it is typed, and is asked about.
    """
    told = text.strip()
    return clock_in(told) or (clock_in(f"{told}am") if half_is_asked(told) else None) or told


def _put_distance(raw: Raw, question: Question, text: str, units: str) -> list[Finding]:
    if not text:
        put(raw, question.path, "")
        return []
    km = km_in(text, units)
    ends = question.ends
    if km is not None and (ends is None or ends[0] <= km <= ends[1]):
        put(raw, question.path, km)
        return []
    within = "" if ends is None else " from {} to {},".format(*(wording.distance(end, units) for end in ends))
    message = f"a distance{within} as a number such as 12.5"
    return [Finding("", question.path, text[:60], message)]


def km_in(text: str, units: str) -> float | None:
    """A typed distance [km]; None where it is no number.

    Args:
        text: in the family's unit.
        units: 'mi' or 'km'.
    """
    try:
        value = Decimal(amount_in(text) or text.strip().replace(",", ""))
    except InvalidOperation:
        return None
    if not value.is_finite() or abs(value) > 10**9:
        return None
    return float(round(value * (KM_PER_MILE if units == "mi" else 1), 5))

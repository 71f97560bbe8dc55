"""A form for a document or a part of it: filled from what is on record, drawn, read, checked and saved."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from tripplan.documents.field_spec import Control
from tripplan.documents.model import Written
from tripplan.errors import Finding, Weight
from tripplan.files.toml.reading_result import ReadResult
from tripplan.screens.forms.answers import Raw, entry_fields, is_empty, on_record, put_changes, rows_in
from tripplan.screens.forms.drawing import Slots, draw
from tripplan.screens.forms.faults import forget_faults, keep_faults
from tripplan.screens.forms.questions import Question, Setting, in_order
from tripplan.screens.forms.words import in_words
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, refill, typed_now
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

W = TypeVar("W", bound=Written)


@dataclass(frozen=True)
class Form:
    """Some questions about a document, with their fields.

    Attributes:
        fields: the widgets, filled.
        listed: the questions.
        setting: the family's units and words.
        before: what the fields say for the document on record; empty where there is none.
    """

    fields: Fields
    listed: tuple[Question, ...]
    setting: Setting
    before: Mapping[str, FieldValue] = field(default_factory=dict)

    @property
    def name(self) -> str:
        """Names the form; part of every key."""
        return self.fields.form

    def draw(self, *names: str, examples: Mapping[str, str] | None = None) -> Slots:
        """Draw the fields, or only those of some names; returns where their faults can be told."""
        return draw(self.fields, in_order(self.listed, names), self.setting, examples)

    def put(self, raw: Raw) -> list[Finding]:
        """Write what was changed into a document, and say what could not be read."""
        return put_changes(raw, self.listed, self.fields.typed(), self.before, self.setting)


def with_waiting(
    name: str, listed: Sequence[Question], said: Mapping[str, FieldValue], setting: Setting
) -> dict[str, FieldValue]:
    """What the fields say at first, with an empty entry below every list whose last one was filled in.

    Args:
        name: names the form.
        listed: the questions.
        said: what the fields say for the document.
        setting: the family's units and words.
    """
    said = dict(said)
    for question in (one for one in listed if one.control is Control.ROWS and not one.leave_out):
        count = rows_in(question, said)
        while not is_empty(question, _last(name, question, said, count - 1)):
            said |= entry_fields(question, count, None, setting)
            count += 1
    return said


def _last(name: str, question: Question, said: Mapping[str, FieldValue], index: int) -> dict[str, object]:
    keys = {inner.name: question.of_entry(index, inner.name) for inner in question.inner}
    return {inner: typed_now(name, key, said[key]) for inner, key in keys.items()}


def form_for(
    name: str,
    listed: tuple[Question, ...],
    document: object,
    setting: Setting | None = None,
    *,
    suggested: object = None,
    also: Mapping[str, FieldValue] | None = None,
) -> Form:
    """A form filled with what a document says, or with what is usual where there is none.

    Args:
        name: names the form.
        listed: the questions.
        document: what is on record; None for a new one.
        setting: the family's units and words.
        suggested: another document, which the fields say until it is saved.
        also: further fields, which the page draws itself.
    """
    setting = setting or Setting()
    shown = on_record(listed, document if suggested is None else suggested, setting)
    fields = filled(name, {**with_waiting(name, listed, shown, setting), **(also or {})})
    return Form(fields, listed, setting, {} if document is None else on_record(listed, document, setting))


def save(
    view: View,
    spot: str,
    read: ReadResult[W],
    raw: Raw,
    form: type[W],
    expected: int,
    said: str,
    found: Sequence[Finding] = (),
    called: Mapping[str, str] | None = None,
    *,
    told_at: str = "",
    can_be_taken_back: bool = True,
) -> bool:
    """Save a document that was changed in a form; or say every fault at once, with nothing changed.

    Args:
        view: whose records.
        spot: names the form, and says where to tell what came of it.
        read: the document as its checks read it.
        raw: what they read.
        form: what it is written as.
        expected: the revision the change was made from; 0 for a new one.
        said: the sentence where it worked.
        found: what the form itself could not read.
        called: what fields are called that the document does not name itself, by their paths.
        told_at: where on the page it is said that it worked; at the form when left out.
        can_be_taken_back: whether to offer that.

    Returns:
        Whether it was saved; the form is then filled anew.
    """
    if read.value is None or found:
        faults = [*found, *(finding for finding in read.findings if finding.weight is Weight.FAULT)]
        told = in_words(faults, form, raw, called)
        keep_faults(spot, faults, told)
        refuse(spot, findings=told)
        return False
    values = [(read.value, expected)]
    saved = save_all(view, told_at or spot, values, said, can_be_taken_back=can_be_taken_back)
    if saved:
        forget_faults(spot)
        refill(spot)
    return saved

"""Harmless values in the place of faulty ones, so that the rest of a form can be checked too."""

from collections import Counter
from copy import deepcopy
from itertools import count
from typing import Any, TypeVar

from pydantic import BaseModel, TypeAdapter

from tripplan.files.toml.faults import Faults, Path, path_in, validated, value_at

F = TypeVar("F", bound=BaseModel)
_ROUNDS = 150
"""After so many readings a form is given up as not mendable [-]."""
_SOMEWHERE = {"country": "US", "latitude": 0, "longitude": 0, "time_zone": "UTC"}
_UNIQUE_NAME = object()
SMALL: tuple[object, ...] = (
    *(0, 1, 5, 10, _UNIQUE_NAME, "00:00", "2000-01-01", "24/7", "UTC", "US", "USD", ""),
    *([], [{}], _SOMEWHERE),
)
"""Tried in turn in the place of a faulty value until the form accepts one."""
LARGE: tuple[object, ...] = (
    *(100_000, 1000, 365, 120, 100, 50, 10, 5, 1, 0, _UNIQUE_NAME, "9990-9999 months", "23:59"),
    *("2190-01-01", "off", "UTC", "ZZ", "EUR", "", [], [{}], _SOMEWHERE),
)
"""As different from `SMALL` as can be: what a rule finds with both does not hang on the stand-ins."""


def mended(faults: Faults, form: type[F], context: dict[str, Any], mending: "Substitution") -> F | None:
    """The form with a stand-in for each faulty value; None where none could be found."""
    for _ in range(_ROUNDS):
        value, errors = validated(mending.values, form, context)
        if value is not None:
            return value
        faults.add(errors, mending.values)
        inner = [error for error in errors if error["loc"]]
        if not inner:
            return _unchecked_as_a_whole(mending.values, form, context)
        for error in inner:
            path = path_in(mending.values, error)
            faults.paths.add(mending.try_next(path, is_extra=error["type"] == "extra_forbidden"))
    return None


class Substitution:
    """Puts stand-ins into the values of a faulty file, one after the other, until its form accepts them."""

    def __init__(self, values: dict[str, Any], stand_ins: tuple[object, ...], names: str) -> None:
        self.values = deepcopy(values)
        self.stand_ins = stand_ins
        self.names = (f"{names}-{n}" for n in count())
        self.tried: Counter[Path] = Counter()

    def try_next(self, path: Path, *, is_extra: bool) -> Path:
        """Put the next stand-in at a path; after the last leave the field out, then turn to what holds it.

        Args:
            path: where the fault stands.
            is_extra: whether the form has no such field.

        Returns:
            The path that was changed, which may be one that holds the given path.
        """
        while path:
            holder: Any = value_at(self.values, path[:-1])
            turn = self.tried[path]
            self.tried[path] += 1
            if isinstance(holder, dict) and (is_extra or turn == len(self.stand_ins)):
                holder.pop(path[-1], None)
                return path
            if isinstance(holder, dict | list) and turn < len(self.stand_ins):
                slots: Any = holder
                chosen = self.stand_ins[turn]
                slots[path[-1]] = next(self.names) if chosen is _UNIQUE_NAME else deepcopy(chosen)
                return path
            path = path[:-1]
        return path


def _unchecked_as_a_whole(values: dict[str, Any], form: type[F], context: dict[str, Any]) -> F:
    """A form whose fields are each right but do not fit together, for rules about the rest of it."""
    fields = {
        name: TypeAdapter(field.rebuild_annotation()).validate_python(values[name], context=context)
        for name, field in form.model_fields.items()
        if name in values
    }
    return form.model_construct(**fields)

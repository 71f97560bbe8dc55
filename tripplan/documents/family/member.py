"""One person of the household or a guest: age, naps, and what the person bears on a drive."""

from datetime import date, time
from enum import StrEnum
from typing import Annotated

from pydantic import Field

from tripplan.documents.family.birth_date import BirthDate, Born
from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.model import LONGEST_NAME, ClockTime, Minutes, Name, Written
from tripplan.language.sentences import say
from tripplan.values.ages import ADULT, MONTHS, completed_months
from tripplan.values.heights import TallAs


class SleepsIn(StrEnum):
    """Where a nap happens."""

    HOME = "home"
    CAR = "car"
    PUSHCHAIR = "pushchair"

    @property
    def where(self) -> str:
        """The place within a sentence, such as 'in the car'."""
        return say(_SLEEPS[self])


_SLEEPS = {
    SleepsIn.HOME: "answers-sleeps-home",
    SleepsIn.CAR: "answers-sleeps-car",
    SleepsIn.PUSHCHAIR: "answers-sleeps-stroller",
}


class Nap(Written):
    """A usual midday sleep."""

    start: Annotated[ClockTime, FieldSpec("usually begins at")]
    """When it usually begins, by the clock at home."""
    minutes: Annotated[int, Field(ge=5, le=300), FieldSpec("usual length", unit=Unit.MINUTES)]
    """How long it usually lasts."""
    slack_minutes: Annotated[Minutes, FieldSpec("minutes it may move either way", unit=Unit.MINUTES)] = 30
    """How much earlier or later it may begin without harm."""
    in_car: Annotated[bool, FieldSpec("sleeps in the moving car")] = True
    """Whether the child sleeps in a moving car."""
    in_pushchair: Annotated[bool, FieldSpec("sleeps in stroller or carrier")] = False
    """Whether the child sleeps in a stroller or carrier."""
    stays_asleep_when_moved: Annotated[
        bool, FieldSpec("stays asleep when moved from the car to stroller or bed")
    ] = False
    """Whether the child sleeps on when it is lifted out of the car after arriving, into the stroller (where
    the place allows one) or into bed at home; else a sleep in the car ends on arrival. No source, the
    parent's own to say."""
    falls_asleep_minutes: Annotated[
        Minutes, FieldSpec("minutes to fall asleep in car or stroller", unit=Unit.MINUTES)
    ] = 10
    """How long the child takes to fall asleep in the car or stroller."""
    shortest_minutes: Annotated[Minutes, FieldSpec("shortest sleep that counts", unit=Unit.MINUTES)] = 20
    """The shortest sleep that counts."""


class Member(Written):
    """One person of the household or a guest."""

    name: Annotated[Name, FieldSpec("Name")]
    """How the family calls the person; it never leaves the household's own records."""
    born: Annotated[
        Born,
        FieldSpec(
            "Birth date",
            control=Control.LINE,
            help="Such as 5/14/1988, or only March 2022; an age such as 8 or 22 months for now. Ages are "
            "always those on the day of the visit.",
        ),
    ]
    """Birth date, or only year and month; age is always the age on the day of the visit."""
    statuses: Annotated[
        tuple[Name, ...],
        FieldSpec(
            "Discounts (military, educator and the like)",
            control=Control.COMMAS,
            help="With commas between: educator, student, benefit card, resident of ..., member of "
            "...; the same words as on the place cards.",
        ),
    ] = ()
    """What may change a ticket's price: educator, student, benefit card, resident of ..., member of ..."""
    family: Annotated[
        str,
        Field(max_length=LONGEST_NAME),
        FieldSpec(
            "Belongs to another family",
            help="Empty for your own. People with the same word here are one family: some tickets are "
            "only for parents with their own children.",
        ),
    ] = ""
    """Which other family the person belongs to, in a word of the parent's own; empty for this household."""
    naps: Annotated[tuple[Nap, ...], FieldSpec("Nap")] = ()
    """The usual naps, in order."""
    wakes: Annotated[ClockTime, FieldSpec("Usually wakes at")] = time(6, 30)
    """When the person usually wakes."""
    bed: Annotated[ClockTime, FieldSpec("In bed by")] = time(19, 30)
    """When the person should be in bed."""
    patience_minutes: Annotated[
        Annotated[int, Field(ge=5, le=600)] | None,
        FieldSpec(
            "Longest comfortable drive",
            unit=Unit.MINUTES,
            help="Left empty, it goes by age: 60 minutes under three, 90 under seven, 120 under "
            "eighteen, any time for adults. Common practice, no source: you know better. What "
            "goes beyond it weighs.",
        ),
    ] = None
    """How long the person bears driving at a stretch; by age when left out (under 3: 60, under 7: 90,
    under 18: 120; adults any time). What goes beyond it weighs. Common practice, no source."""
    toilet_minutes: Annotated[
        Annotated[int, Field(ge=15, le=600)] | None,
        FieldSpec(
            "Needs a toilet at least every so many minutes",
            unit=Unit.MINUTES,
            help="For a child that is newly out of diapers: the drive rests at least that often. Empty"
            " for none.",
        ),
    ] = None
    """How long the person, such as a child newly out of diapers, holds out between two toilets; the
    drive rests at least that often. No limit when left out."""
    height: Annotated[
        TallAs | None,
        FieldSpec(
            "Height",
            help="Such as 46 in, 3 ft 10 or 117 cm, for rides with a height limit. Empty if you do "
            "not need it.",
            width=170,
        ),
    ] = None
    """How tall the person is, with shoes off; decides about rides with a height limit, and nothing else."""
    height_on: Annotated[
        date | None,
        FieldSpec("Measured on", help="Children grow: you are asked again after half a year.", width=170),
    ] = None
    """When that was measured; a child's height is asked about again half a year later."""
    needs: Annotated[
        str,
        FieldSpec(
            "Notes, allergies, needs",
            control=Control.NOTE,
            help="Allergies, medicine, a child seat, a favorite toy. For your eyes; ask the place and "
            "your doctor where it matters.",
        ),
    ] = ""
    """Notes, allergies, needs: allergies, medicine, a favourite toy; for the parent's eyes."""

    def months_on(self, day: date) -> int:
        """Age on a day [completed months]; with no birth day known, from the first of the birth month."""
        return completed_months(self.born.earliest, day)

    def age_in_doubt_on(self, day: date) -> bool:
        """Whether the missing birth day could change the completed years on that day."""
        youngest = completed_months(self.born.latest, day)
        return youngest // 12 != self.months_on(day) // 12

    def aged(self, day: date, when: date) -> "Member":
        """The same person, but on `day` as old as really on `when` [completed months]."""
        months = self.months_on(when)
        year, month = divmod(day.year * MONTHS + day.month - 1 - months, MONTHS)
        return self.model_copy(update={"born": BirthDate(year=year, month=month + 1, day=1)})

    def is_adult_on(self, day: date) -> bool:
        """Whether the person is 18 or older on a day."""
        return self.months_on(day) in ADULT

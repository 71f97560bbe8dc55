"""What can be done when the day goes wrong, and what each way out costs."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from tripplan.language import wording
from tripplan.language.sentences import Fact, say
from tripplan.planning.day import NapOutcome
from tripplan.planning.on_the_day.sunk_cost import SunkCost
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import leaving_sentence
from tripplan.values.money import Money


class RecoveryKind(StrEnum):
    """What can be done about it."""

    GO_ON = "go on"
    WAIT = "wait"
    TURN_BACK = "turn back"
    UNDERSTUDY = "somewhere else"


@dataclass(frozen=True)
class RecoveryOption:
    """One thing that can be done.

    Attributes:
        choice: which.
        title: what it is.
        outing: the new plan with all its answers; None where the party goes, drives on or stays home.
        home: when everybody who is out is home.
        naps: what becomes of the naps of those who are out.
        total: what the whole day costs then, tickets already paid for included.
        change: how much more that is than was planned; below zero where it is less.
        tickets: what becomes of tickets already paid for; None where none were.
        felt: what its nuisances weigh.
        notes: what else to know.
        stays_home: whether nobody leaves the house at all.
    """

    choice: RecoveryKind
    title: Fact
    outing: Outing | None
    home: datetime
    naps: tuple[NapOutcome, ...]
    total: Money
    change: Money
    tickets: SunkCost | None
    felt: Money
    notes: tuple[Fact, ...] = ()
    stays_home: bool = False

    @property
    def home_sentence(self) -> str:
        """When everybody is home; empty where nobody leaves."""
        return "" if self.stays_home else say("recovery-home-at", at=self.home)

    @property
    def weighs(self) -> Money:
        """Money and nuisances together; the least is the best."""
        return self.total + self.felt

    @property
    def times_sentence(self) -> str:
        """When the party leaves and how long it stays; empty where it goes or stays home."""
        if self.outing is None:
            return ""
        plan, begun = self.outing.plan, self.outing.question.begun
        left = begun is not None and begun.now > begun.left_home
        leave = say("recovery-left", at=plan.leave_home) if left else wording.capital(leaving_sentence(plan))
        stay = timedelta(minutes=plan.visit_minutes)
        return say("recovery-times", leave=leave, enter=plan.enter, leave_place=plan.leave_place, stay=stay)

    @property
    def money_sentence(self) -> str:
        """What changes in cost."""
        change = self.change.rounded()
        by = wording.whole_money(Money(abs(change.amount), change.currency))
        said = [
            say("recovery-costs", by=by, more=change.amount > 0)
            if change.amount
            else say("recovery-costs-as-planned")
        ]
        if self.tickets is not None and self.tickets.back.amount:
            said.append(say("recovery-tickets-back", back=self.tickets.back))
        if self.tickets is not None and self.tickets.lost.amount:
            said.append(say("recovery-tickets-lost", lost=self.tickets.lost))
        return " ".join(said)


@dataclass(frozen=True)
class RevisedDay:
    """What can be done from here and now.

    Attributes:
        now: the moment it is about.
        ways: what can be done: the same place first, then another, then turning back, for what the place
            and the day are worth nobody can say; among equals the least money and nuisances first. In rain,
            open-air places come last.
        impossible: what cannot be done any more, each with its reasons.
        cautions: for safety.
    """

    now: datetime
    ways: tuple[RecoveryOption, ...]
    impossible: tuple[tuple[Fact, tuple[Fact, ...]], ...]
    cautions: tuple[Fact, ...]

"""The logbook in plain sentences, the same on screens and command line."""

from collections.abc import Iterator

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.crowds.risk import fullness_code, fullness_for
from tripplan.planning.logbook.against_plan import (
    LEAVING,
    AgainstPlan,
    MinutesAgainst,
    MoneyAgainst,
    YearAgainstPlan,
)
from tripplan.planning.logbook.learning import LearnedFigure
from tripplan.planning.logbook.year import Purse, YearAccount
from tripplan.values.money import Money

UNKNOWN = "not noted"


def entry_sentence(entry: LogbookEntry, units: str) -> str:
    """One outing in a line, such as 'Thu, Nov 12, 2026: Stone mill. $60.30 paid; 3 h 10 min there; 68 mi'.

    Args:
        entry: the outing.
        units: the household's unit of distance, 'mi' or 'km'.
    """
    stay, km = entry.moments.stay_minutes, entry.km_driven
    parts = [
        f"Money {UNKNOWN}" if entry.spent is None else _paid(entry.spent),
        *([f"{wording.minutes(stay)} there"] if stay is not None else []),
        *([wording.distance(km, units)] if km is not None else []),
        *([say(fullness_code(entry.fullness))] if entry.fullness else []),
        *([f"{entry.outdoors.value} outdoors"] if entry.outdoors else []),
    ]
    return f"{wording.day(entry.day)}: {entry.title}. {'; '.join(parts)}."


def _paid(amount: Money) -> str:
    return f"{wording.money(amount)} paid" if amount.amount else "Nothing paid"


def entry_lines(entry: LogbookEntry) -> Iterator[str]:
    """What an entry holds beside its sentence, one line each."""
    yield f"Who went: {wording.listed(entry.party)}."
    moments = entry.moments
    times = [
        (name, moment)
        for name, moment in (
            ("left home", moments.left_home),
            ("there", moments.arrived),
            ("left", moments.left_place),
            ("home again", moments.home_again),
        )
        if moment is not None
    ]
    if times:
        yield f"Times: {', '.join(f'{name} {wording.clock(moment)}' for name, moment in times)}."
    items = [
        f"{one.what or one.kind} {wording.money(Money(one.amount, entry.currency))}" for one in entry.paid
    ]
    if entry.not_itemised.amount:
        items.append(f"not itemised {wording.money(entry.not_itemised)}")
    if items:
        yield f"Paid: {', '.join(items)}."
    if entry.fuel is not None:
        yield f"The car took {entry.fuel.amount:f} {entry.fuel.unit}."
    for nap in entry.naps:
        where = "" if nap.where is None else f", {nap.where.where}"
        slept = f"slept {wording.minutes(nap.minutes)}{where}" if nap.minutes else "did not sleep"
        yield f"{nap.member} {slept}."
    for child in entry.children:
        subjects = ", ".join(
            one.subject if one.hours is None else f"{one.subject} ({one.hours.normalize():f} h)"
            for one in child.subjects
        )
        hours = child.hours_counted
        counted = f"{hours.normalize():f} h" if hours is not None else "no hours counted"
        told = "; ".join(filter(None, (child.did, child.learned, subjects, counted)))
        yield f"{child.member}: {told}."
    if entry.weather:
        yield f"Weather: {entry.weather}."
    if entry.notes:
        yield entry.notes


def against_lines(against: AgainstPlan) -> Iterator[str]:
    """An outing against its plan, one line a figure; what is unknown says so."""
    for money in against.money:
        yield _money_line(money)
    for minutes in (*against.minutes, *against.naps):
        yield _minutes_line(minutes)
    if against.crowd_planned is not None:
        planned = say(fullness_code(fullness_for(against.crowd_planned)))
        odds = wording.odds(against.crowd_planned)
        real = say(fullness_code(against.crowd_real)) if against.crowd_real else UNKNOWN
        yield say("crowds-against-plan", planned=planned, odds=odds, real=real)


def _money_line(line: MoneyAgainst) -> str:
    planned = "not known" if line.planned is None else wording.money(line.planned)
    if line.what == "reserve":
        return f"Reserve: {planned} were set aside for what nobody thought of."
    real = UNKNOWN if line.real is None else wording.money(line.real)
    how = ", driving worked out from the distance" if line.worked_out else ""
    return f"{wording.capital(line.what)}: planned {planned}, was {real}{how}{_more(line.more)}."


def _more(more: Money | None) -> str:
    if more is None or not more.amount:
        return ""
    word = "more" if more.amount > 0 else "less"
    return f" ({wording.money(Money(abs(more.amount), more.currency))} {word})"


def _minutes_line(line: MinutesAgainst) -> str:
    if line.what == LEAVING:
        if line.real is None:
            return f"Leaving home: {UNKNOWN}."
        late = "on time" if not line.real else f"{_off(line.real, 'late', 'early')}"
        return f"Leaving home: {late}."
    planned = "not known" if line.planned is None else wording.minutes(line.planned)
    real = UNKNOWN if line.real is None else wording.minutes(line.real)
    more = f" ({_off(line.more, 'more', 'less')})" if line.more else ""
    return f"{wording.capital(line.what)}: planned {planned}, was {real}{more}."


def _off(minutes: float, above: str, below: str) -> str:
    return f"{wording.minutes(abs(minutes))} {above if minutes > 0 else below}"


def purse_sentence(purse: Purse, called: str) -> str:
    """What was spent and what is left, such as 'Water: $101.50 spent on 2 outings; $18.50 left of $120.00'.

    Args:
        purse: the sums.
        called: what they are for.
    """
    outings = wording.counted(purse.outings, "outing")
    least = "at least " if purse.unknown else ""
    parts = [f"{least}{wording.money(purse.spent)} spent on {outings}"]
    if purse.to_come:
        parts.append(f"about {wording.money(purse.planned)} planned for {purse.to_come} to come")
    if purse.budget is not None:
        parts.append(f"{_left(purse.left, purse.unknown)} of {wording.money(purse.budget)}")
    return f"{called}: {'; '.join(parts)}."


def _left(left: Money | None, unknown: tuple[str, ...]) -> str:
    if left is None:
        return "no budget"
    if left.amount < 0:
        return f"{wording.money(Money(-left.amount, left.currency))} over the budget"
    return f"{'at most ' if unknown else ''}{wording.money(left)} left"


def year_lines(account: YearAccount) -> Iterator[str]:
    """The year's account, one line a sum, unknowns named."""
    years = f"{wording.day(account.first)} to {wording.day(account.last)}"
    yield purse_sentence(account.purse, years)
    after = account.purse.left_after_planned
    if after is not None and account.purse.to_come:
        yield f"With what is planned: {_left(after, account.purse.unknown)}."
    known = [f"{kind} {wording.money(amount)}" for kind, amount in account.by_kind if amount.amount]
    if account.not_itemised.amount:
        known.append(f"not itemised {wording.money(account.not_itemised)}")
    if known:
        yield f"It went to: {', '.join(known)}."
    for name, purse in account.units:
        yield purse_sentence(purse, name or "Without a study unit")
    if account.purse.unknown:
        yield f"Nobody noted the money of {wording.listed(account.purse.unknown)}."
    if account.purse.other_currency:
        yield f"Left out of the sums: {wording.listed(account.purse.other_currency)}."
    if account.purse.outings:
        yield "Fuel, and food from home, are in these sums only where they were written down."


def year_against_lines(year: YearAgainstPlan) -> Iterator[str]:
    """The year's outings against their plans, only where both are known; the rest is named."""
    if not year.planned_outings:
        yield "No outing of this year was planned here and written down, so nothing can be compared yet."
        return
    for money in year.money:
        if money.what == "reserve":
            continue
        if not money.outings:
            yield f"{wording.capital(money.what)}: not known on both sides for any outing."
            continue
        yield (
            f"{wording.capital(money.what)}: planned {wording.money(money.planned)}, was "
            f"{wording.money(money.real)}{_more(money.real - money.planned)}, over "
            f"{wording.counted(money.outings, 'outing')}{_left_out(money.unknown)}."
        )
    for minutes in year.minutes:
        if minutes.mean_more is None:
            yield f"{wording.capital(minutes.what)}: nobody noted it."
            continue
        rounded = round(minutes.mean_more)
        told = "as planned" if not rounded else f"{_off(rounded, 'more', 'less')} than planned"
        if minutes.what == LEAVING:
            told = "on time" if not rounded else _off(rounded, "late", "early")
        name = "Leaving home" if minutes.what == LEAVING else wording.capital(minutes.what)
        over = wording.counted(minutes.outings, "outing")
        yield f"{name}: on average {told}, over {over}{_left_out(minutes.unknown)}."
    if year.crowd_outings:
        yield (
            f"Full houses: the plans' chances add up to {year.packed_expected:.1f}, the family called "
            f"{year.packed_seen} packed, over {wording.counted(year.crowd_outings, 'outing')}."
        )


def _left_out(unknown: tuple[str, ...]) -> str:
    return f"; not known for {wording.listed(unknown)}" if unknown else ""


def learned_sentence(figure: LearnedFigure) -> str:
    """An own figure beside the usual one, with its range and what it rests on."""
    digits = 2 if figure.unit not in ("min", "mpg", "L/100km", "kWh/100km") else 1
    if figure.unit == "min":
        digits = 0
    low, high = (f"{end:.{digits}f}" for end in (figure.likely.low, figure.likely.high))
    return (
        f"{wording.capital(figure.label)}: {figure.own:f} {figure.unit} {figure.told_by} (usually {low} to "
        f"{high}); without them {figure.usual:f} {figure.unit}."
    )

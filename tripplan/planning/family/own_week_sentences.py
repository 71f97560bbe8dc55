"""The family's own week as plain sentences, the same on screens and command line."""

from datetime import date

from tripplan.documents.calendars.family_days import LateEvening, WeeklyBlock, WorkingHours
from tripplan.documents.field_spec import asked
from tripplan.documents.model import DAY_NAMES
from tripplan.language import wording


def block_sentence(block: WeeklyBlock) -> str:
    """A fixed block, such as 'Piano: Tue, 16:00 to 17:00, every 2 weeks'."""
    return f"{block.name}: {_when(block)}."


def work_sentence(work: WorkingHours) -> str:
    """Working hours and what an outing does about them."""
    holidays = ", not on public holidays and local days off" if work.public_holidays_off else ""
    return f"{work.member} works {_when(work)}{holidays}: {asked(WorkingHours, 'then').words[work.then]}."


def late_sentence(late: LateEvening | None) -> str:
    """What a late evening does."""
    if late is None:
        return "No rule yet for late nights."
    then = (
        "the next day is not free"
        if late.not_before is None
        else f"nobody leaves before {late.not_before:%H:%M} the next day"
    )
    return f"After an evening that ends later than {late.after:%H:%M}, {then}."


def _when(block: WeeklyBlock | WorkingHours) -> str:
    days = wording.listed([DAY_NAMES[day] for day in block.days])
    parts = [f"{days}, {block.start:%H:%M} to {block.end:%H:%M}"]
    if block.every_weeks > 1:
        parts.append(f"every {block.every_weeks} weeks")
    parts += [f"{word} {wording.day(day)}" for word, day in _ends(block.first, block.last)]
    if block.not_during:
        breaks = [wording.days(span.first, span.last) for span in block.not_during]
        parts.append(f"not {'; '.join(breaks)}")
    return ", ".join(parts)


def _ends(first: date | None, last: date | None) -> list[tuple[str, date]]:
    return [(word, day) for word, day in (("from", first), ("until", last)) if day is not None]

"""What `tripplan day` tells beside the timeline: how likely it holds, and what it could be traded for."""

from tripplan.commands.output.console import Console
from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.day import beside_the_best, slack, trade_offs
from tripplan.planning.on_the_day.recovery_options import RevisedDay
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import naps_sentence


def say_replanned(found: RevisedDay, console: Console) -> None:
    """What can be done from here and now."""
    console.line(f"From {wording.clock(found.now)}:")
    for way in found.ways:
        console.line()
        console.line(way.title.text)
        if way.times_sentence:
            console.line(way.times_sentence, 2)
        if way.home_sentence:
            console.line(way.home_sentence, 2)
        console.line(f"Nap: {naps_sentence(way.naps)}", 2)
        console.line(way.money_sentence, 2)
        console.line(f"Cost plus hassle: {wording.whole_money(way.weighs)}", 2)
        for note in way.notes:
            console.line(note.text, 2)
    for title, reasons in found.impossible:
        console.line()
        console.line(f"{title}: not any more")
        for reason in reasons:
            console.line(reason.text, 2)
    console.listed("Please mind:", told(found.cautions))


def say_slack(outing: Outing, console: Console) -> None:
    """How likely the plan holds."""
    for sentence in told(slack(outing.question, outing.plan).chances):
        console.line(sentence)


def say_trade_offs(outing: Outing, console: Console) -> None:
    """Why the best plan is the best, what it could be traded for, and which limit costs most."""
    found = trade_offs(outing.question)
    for sentence in filter(None, (found.why, found.what_helps)):
        console.line(sentence.text)
    shown = beside_the_best(outing.question, found)
    if len(shown) < 2:
        console.line("No nap has to be traded for time at the place.")
        return
    console.line()
    console.table(
        ("load up", "home", "nap kept", "there", "weighs", "against the best plan"),
        [
            (
                wording.clock(point.plan.leave_home),
                wording.clock(point.plan.home),
                wording.minutes(point.kept_minutes),
                wording.minutes(point.stay_minutes),
                wording.money(point.plan.weighs),
                point.against_best.text,
            )
            for point in shown
        ],
    )

"""The options of `tripplan study`."""

from argparse import ArgumentParser, BooleanOptionalAction

from tripplan.commands.options.shared import PLANNING, Tasks, date_said, json_option

NONE = "none"
"""Said where a limit is to be no longer."""


def study_options(parser: ArgumentParser) -> None:
    """The tasks of `tripplan study`."""
    tasks = Tasks(parser, *PLANNING)
    json_option(tasks.add("list", "tell the study units and the places that fit"))
    programme = tasks.add("programme", "choose one outing a unit, together within the budget")
    json_option(programme)
    programme.add_argument(
        "--keep",
        action="store_true",
        help="put its outings on record as planned, still open, for the calendar",
    )
    add = tasks.add("add", "add a study unit, or change the one of this name; of it stays what is not named")
    add.add_argument("name", metavar="NAME", help="what the unit is called")
    add.add_argument("--topic", metavar="TOPIC", nargs="+", help="what is studied; a new unit needs it")
    for option, dest, end in (("--from", "from_day", "first"), ("--to", "to_day", "last")):
        add.add_argument(
            option, dest=dest, metavar="DATE", type=date_said, help=f"its {end} day; a new unit needs it"
        )
    add.add_argument(
        "--budget", metavar="AMOUNT", help=f"what its outing may cost at most; '{NONE}': no limit"
    )
    add.add_argument(
        "--also",
        metavar="PLACE",
        nargs="+",
        help=f"places that fit although their cards name no topic of it; '{NONE}': none",
    )
    remove = tasks.add("remove", "take a study unit off the records")
    remove.add_argument("name", metavar="NAME", help="what the unit is called")
    _limits(tasks.add("limits", "tell what a programme keeps to, or change it; what is not named stays"))
    fix = tasks.add("fix", "fix the place, the day or both of a unit's outing")
    _unit(fix)
    fix.add_argument("--place", dest="fixed_place", metavar="PLACE", help="where to")
    fix.add_argument("--on", dest="fixed_day", metavar="DATE", type=date_said, help="when")
    rule_out = tasks.add("rule-out", "say where a unit's outing does not go, or where not on some days")
    _unit(rule_out)
    rule_out.add_argument("without_place", metavar="PLACE", help="where not")
    rule_out.add_argument(
        "--on", dest="days", metavar="DATE", type=date_said, nargs="+", help="only not on these days"
    )
    free = tasks.add("free", "forget what is fixed and ruled out for a unit, and give it an outing again")
    _unit(free)


def _unit(parser: ArgumentParser) -> None:
    parser.add_argument("name", metavar="UNIT", help="what the unit is called")


def _limits(parser: ArgumentParser) -> None:
    json_option(parser)
    parser.add_argument(
        "--budget", metavar="AMOUNT", help=f"what all its outings may cost together; '{NONE}': no limit"
    )
    for option, end in (("--from", "first"), ("--to", "last")):
        told = f"the {end} day of the term; '{NONE}': as the units' weeks say"
        parser.add_argument(option, dest=f"{end}_day", metavar="DATE", help=told)
    for option, said in (
        ("--careful", "count the high end of every range against the budgets"),
        ("--two-a-week", "two outings may lie in one week"),
        ("--place-twice", "a place may be visited twice"),
    ):
        parser.add_argument(option, action=BooleanOptionalAction, help=said)
    parser.add_argument(
        "--least",
        choices=("felt", "money"),
        help="what is made as small as can be: felt (money and nuisances together) or money alone",
    )
    parser.add_argument(
        "--without",
        metavar="UNIT",
        nargs="+",
        help=f"units that have no outing this time; '{NONE}': all have one",
    )

"""`tripplan export`: all records in one file."""

from collections.abc import Mapping

from tripplan.commands.input.on_record import opened
from tripplan.commands.input.settings import settings_from
from tripplan.commands.options.files import ExportOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.writing import PRINTED, write_file
from tripplan.records.export import export_all
from tripplan.records.opening import Which


def run(options: ExportOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Write the file; 1 where one would be overwritten."""
    on_record = opened(options, settings_from(options, environment))
    records = on_record.records
    if not write_file(options.file, export_all(records), console, replace=options.replace):
        return 1
    aside = console.aside() if options.file == PRINTED else console
    whose = "the invented demo family's" if on_record.which is Which.DEMO else "your own"
    count = len(records.raw_documents())
    aside.line(f"{count} records written, {whose}. Names and birth dates are among them: keep the file safe.")
    return 0

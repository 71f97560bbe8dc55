"""The command line: `tripplan COMMAND`, or `python -m tripplan COMMAND`."""

import io
import os
import sys
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from importlib import import_module
from typing import TextIO

from tripplan.commands.output.console import Console, terminal_width
from tripplan.commands.parser import COMPLETION_VARIABLE, parse
from tripplan.errors import InputFaults, TripplanError
from tripplan.language.locales import SOURCE, speaking

NOT_TOLD = 1
BAD_INPUT = 2
_INTERRUPTED = 130


def main(
    argv: Sequence[str] | None = None,
    *,
    environment: Mapping[str, str] | None = None,
    stdout: TextIO | None = None,
    stderr: TextIO | None = None,
) -> int:
    """Carry out one command.

    Args:
        argv: the words after the program's name; the program's own when left out.
        environment: environment variables; the process's own when left out.
        stdout: for the answer; the process's own when left out.
        stderr: for faults; likewise.

    Returns:
        The exit status: 0 done, 1 the answer is no, 2 bad input.
    """
    out, err = _own(stdout, sys.stdout), _own(stderr, sys.stderr) or io.StringIO()
    if out is None:
        err.write("The answer could not be written: the standard output is closed\n")
        return NOT_TOLD
    try:
        with speaking(SOURCE):  # until a household says otherwise
            status = _run(
                sys.argv[1:] if argv is None else list(argv),
                os.environ if environment is None else environment,
                out,
                err,
            )
        out.flush()
    except BrokenPipeError:
        _forget_output(out)
        return NOT_TOLD
    except OSError as trouble:  # files and records have sentences of their own; this is the answer's way out
        _forget_output(out)
        with suppress(OSError):
            err.write(f"The answer could not be written: {trouble.strerror or trouble}\n")
            err.flush()
        return NOT_TOLD
    except KeyboardInterrupt:
        return _INTERRUPTED
    return status


def _run(argv: Sequence[str], environment: Mapping[str, str], out: TextIO, err: TextIO) -> int:
    asked = parse(argv, out, err, complete=COMPLETION_VARIABLE in environment)
    if isinstance(asked, int):
        return asked
    # Only now, so that help comes at once: a command loads the planning.
    run: Callable[..., int] = import_module(f"tripplan.commands.{asked.module}").run
    console = Console(out, err, terminal_width(environment))
    try:
        if asked.task:
            return run(asked.task, asked.options, console, environment)
        return run(asked.options, console, environment)
    except InputFaults as faults:
        for finding in faults.findings:
            console.remark(str(finding))
    except TripplanError as trouble:
        console.remark(str(trouble))
    return BAD_INPUT


def _own(given: TextIO | None, process: TextIO | None) -> TextIO | None:
    """The stream that is given, else the process's; None where that was closed, such as by `>&-`."""
    if given is not None:
        return given
    if isinstance(process, io.TextIOWrapper):
        # A terminal that cannot show a character shows a stand-in for it.
        process.reconfigure(errors="replace")
    return process


def _forget_output(out: TextIO) -> None:
    """Nobody takes the answer any more; what is left of it must not fail again at the program's end."""
    if out is sys.stdout:
        os.dup2(os.open(os.devnull, os.O_WRONLY), out.fileno())


if __name__ == "__main__":
    sys.exit(main())

"""`tripplan read`: prices and hours out of a text, or out of a web page that was saved."""

import sys
from collections.abc import Mapping

from tripplan.commands.answers.reading import ReadAnswer
from tripplan.commands.options.files import ReadOptions
from tripplan.commands.output.console import Console
from tripplan.documents.places.offer_sentences import add_on_sentence, sentence
from tripplan.errors import Finding, InputFaults
from tripplan.reading.board import LONGEST, read_board
from tripplan.reading.saved_page import LARGEST, is_page, read_page
from tripplan.regular_file import open_regular, path_from


def run(options: ReadOptions, console: Console, environment: Mapping[str, str]) -> int:  # noqa: ARG001
    """Tell what was read and what was not; 1 where nothing was."""
    content = _content(options.file)
    country = options.country.upper() if options.country else None
    if is_page(content):
        try:
            page = read_page(content, country)
        except ValueError as unreadable:
            raise InputFaults((Finding(options.file, "", "", str(unreadable)),)) from unreadable
        where = (page.street, page.town, " ".join(filter(None, (page.subdivision, page.postal_code))))
        answer = ReadAnswer(page.board, page.name, ", ".join(filter(None, where)), page.telephone, page.web)
    else:
        answer = ReadAnswer(read_board(content.decode("utf-8", errors="replace"), country))
    if options.json:
        console.json(answer)
    else:
        _say(answer, console)
    return 0 if answer.board.offers or answer.board.opening_hours else 1


def _content(file: str) -> bytes:
    """The file, or standard input for a dash, up to one byte more than can be read.

    Raises:
        InputFaults: it cannot be opened, or is larger than a page may be.
    """
    try:
        if file == "-":
            content = sys.stdin.buffer.read(LARGEST + 1)
        else:
            with open_regular(path_from(file)) as opened:
                content = opened.read(LARGEST + 1)
    except OSError as trouble:
        raise InputFaults((Finding(file, "", "", trouble.strerror or str(trouble)),)) from trouble
    if len(content) > LARGEST:
        message = f"a text may have {LONGEST} characters and a page {LARGEST // 1024 // 1024} MB"
        raise InputFaults((Finding(file, "", "", message),))
    return content


def _say(answer: ReadAnswer, console: Console) -> None:
    board = answer.board
    for told in (answer.name, answer.address, answer.telephone, answer.web):
        if told:
            console.line(told)
    currency = board.currency or "USD"
    for read in board.offers:
        console.line(sentence(read.offer, currency))
        console.line(f"from: {read.words}", 2)
    for beside in board.add_ons:
        console.line(add_on_sentence(beside.add_on, currency))
        console.line(f"from: {beside.words}", 2)
    for label, value in (
        ("Open", board.opening_hours),
        ("Last entry", board.last_entry),
        ("Last entry before closing, in minutes", board.last_entry_minutes_before_close),
        ("Parking", board.parking),
    ):
        if value not in (None, ""):
            console.line(f"{label}: {value}")
    for heading, lines in (("Please check:", board.doubts), ("Not understood:", board.not_understood)):
        if lines:
            console.line(heading)
        for line in lines:
            console.line(line, 2)

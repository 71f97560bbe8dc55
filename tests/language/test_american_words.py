"""Words that an American parent does not read, wherever a text of the program is written down."""

import ast
import re
from collections.abc import Iterator

from tripplan.language.locales import Locale
from tripplan.language.messages import FOLDER, catalogue

PACKAGE = FOLDER.parent
BANNED = re.compile(
    r"\b(pushchairs?|napp(y|ies)|changing mat|comforter|rubbish|sun cream|nuisances?|felt cost|the till|"
    r"nine times in ten|telephones?|grown-ups?|whom to ring|kilometres?|litres?|colours?|pupils?|take back|"
    r"must be given|things? to put right)\b",
    re.IGNORECASE,
)
"""British words, and those of the code and of mathematics."""
CODE = re.compile(r"[\w.:/{}=\-]*")
"""A string without a space is a key, a value of a file or a path; what it is called stands beside it."""
READS = ("reading/", "nearby/kinds.py", "files/calendars/", "commands/answers/")
"""Where texts of others are understood, whose words these are, and where keys of JSON are listed."""
NOT_AMERICAN = re.compile(r"\b(strollers?|diapers?|sunscreen|students|backward)\b")


def texts(source: str, *, docs: bool) -> Iterator[str]:
    """The texts in a file, formatted ones in their parts; docstrings where they are shown to somebody."""
    tree = ast.parse(source)
    statements = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and (docs or id(node) not in statements)
        ):
            yield node.value


def test_an_american_parent_reads_american_words() -> None:
    """On pages and sheets, in commands and faults, in descriptions of fields, messages and the guide."""
    for path in PACKAGE.rglob("*.py"):
        where = path.relative_to(PACKAGE).as_posix()
        if where.startswith(READS):
            continue
        for text in texts(path.read_text(encoding="utf-8"), docs=where.startswith("documents/")):
            found = None if CODE.fullmatch(text) else BANNED.search(text)
            assert not found, f"{where} says {found[0]!r}: {text[:60]}"
    for path in (*(FOLDER / Locale.EN_US).glob("*.ftl"), *(PACKAGE / "guide").glob("*.md")):
        found = BANNED.search(re.sub(r"`[^`]*`", "", path.read_text(encoding="utf-8")))
        assert not found, f"{path.name} says {found[0]!r}"


def test_a_british_parent_reads_british_words() -> None:
    """Where a message says a word that differs, it says it by its term, or has a sentence of its own."""
    for name, source in catalogue(Locale.EN_GB).entries.items():
        words = re.sub(r"\{[^}]*\}", "", source.partition("=")[2])
        assert not NOT_AMERICAN.search(words), f"{name} says {words}"

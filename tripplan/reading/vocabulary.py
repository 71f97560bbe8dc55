"""The words venues use, in English and German, and text made plain for reading."""

import re
import unicodedata
from collections.abc import Callable, Mapping, Sequence
from typing import Literal, TypeVar

Person = Literal[
    "anyone", "adult", "child", "youth", "infant", "preschool", "senior", "student", "reduced", "member",
    "military", "teacher", "car", "motorcycle", "group",
]  # fmt: skip

_PERSON_WORDS: tuple[tuple[Person, str], ...] = (
    ("infant", r"infants?|bab(?:y|ies)|babes? in arms|babies in arms|toddlers?|lap child(?:ren)?|tots?|säuglinge?|kleinkinder?|babys"),
    ("preschool", r"pre-?school(?:er)?s?|vorschulkinder?"),
    ("motorcycle", r"motor(?:cycle|bike)s?|motorräder|motorrad"),
    ("car", r"(?:private |passenger |personal )?(?:vehicles?|cars?|automobiles?|carloads?)|(?:pkw|autos?|fahrzeuge?)"),
    ("teacher", r"(?:school )?(?:teachers?|chaperones?|educators?|aides?|staff|leaders?)|lehrer(?:innen)?|begleitpersonen|betreuer"),
    ("military", r"(?:active[- ](?:duty )?)?(?:military|veterans?|service ?members?)(?: personnel)?|soldaten"),
    ("member", r"members?|mitglieder"),
    ("senior", r"senior(?: citizen)?s?|seniors?|pensioners?|oaps?|over[- ]?60s|elders?|seniorinnen(?: und senioren)?|senior(?:en|innen)|rentner(?:innen)?"),
    ("student", r"(?:college |full[- ]time |university )?students?|pupils?|studenten|studierende|studentinnen|schüler(?:innen)?|schülerinnen und schüler|auszubildende|azubis"),
    ("youth", r"youths?|teen(?:ager)?s?|juniors?|young people|jugendliche[rn]?"),
    ("reduced", r"erm(?=\.)|concessions?|concs?|reduced|discounted tickets?|ermäßigte?[rsn]?(?: tickets?| karten?)?|ermäßigung(?:sberechtigte)?|reduziert"),
    ("child", r"child(?:ren)?|kids?|kind(?:er)?|siblings?"),
    ("adult", r"adults?(?: chaperones?)?|grown[- ]?ups?|erwachsene[rn]?|erw\.?"),
    ("anyone", r"all others?|everyone else|anyone else|everybody else|persons?|people|visitors?|guests?|individuals?|everyone|everybody|anyone|all ages|each|general admission|"
               r"per head|person(?:en)?|pers\.?|besucher(?:innen)?|alle|paying visitors?|pp|p\. ?p\.?"),
)  # fmt: skip

PERSON = re.compile(
    "|".join(rf"(?P<{person}>\b(?:{words})(?!\w))" for person, words in _PERSON_WORDS), re.IGNORECASE
)
"""One word for a kind of visitor; the name of the group that matched is the kind."""

_NUMBER_NAMES = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen twenty"
).split()
_NUMBER_NAMES_GERMAN = "null eins zwei drei vier fünf sechs sieben acht neun zehn elf zwölf".split()
NUMBER_WORDS = {name: value for value, name in enumerate(_NUMBER_NAMES)} | {
    name: value for value, name in enumerate(_NUMBER_NAMES_GERMAN)
}
"""Small numbers written out; `one` and its like count people as well as years."""

NUMBER = r"(?:\d{1,3}(?!\d)|" + "|".join(sorted(NUMBER_WORDS, key=len, reverse=True)) + ")"
"""A whole number in digits or written out, as a piece of a pattern."""

_DASHES = dict.fromkeys(map(ord, "‐‑‒–—―−"), "-")
_QUOTES = dict.fromkeys(map(ord, "‘’‚′"), "'") | dict.fromkeys(map(ord, "“”„″"), '"')
_SPACES = dict.fromkeys(map(ord, "\u00a0\u2007\u2009\u202f\t"), " ")
_NAMED_GROUP = re.compile(r"\(\?P<\w+>")
_BLANKS = re.compile(r"\s{2,}")
_DOTTED_LINE = re.compile(r"(?:\.[ .]*){3,}|(?<=\s)\.{2,}(?=\s)|\u2026|_{3,}")
"""Leads the eye from a name to its price."""
_BULLETS = dict.fromkeys(map(ord, "•·▪◦●*►"), " ")


def number_from(text: str) -> int:
    """The value of a whole number in digits or written out.

    Raises:
        KeyError: it is neither.
    """
    return int(text) if text.isdigit() else NUMBER_WORDS[text.casefold()]


def first_look(patterns: Mapping[str, Sequence[re.Pattern[str]]]) -> re.Pattern[str]:
    """One pattern that tells at which place of a text something may begin, and what, by the name of its group.

    It looks at `small_letters` only: with no other case to think of, one letter tells most forms apart at once.
    What it does not find, none of the patterns finds, so that most of a text is looked at once and not by each.

    Args:
        patterns: by what they find, in the order in which they are tried; written in small letters.
    """
    forms = (
        f"(?P<{name}>{'|'.join(re.sub(_NAMED_GROUP, '(?:', form.pattern) for form in several)})"
        for name, several in patterns.items()
    )
    return re.compile("|".join(forms))


def small_letters(text: str) -> str:
    """The same text in small letters, letter by letter, as far as that changes no place in it."""
    small = text.lower()
    if len(small) == len(text):
        return small
    return "".join(letter if len(letter.lower()) > 1 else letter.lower() for letter in text)


def plain_text(text: str) -> str:
    """The same text letter by letter, but with one kind of dash, quote and space and without invisible marks.

    Every character stays one character or vanishes where it cannot be seen, so that lines stay lines. Spaces in a
    row and empty lines become one, as they say no more and would be looked at again and again.
    """
    seen = "".join(
        character
        for character in unicodedata.normalize("NFC", text.replace("\r\n", "\n").replace("\r", "\n"))
        if character == "\n" or unicodedata.category(character) not in ("Cc", "Cf") or character == "\t"
    )
    return _BLANKS.sub(
        lambda blanks: "\n" if "\n" in blanks[0] else " ",
        _DOTTED_LINE.sub(" ", seen.translate(_DASHES | _QUOTES | _SPACES | _BULLETS)),
    )


_NEXT_SENTENCE = re.compile(r"(?<=[a-zäöüß\d)€][.!])\s+(?=[A-ZÄÖÜ])")


Read = TypeVar("Read")


def parted(text: str, read: Callable[[str], Read | None]) -> tuple[tuple[Read, ...], str]:
    """What is read sentence by sentence; and all the rest of a text, line by line.

    Args:
        text: as `plain_text` leaves it.
        read: reads a sentence, or leaves it by answering None.
    """
    found: list[Read] = []
    lines: list[str] = []
    for line in text.splitlines():
        said = [(one, read(one)) for one in _NEXT_SENTENCE.split(line)]
        found += [one for _, one in said if one is not None]
        lines.append(" ".join(words for words, one in said if one is None))
    return tuple(found), "\n".join(lines)

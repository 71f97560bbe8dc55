"""What is wrong with something typed in: what a field needs, in words that a parent would use."""

import re

_ON_SCREEN = tuple(
    (re.compile(in_file), said)
    for in_file, said in (
        (r"is needed(?:: .*)?", "please fill this in"),
        (r"must not be empty", "please fill this in"),
        (r"must be a whole number", "this is a whole number, such as 3"),
        (r"must be a number(?:, .*)?", "this is a number, such as 22 or 3.09"),
        (r"must be a date such as \d{4}-\d\d-\d\d", "this is a date, such as 3/14/2026"),
        (r"must be a date from (\S+) to (\S+)", r"this is a date from \1 to \2"),
        (r"must not be negative", "this cannot be less than 0"),
        (r"must be more than (\S+)", r"use a number above \1"),
        (r"must be less than (\S+)", r"use a number below \1"),
        (r"must be (\S+) or more", r"use \1 or more"),
        (r"must be (\S+) or less", r"use \1 or less"),
        (r"must be (\S+ or earlier)", r"use \1"),
        (r"must have no more than (\d+) characters", r"make it shorter: \1 characters at most"),
        (r"must have no more than (\d+) entries", r"leave some out: \1 at most"),
        (r"needs (\d+) or more entries", r"add more: at least \1"),
        (r"must be ('.*)", r"choose one of these: \1"),
        (r"does not have the right form(?:: .*)?", "this does not read right; see the example beside it"),
        (r"a price is a number such as 12\.50(?:, .*)?", "a price reads like 14, $14, 14.50 or free"),
        (
            r"a birth date reads like .*",
            "a birth date reads like 5/14/1988, May 14 1988 or March 1986; an age such as 8 will do too",
        ),
        (r"a time of day reads like 12:30, without a zone", "a time reads like 12:30, 9am or noon"),
        (r"a currency is an ISO 4217 code .*", "a currency is three letters, such as USD"),
        (r"more than ('.*)", r"this is more than \1"),
        (r"an age band ends at or after .*", "the first age is above the second; write 3-12"),
        (r"an age band reads like .*", "ages read like 3-12, 65+, under 2, 6-23 months or any"),
        (r"a height reads like .*", "write the height with its unit, such as 46 in, 3 ft 10 or 117 cm"),
        (r"opening hours read like .*", "hours read like Tu-Su 10:00-17:00; PH off"),
        (r"(\S+) is paid with at most (\d+) digits .*", r"\1 has at most \2 digits after the point"),
    )
)
"""What the checks of a file say, and how the screen says it."""


def on_screen(message: str) -> str:
    """A fault in the words of the screen.

    Args:
        message: as the checks of a file say it, without its subject.
    """
    for in_file, said in _ON_SCREEN:
        match = in_file.fullmatch(message)
        if match:
            return match.expand(said)
    return message

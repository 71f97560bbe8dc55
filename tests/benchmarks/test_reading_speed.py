"""How long a pasted text takes to read, as a ratio within one run, whatever stands in it."""

from collections.abc import Callable

from tests.benchmarks.timing import again
from tripplan.reading.board import read_board

LENGTH = 5_000
"""As long as the longest price boards [characters]."""
BOARD = (
    "Adults $14, seniors (65+) $12, children 3-12 $9, under 3 free, family of up to 6 $45, parking $6.\n"
    "Tue-Sat 10-5, Sun noon-5, closed Mondays, Thanksgiving and Dec 25; April to October only; "
    "last entry 4:15\n"
)
SLOW = (
    "1.", "1-", "10-5", "|", "; ", "each ", "on the ",
    "all ", "mon. ", "24. ", "one adult per 5 ", "5" + " " * 300,
    "1,111,", "-10-5", "25% off, a 5 ", "group of 9 $5 ", "family ", "save $1 online kids $9\n",
    "each 5 kids ", "Jan ",
)  # fmt: skip
"""What matches a rule by its beginning and not to its end, again and again; found by trying."""


def test_no_text_takes_much_longer_than_a_price_board(tell: Callable[[str], None]) -> None:
    """The slowest takes at most three times what a real board of the same length takes."""

    def least(text: str) -> float:
        text = (text * LENGTH)[:LENGTH]
        return min(again(lambda: read_board(text, "US"))[0] for _ in range(3))

    board = least(BOARD)
    slowest, what = max((least(text), text) for text in SLOW)
    tell(f"a board: {1000 * board:.0f} ms; the slowest: {slowest / board:.2f} times, {what!r}")
    assert slowest < 3 * board

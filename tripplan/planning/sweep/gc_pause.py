"""Python's collector of reference cycles during a sweep."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def gc_paused() -> Iterator[None]:
    """Put the collector off meanwhile: it looks through all objects of the program again and again, in vain.

    A sweep makes objects by the hundred thousand and no cycle; what nothing refers to is freed at once.
    """
    on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if on:
            gc.enable()

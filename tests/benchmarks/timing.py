"""Timing within one run: what was worked out before is forgotten, unless remembering is what is measured."""

import functools
import gc
import sys
import time
from collections.abc import Callable
from statistics import median
from typing import TypeVar

from tripplan.planning.holidays import schools

Answer = TypeVar("Answer")


def forget() -> None:
    """Empty every cache that the program keeps between calls."""
    kept = {
        id(value): value
        for name, module in list(sys.modules.items())
        if name.partition(".")[0] == "tripplan"
        for value in vars(module).values()
        if isinstance(value, functools._lru_cache_wrapper)
    }
    assert kept, "the program keeps nothing between calls, or this looks in the wrong place"
    for cache in kept.values():
        cache.cache_clear()
    schools._stacks.clear()  # kept by identity, and so by no cache of functools


def again(work: Callable[[], Answer]) -> tuple[float, Answer]:
    """How long one run takes with all that is remembered [s], and what it answers.

    Without the garbage collector, as in `timeit`: how long that takes goes by what else is in memory.
    """
    gc.disable()
    try:
        began = time.perf_counter()
        answer = work()
        return time.perf_counter() - began, answer
    finally:
        gc.enable()


def timed(work: Callable[[], Answer]) -> tuple[float, Answer]:
    """How long one run takes from nothing [s], and what it answers."""
    forget()
    return again(work)


def in_turns(rounds: int, *works: Callable[[], object]) -> list[float]:
    """The median time of each from nothing, timed in turns, so that a slow while is slow for all [s]."""
    return [
        median(times)
        for times in zip(*([timed(work)[0] for work in works] for _ in range(rounds)), strict=True)
    ]

"""One figure of the bench, as it is printed."""

from collections.abc import Callable
from time import perf_counter


def at_most(name: str, value: float, aim: float, unit: str = "") -> bool:
    """A figure that should not be larger than its aim; whether it is not."""
    return _say(name, value, aim, unit, value <= aim, value / aim)


def at_least(name: str, value: float, aim: float, unit: str = "") -> bool:
    """A figure that should not be smaller than its aim; whether it is not."""
    return _say(name, value, aim, unit, value >= aim, aim / value)


def _say(name: str, value: float, aim: float, unit: str, reached: bool, by: float) -> bool:
    told = "ok" if reached else "missed"
    beyond = "" if reached else f" (by a factor of {by:.2f})"
    print(f"bench {name} {value:.3g}{unit} aim {aim:g}{unit} {told}{beyond}", flush=True)
    return reached


def seconds(do: Callable[[], object], times: int = 1) -> float:
    """How long something takes: the shortest of several times, which other work disturbs least."""
    taken = []
    for _ in range(times):
        start = perf_counter()
        do()
        taken.append(perf_counter() - start)
    return min(taken)

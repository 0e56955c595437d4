"""What the bench watches is there: a stage whose functions have moved would stop it."""

from tests.bench.stages import Stages


def test_every_function_the_bench_watches_is_there() -> None:
    with Stages().watched():
        pass

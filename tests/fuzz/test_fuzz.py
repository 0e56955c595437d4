"""A short part of `make fuzz`, always the same: spoilt inputs get a message, and no traceback."""

import random
from pathlib import Path

import pytest

from tests.fuzz.kinds import TARGETS
from tests.fuzz.mutation import JSON_VALUES, spoilt, spoilt_json
from tests.fuzz.worker import attempt

COUNTS = {"templates": 12, "guide": 20, "layouts": 40, "records": 15, "sets": 20, "lines": 20}


@pytest.mark.parametrize("kind", TARGETS)
def test_spoilt_inputs_are_refused_with_a_message(kind: str) -> None:
    ends = [(number, *attempt(kind, "test", number)) for number in range(COUNTS.get(kind, 100))]
    assert [end for end in ends if end[1] not in ("ok", "refused")] == []
    assert any(end[1] == "refused" for end in ends)


@pytest.mark.parametrize("kind", TARGETS)
def test_good_inputs_are_taken(kind: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    target = TARGETS[kind]
    assert target.run(random.Random(0).choice(target.good()), tmp_path) == ""


def test_a_seed_spoils_the_same_way_every_time() -> None:
    for change in (spoilt, spoilt_json):
        content = b'{"a": [1, 2, {"b": "c"}]}'
        first, again = (change(content, random.Random("seed")) for _ in range(2))
        assert first == again


def test_what_an_input_is_spoilt_with_stays_as_it_is() -> None:
    """Otherwise an input would depend on those before it, and could hold itself."""
    before = repr(JSON_VALUES)
    for number in range(1000):
        spoilt_json(b'{"a": [[1], {"b": [2, {}]}]}', random.Random(number))
    assert repr(JSON_VALUES) == before

"""Every example of the authoring guide is read, with the head, quantities and points it gives."""

import json
import re
import tomllib
from collections.abc import Iterator, Sequence
from copy import deepcopy
from itertools import cycle
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from probgen.bank.element import READERS
from probgen.bank.reading import read_template
from probgen.draws.draw import draw
from probgen.draws.requirement import stacked
from probgen.input.fault import Fault, InputError
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve

GUIDE = Path(__file__).parents[2] / "templates" / "README.md"
BLOCKS = re.findall(r"^```toml\n(.*?)^```", GUIDE.read_text(encoding="utf-8"), re.M | re.S)
FIRST = BLOCKS[:3]
SOMETHING_ASKED = '[[find]]\nvalue = "L"\nsymbol = "y"\nname = "a length"\nunit = "m"\n'


def completed(block: str) -> str:
    """The block after those of the first three that it does not write anew."""
    own = tomllib.loads(block).keys()
    before = [each for each in FIRST if not own & tomllib.loads(each).keys()]
    after = [] if "find" in own else [SOMETHING_ASKED]
    parts = re.match(r"((?:[^\[\n].*\n|\n)*)((?s:.*))", block)
    assert parts is not None
    top, tables = parts.groups()
    return "\n".join([top, *before, tables, *after])  # a key such as pivot comes before any table


@pytest.mark.parametrize("block", BLOCKS[2:], ids=lambda block: block.split("\n", 1)[0])
def test_every_example_reads(block: str) -> None:
    template = read_template(completed(block), "guide.toml")
    written = sum(len(tomllib.loads(block).get(kind, [])) for kind in READERS)
    assert len({element.id for element in template.system.elements}) >= written


@pytest.mark.parametrize(
    "block", [each for each in BLOCKS if "[[find]]" in each], ids=lambda block: block[:16]
)
def test_every_problem_of_the_guide_is_worked_and_proved(block: str) -> None:
    template = read_template(completed(block), "guide.toml")
    values = stacked([draw(template, "guide", str(number)) for number in range(4)])
    values["g"] = np.full(4, 9.8)
    plan = find_plan(template.system, values)
    assert prove(plan, solve(plan, values)).holds.all()


def test_every_kind_of_entry_has_an_example() -> None:
    shown = {key for block in BLOCKS for key in tomllib.loads(block)}
    others = {"condition", "share", "limit", "require", "find", "unknown", "picture"}
    assert shown >= {*READERS, *others}


ODD: tuple[object, ...] = (
    7, "zz", "", [], {}, True, ["A"], {"from": "up"}, -1e9, "L", [["x"]], [{}], None
)  # fmt: skip


def places(value: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """The path of every value within one."""
    inner = value.items() if isinstance(value, dict) else enumerate(value)
    for key, each in inner:
        yield (*path, key)
        if isinstance(each, dict | list):
            yield from places(each, (*path, key))


def spoilt(content: dict[str, Any], path: tuple[Any, ...], odd: object) -> str:
    """The content with one value replaced; None takes it away."""
    content = deepcopy(content)
    holder = content
    for key in path[:-1]:
        holder = holder[key]
    if odd is None:
        del holder[path[-1]]
    else:
        holder[path[-1]] = odd
    return "\n".join(f"{key} = {written(value)}" for key, value in content.items())


def written(value: object) -> str:
    """A value as TOML writes it, on one line."""
    if isinstance(value, dict):
        pairs = (f"{json.dumps(key)} = {written(each)}" for key, each in value.items())
        return f"{{ {', '.join(pairs)} }}"
    if isinstance(value, list):
        return f"[{', '.join(map(written, value))}]"
    return json.dumps(value)


def faults_of(text: str) -> Sequence[Fault]:
    try:
        read_template(text, "guide.toml")
    except InputError as error:
        return error.faults
    return ()


@pytest.mark.parametrize("block", BLOCKS[2:], ids=lambda block: block.split("\n", 1)[0])
def test_whatever_is_written_instead_is_read_or_refused(block: str) -> None:
    content, own = tomllib.loads(completed(block)), tomllib.loads(block)
    tried = [
        faults_of(spoilt(content, path, odd))
        for path, odd in zip(places(content), cycle(ODD), strict=False)
        if path[0] in own
    ]
    assert any(tried)
    assert all(fault.expected for faults in tried for fault in faults)

"""Every example of the authoring guide is read, with the head, quantities and points it gives."""

import re
import tomllib
from pathlib import Path

import pytest

from probgen.bank.element import READERS
from probgen.bank.reading import read_template

GUIDE = Path(__file__).parents[2] / "templates" / "README.md"
BLOCKS = re.findall(r"^```toml\n(.*?)^```", GUIDE.read_text(encoding="utf-8"), re.M | re.S)
FIRST = BLOCKS[:3]
SOMETHING_ASKED = '[[find]]\nquantity = "x"\n'


def completed(block):
    """The block after those of the first three that it does not write anew."""
    own = tomllib.loads(block).keys()
    before = [each for each in FIRST if not own & tomllib.loads(each).keys()]
    after = [] if "find" in own else [SOMETHING_ASKED]
    top, tables = re.match(r"((?:[^\[\n].*\n|\n)*)((?s:.*))", block).groups()
    return "\n".join([top, *before, tables, *after])  # a key such as pivot comes before any table


@pytest.mark.parametrize("block", BLOCKS[2:], ids=lambda block: block.split("\n", 1)[0])
def test_every_example_reads(block):
    template = read_template(completed(block), "guide.toml")
    written = sum(len(tomllib.loads(block).get(kind, [])) for kind in READERS)
    assert len({element.id for element in template.system.elements}) >= written


def test_every_kind_of_entry_has_an_example():
    shown = {key for block in BLOCKS for key in tomllib.loads(block)}
    assert shown >= {*READERS, "condition", "share", "limit", "require", "find", "unknown"}

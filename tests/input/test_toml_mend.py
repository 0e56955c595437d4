"""Each slip in a TOML file gets the mend of that slip, and the mended line is TOML."""

import tomllib

import pytest

from probgen.input.fault import InputError
from probgen.input.toml import parse_toml

SLIPS = {
    "smart quotes": ("a = 1\nb = “x”", 2, 'type straight quotation marks: b = "x"'),
    "smart quotes of other countries": ("b = „x“", 1, 'b = "x"'),
    "decimal comma": ("gravity = 9,81", 1, "write a decimal point: gravity = 9.81"),
    "decimal comma with a remark": ("g = 9,81  # m/s^2", 1, "g = 9.81"),
    "an American date": ("due = 10/16/2026", 1, "write due = 2026-10-16"),
    "a German date": ("due = 16.10.2026", 1, "write due = 2026-10-16"),
    "a date without zeros": ("due = 2026-3-9", 1, "write due = 2026-03-09"),
    "the last day of a year": ("due = 31.12.2026", 1, "write due = 2026-12-31"),
    "the year first": ("due = 2026/3/1", 1, "write due = 2026-03-01"),
    "a year of two digits first": ("due = 32/12/31", 1, "year, month and day"),
    "a short year": ("due = 16.10.26", 1, "year, month and day"),
    "a doubtful day in December": ("due = 12/12/2026", 1, "year, month and day"),
    "two days and no month": ("due = 13/14/2026", 1, "year, month and day"),
    "no month at all": ("due = 2026-0-9", 1, "a day that there is"),
    "no day at all": ("due = 2026-1-0", 1, "a day that there is"),
    "one day more": ("due = 2026-1-32", 1, "a day that there is"),
    "a doubtful date": ("due = 3/9/2026", 1, "year, month and day"),
    "no such day": ("due = 2026-02-31", 1, "a day that there is"),
    "no such month": ("due = 2026-13-01", 1, "a day that there is"),
    "a path": (r'b = "C:\users\x.csv"', 1, 'write / in paths: b = "C:/users/x.csv"'),
    "a key twice": ("b = 1\na = 2\nb = 2", 3, "line 1 has it already: remove one of them"),
    "a table twice": ("[b]\nc = 1\n[b]", 3, "line 1 has it already: remove one of them"),
    "no quotes": ("b = Mechanics I", 1, 'put words between quotes: b = "Mechanics I"'),
    "an open quote": ('b = "x\nc = 1', 1, 'close the quotation mark: b = "x"'),
    "an open single quote": ("b = 'x\nc = 1", 1, "close the quotation mark: b = 'x'"),
    "an open single quote far up": ("b = 'x\nc = 1\n\nd = 2", 1, "close the quotation mark"),
    "an open text": ('a = 1\nb = """x\nc = 1', 2, "close the quotation mark"),
    "a unit": ("b = 1.2 m", 1, 'between quotes: b = "1.2 m"'),
    "a percentage": ("b = 2%", 1, 'between quotes: b = "2%"'),
    "True": ("b = True", 1, "write b = true"),
    "no": ("b = no", 1, "write b = false"),
    "a semicolon": ('b = "x";', 1, 'take the ; at the end away: b = "x"'),
    "a comma": ("b = 1,", 1, "take the , at the end away: b = 1"),
    "a colon": ("b: 1", 1, "write = between a field and its value: b = 1"),
    "a bracket short": ("[[problem]\na = 1", 1, "write [[problem]]"),
    "no bracket": ("[method\na = 1", 1, "write [method]"),
    "the end": ("a = 1\nb = [1,\n\n", 2, "close the list with ]"),
}


@pytest.mark.parametrize(("text", "line", "mend"), SLIPS.values(), ids=SLIPS)
def test_a_slip_has_its_mend(text: str, line: int, mend: str) -> None:
    with pytest.raises(InputError) as caught:
        parse_toml(text, "a.toml")
    (fault,) = caught.value.faults
    assert (fault.field, fault.found) == (f"line {line}", text.split("\n")[line - 1].strip())
    assert mend in fault.mend


@pytest.mark.parametrize(("text", "line", "mend"), SLIPS.values(), ids=SLIPS)
def test_what_is_advised_is_toml(text: str, line: int, mend: str) -> None:
    advised = mend.removeprefix("write ").rpartition(": ")[2]
    if " = " in advised or advised.startswith("["):
        tomllib.loads(advised)

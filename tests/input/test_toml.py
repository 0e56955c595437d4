"""TOML: what a bound is for, and the mend each common mistake gets."""

from decimal import Decimal
from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.input.toml import LONGEST_TEXT, parse_toml, read_toml


def test_decimals_keep_their_digits() -> None:
    content = parse_toml("a = 1.20\nb = 3\nc = 1_0.5e3", "a.toml")
    assert content == {"a": Decimal("1.20"), "b": 3, "c": Decimal("10.5e3")}
    assert str(content["a"]) == "1.20"


BEYOND = {
    "huge exponent": ("[a]\nb = [1, 1e999999]", "a.b[1]", "1e999999"),
    "huge exponent of its own": (f"b = 1e{'9' * 30}", "b", "999"),
    "tiny": ("b = 1e-50", "b", "1e-50"),
    "not a number": ("b = nan", "b", "ordinary size"),
    "infinite": ("b = -inf", "b", "-inf"),
    "many digits": (f"b = 0.{'1' * 100}", "b", "40 characters"),
    "a long whole number": (f"b = {'1' * 50}", "b", "whole number"),
    "more digits than are read": (f"a = 1\nb = {'1' * 5000}", "line 2", "40 digits"),
    "a hexadecimal bomb": (f"b = 0x{'f' * 999}", "b", "whole number"),
    "lists in lists": (f"b = {'[' * 5000}{']' * 5000}", "", "nested too deeply"),
    "a few lists too many": (f"b = {'[' * 20}{']' * 20}", "b" + "[0]" * 12, "nested too deeply"),
    "tables in tables": ("b = " + "{a = " * 5000 + "1" + "}" * 5000, "", "nested too deeply"),
    "a key of many parts": (f"{'a.' * 40_000}a = 1", "line 1", "key"),
    "a quoted key of many parts": ('"a" . ' * 9_000 + "a = 1", "line 1", "key"),
    "a long file": (f"# {'x' * LONGEST_TEXT}", "", "characters"),
    "NUL": (r'b = "a\u0000"', "b", r"control character, \x00"),
    "the escape of a terminal": (r'b = "\u001b[2J"', "b", r"control character, \x1b"),
    "a control character in a remark": ("a = 1\n# caf\x82 \nb = 2", "line 2", r"\x82"),
    "NUL in a key": (r'"b\u0000" = 1', "", r"control character, \x00"),
}


@pytest.mark.parametrize(("text", "field", "words"), BEYOND.values(), ids=BEYOND)
def test_what_is_beyond_a_bound_is_one_clear_fault(text: str, field: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        parse_toml(text, "a.toml")
    (fault,) = caught.value.faults
    assert (fault.file, fault.field) == ("a.toml", field)
    assert words in str(fault)
    assert "Decimal" not in str(fault)
    assert len(str(fault)) < 400


@pytest.mark.parametrize(
    ("most", "more"),
    [("1." + "0" * 38, "1." + "0" * 39), ("1e40", "1e41"), ("1e-40", "1e-41")],
)
def test_a_number_may_be_as_long_and_as_large_as_is_told(most: str, more: str) -> None:
    assert parse_toml(f"a = {most}", "a.toml") == {"a": Decimal(most)}
    with pytest.raises(InputError):
        parse_toml(f"a = {more}", "a.toml")


def test_a_mistake_shows_its_line_and_a_mend() -> None:
    with pytest.raises(InputError) as caught:
        parse_toml("a = 1\n\n[method]\n[method]\n", "a.toml")
    (fault,) = caught.value.faults
    assert (fault.field, fault.found) == ("line 4", "[method]")
    assert fault.expected == "a TOML file: cannot declare method twice"
    assert fault.mend == "line 3 has it already: remove one of them"


def test_every_number_beyond_bounds_is_told() -> None:
    with pytest.raises(InputError) as caught:
        parse_toml("a = nan\nb = 1e900\nc = { d = inf }", "a.toml")
    assert [fault.field for fault in caught.value.faults] == ["a", "b", "c.d"]


def test_a_file_may_have_as_many_characters_of_any_script(tmp_path: Path) -> None:
    """The bound is in characters; one of them takes up to four bytes."""
    path = tmp_path / "a.toml"
    comment = "# " + "𝛼" * (LONGEST_TEXT - 10)
    path.write_text(comment + "\nb = 1", encoding="utf-8")
    assert read_toml(path, "template") == {"b": 1}

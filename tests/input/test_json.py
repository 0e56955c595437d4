"""JSON: what is beyond a bound is refused with one message."""

from pathlib import Path

import pytest

from probgen.input import json
from probgen.input.fault import InputError
from probgen.input.json import read_json


def read(path: Path, text: str) -> object:
    path.write_text(text, encoding="utf-8")
    return read_json(path, "record", "take another")


def test_json_is_read(tmp_path: Path) -> None:
    text = r'{"a": [1, 2.5, "\u00e9\\u0000\ud83d\ude00"]}'
    assert read(tmp_path / "a.json", text) == {"a": [1, 2.5, "é\\u0000😀"]}


def test_as_deep_as_a_record_may_be_is_read(tmp_path: Path) -> None:
    deep = "[" * (json.DEEPEST + 1) + "]" * (json.DEEPEST + 1)  # lists in the outermost one
    assert read(tmp_path / "a.json", deep) is not None
    with pytest.raises(InputError, match="nested"):
        read(tmp_path / "a.json", f"[{deep}]")


BEYOND = {
    "cut": ('{"a": [1,', "line 1"),
    "deep": ("[" * 100_000 + "]" * 100_000, "nested"),
    "rather deep": ("[" * 20 + "]" * 20, "nested"),
    "deep, with suspicion": ("[" * 20 + r'"\u0000"' + "]" * 20, "nested"),
    "NaN": ('{"a": NaN}', "NaN"),
    "infinity": ('{"a": 1e999}', "1e999"),
    "huge": ('{"a": ' + "1" * 5000 + "}", "5000 digits"),
    "half a character": (r'{"a": ["\ud800"]}', "half a character"),
    "half a character in a key": (r'{"\udc00": 1}', "half a character"),
    "NUL": (r'{"a": "\u0000"}', r"the control character, \x00"),
    "the escape of a terminal": (r'{"a": "\u001b[2J"}', r"the control character, \x1b"),
    "one for terminals of eight bits": ('{"a": "\u009b2J"}', r"the control character, \x9b"),
    "a backspace in a key": (r'{"a\b": 1}', r"the control character, \x08"),
    "a field twice": ('{"a": 1, "a": 2}', "'a' twice"),
}


@pytest.mark.parametrize(("text", "words"), BEYOND.values(), ids=BEYOND)
def test_what_is_beyond_a_bound_is_one_clear_fault(text: str, words: str, tmp_path: Path) -> None:
    with pytest.raises(InputError) as caught:
        read(tmp_path / "a.json", text)
    (fault,) = caught.value.faults
    assert words in str(fault)
    assert fault.mend == "take another"
    assert len(str(fault)) < 400


def test_the_number_of_values_is_bounded(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(json, "MOST_VALUES", 10)
    assert read(tmp_path / "a.json", "[1,2,3,4,5,6,7,8,9]")
    with pytest.raises(InputError, match="more than 10 values"):
        read(tmp_path / "a.json", "[1,2,3,4,5,6,7,8,9,[]]")


@pytest.mark.parametrize(
    ("most", "more"), [("1" * 40, "1" * 41), (f"0.{'1' * 38}", f"0.{'1' * 39}")]
)
def test_a_number_may_have_forty_signs(most: str, more: str, tmp_path: Path) -> None:
    read(tmp_path / "a.json", f"[{most}]")
    with pytest.raises(InputError):
        read(tmp_path / "a.json", f"[{more}]")

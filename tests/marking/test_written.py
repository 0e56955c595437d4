"""What lies in a folder already: markings replace what they wrote, and nobody else's files."""

from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.marking import written
from probgen.marking.written import LIST, note_own, require_place, take_own
from probgen.papers.typesetter import Kind

NAMES = ("marks.csv", "class.txt")


@pytest.fixture
def marked(tmp_path: Path) -> Path:
    """A folder with what a marking has written."""
    for name in NAMES:
        (tmp_path / name).write_text("written")
    note_own(tmp_path, NAMES, {"feedback/a.pdf": "0"})
    return tmp_path


def test_what_was_written_is_taken_to_be_written_again(marked: Path) -> None:
    assert {*take_own(marked, NAMES, begun=True)} == {*NAMES, "feedback/a.pdf"}


def test_a_marking_that_was_stopped_is_believed(marked: Path) -> None:
    take_own(marked, NAMES, begun=True)
    (marked / "marks.csv").write_text("written anew, and stopped then")
    assert take_own(marked, NAMES, begun=True) == {}


FOREIGN = {
    "changed since": lambda path: path.write_text("written and changed"),
    "a link to what was written": lambda path: path.symlink_to(path.rename(path.parent / "x")),
    "a link that leads nowhere": lambda path: (path.unlink(), path.symlink_to("nowhere")),
    "a folder": lambda path: (path.unlink(), path.mkdir()),
}


@pytest.mark.parametrize("change", FOREIGN.values(), ids=FOREIGN)
def test_others_files_are_refused_all_at_once(change: object, marked: Path) -> None:
    assert callable(change)
    for name in NAMES:
        change(marked / name)
    with pytest.raises(InputError) as caught:
        take_own(marked, NAMES, begun=True)
    assert [Path(fault.file).name for fault in caught.value.faults] == [*NAMES]
    assert all(fault.mend for fault in caught.value.faults)
    assert (marked / LIST).exists()


@pytest.mark.parametrize("text", [None, "[]", "no JSON", "[" * 100_000])
def test_where_no_marking_lies_nothing_is_one_s_own(text: str | None, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("term's marks")
    if text is not None:
        (tmp_path / LIST).write_text(text)
    with pytest.raises(InputError, match=r"marks\.csv"):
        take_own(tmp_path, NAMES, begun=False)
    assert take_own(tmp_path, NAMES, begun=True) == {}  # of an earlier release


def test_no_marks_among_papers_to_hand_out(tmp_path: Path) -> None:
    assert str(Kind.SHEETS) == written._HANDED_OUT
    (tmp_path / "sheets").mkdir()
    require_place(tmp_path / "sheets" / "marks")
    (tmp_path / "record.json").touch()
    require_place(tmp_path / "marks")
    for name in ("sheets", "sheets/marks", "keys/../sheets"):
        with pytest.raises(InputError, match="papers to hand out"):
            require_place(tmp_path / name)
    with pytest.raises(InputError, match="no folder"):
        require_place(tmp_path / "record.json")

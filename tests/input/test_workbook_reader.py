"""What the process that opens workbooks writes."""

import json
import subprocess
import sys
from datetime import date

from probgen.input import workbook_reader
from probgen.input.csv import LONGEST_CELL
from probgen.input.workbook_reader import sheets
from tests.spreadsheets import xlsx


def test_every_kind_of_cell_is_data() -> None:
    made = sheets(xlsx({"A": [["x", 1, 2.5, True, date(2026, 3, 9), "=1/0"]]}))
    (sheet,) = made["sheets"]
    assert sheet["rows"][0][:4] == ["x", 1, 2.5, True]
    assert json.loads(json.dumps(made)) == made


def test_of_a_long_cell_as_much_is_read_as_tells_that_it_is_too_long() -> None:
    (sheet,) = sheets(xlsx({"A": [["x" * 2000, "y" * LONGEST_CELL]]}))["sheets"]
    assert [len(cell) for cell in sheet["rows"][0]] == [LONGEST_CELL + 1, LONGEST_CELL]


def test_what_is_no_workbook_is_said() -> None:
    assert sheets(b"PK") == {"failed": "Cannot detect file format"}


def test_it_is_a_process_of_its_own() -> None:
    words = [sys.executable, "-m", "probgen.input.workbook_reader"]
    done = subprocess.run(words, input=xlsx({"A": [["x"]]}), capture_output=True, check=True)
    assert json.loads(done.stdout)["sheets"][0]["rows"] == [["x"]]


def test_it_has_bounds_of_its_own() -> None:
    code = (
        "import json, resource\n"
        "from probgen.input import workbook_reader\n"
        "workbook_reader._bound()\n"
        "kinds = resource.RLIMIT_AS, resource.RLIMIT_CPU, resource.RLIMIT_CORE\n"
        "print(json.dumps([resource.getrlimit(kind) for kind in kinds]))\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True)
    memory, seconds = workbook_reader._MEMORY, workbook_reader._SECONDS
    assert json.loads(done.stdout) == [[memory] * 2, [seconds] * 2, [0, 0]]

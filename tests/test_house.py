"""The house's own rules that no other tool holds: no circles, and files and functions of a size."""

import ast
import re
from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import grimp
import pytest

import probgen
from tests.mirrors import DATA_ONLY, ELSEWHERE, excused, mirror_of

PACKAGE = Path(probgen.__file__).parent
ROOT = PACKAGE.parent
FILES = sorted(PACKAGE.rglob("*.py"))
TESTS = ROOT / "tests"
TEST_FILES = sorted(TESTS.rglob("*.py"))
MODULES = [path.relative_to(PACKAGE).as_posix() for path in FILES if not path.name.startswith("__")]
LONGEST_FILE = 400
LONGEST_FUNCTION = 50

NO_OPTIONS_OF_OURS = {
    "build/example.py",  # writes an assignment file, whose first line tells how to build it
    "department/state.py",  # calls git
    "press/engine.py",  # calls TeX
}

GUIDES = ("DEVELOPERS.md", "README.md", "probgen/course/README.md")
GUIDE, *OTHERS = ((ROOT / name).read_text("utf-8") for name in GUIDES)
BUILT = {"keys/", "sheets/", "output/demo", "mechanics/roster.csv", "mechanics/assignment.toml"}
NAMED = set(re.findall(r"`((?:\w+/)+(?:\w+(?:\.\w+)?)?)`", GUIDE + "".join(OTHERS))) - BUILT

Imports = dict[str, set[str]]


def imports_of_the_house() -> Imports:
    """For each module those it imports, also inside functions and for types alone."""
    graph = grimp.build_graph("probgen", cache_dir=None)
    return {module: graph.find_modules_directly_imported_by(module) for module in graph.modules}


def circle_in(imports: Imports) -> list[str]:
    """The modules of a circle, each imported by the next; none when there is no circle."""
    try:
        TopologicalSorter(imports).prepare()
    except CycleError as error:
        return list(error.args[1])
    return []


def functions(path: Path) -> Iterator[tuple[str, int]]:
    """Name and number of lines of every function of a file."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            assert node.end_lineno is not None
            yield node.name, node.end_lineno - node.lineno + 1


def test_no_circle_between_any_two_modules() -> None:
    imports = imports_of_the_house()
    assert len(imports) > len(FILES) - 5  # the graph is of this package, whole
    assert circle_in(imports) == []


def test_a_circle_would_be_seen() -> None:
    assert set(circle_in({"a": {"b"}, "b": {"c"}, "c": {"a"}, "d": {"a"}})) == {"a", "b", "c"}


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_files_and_functions_can_be_read_at_a_sitting(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert text.count("\n") <= LONGEST_FILE
    assert {name: length for name, length in functions(path) if length > LONGEST_FUNCTION} == {}
    assert ast.get_docstring(ast.parse(text))


def words(path: Path) -> Iterator[str]:
    """The strings of a file but those that stand alone, as docstrings do."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    alone = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in alone:
            yield node.value


def test_nothing_below_the_command_line_names_an_option() -> None:
    naming = {
        path.relative_to(PACKAGE).as_posix()
        for path in FILES
        if any(re.search(r"(?<!\S)--[a-z]", text) for text in words(path))
    }
    assert {name for name in naming if not name.startswith("cli/")} == NO_OPTIONS_OF_OURS


def test_the_guides_name_every_room_and_no_file_that_is_gone() -> None:
    rooms = {path.name for path in PACKAGE.iterdir() if (path / "__init__.py").is_file()}
    assert set(re.findall(r"^\| `(\w+)/` \|", GUIDE, re.M)) == rooms
    assert len(NAMED) > 40
    gone = {
        name
        for name in NAMED
        if not any((base / name).exists() for base in (ROOT, PACKAGE, *PACKAGE.iterdir()))
    }
    assert gone == set()


def test_every_module_has_a_test_file_that_mirrors_it() -> None:
    without = {module for module in MODULES if not (TESTS / mirror_of(module)).is_file()}
    assert {module for module in without if not excused(module)} == set()


def test_who_is_excused_is_there_and_has_none() -> None:
    """What gets its own test file is taken off the list, which therefore only shrinks."""
    listed = {*DATA_ONLY, *(module for module in ELSEWHERE if "*" not in module)}
    assert listed <= set(MODULES)
    assert {module for module in listed if (TESTS / mirror_of(module)).is_file()} == set()
    assert {file for file in ELSEWHERE.values() if not (TESTS / file).is_file()} == set()


@pytest.mark.parametrize("path", TEST_FILES, ids=lambda path: str(path.relative_to(TESTS)))
def test_test_files_can_be_read_at_a_sitting(path: Path) -> None:
    assert path.read_text(encoding="utf-8").count("\n") <= LONGEST_FILE

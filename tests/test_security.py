"""SECURITY.md says nothing that no test holds, and every test it names is there."""

import ast
import os
import re
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

import probgen

PACKAGE = Path(probgen.__file__).parent
ROOT = Path(__file__).parents[1]
NOT_PROMISED = "What is not promised"
RUNNING = {"pickle", "cPickle", "marshal", "shelve", "dill", "cloudpickle", "code", "runpy", "imp"}
"""Modules by which data becomes a program."""
RUN_BY_NAME = {"eval", "exec", "compile", "__import__", "literal_eval", "sympify", "parse_expr"}


def rules(text: str) -> Iterator[tuple[str, str]]:
    """Heading and text of each rule: of every item of the document but what is not promised."""
    heading, item = "", ""
    for line in [*text.splitlines(), ""]:
        if item and not line.startswith("  "):
            if heading != NOT_PROMISED:
                yield heading, item
            item = ""
        if line.startswith("## "):
            heading = line.removeprefix("## ")
        elif line.startswith("- "):
            item = line.removeprefix("- ")
        elif item:
            item += " " + line.strip()


def test_named(rule: str) -> tuple[str, str]:
    """File and function at the end of a rule, each empty where there is none."""
    found = re.search(r" \(`(tests/[\w/]+\.py)::(test_\w+)`\)$", rule)
    return (found[1], found[2]) if found else ("", "")


test_named.__test__ = False  # type: ignore[attr-defined]


@cache
def functions_of(file: str) -> frozenset[str]:
    """The tests of a file, none where there is no such file."""
    path = ROOT / file
    if not path.is_file():
        return frozenset()
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return frozenset(node.name for node in tree.body if isinstance(node, ast.FunctionDef))


def faulty(text: str) -> list[str]:
    """The rules that name no test, or one that is not there."""
    named = [(rule, *test_named(rule)) for _, rule in rules(text)]
    return [rule for rule, file, test in named if test not in functions_of(file)]


def test_every_rule_has_its_test() -> None:
    text = (ROOT / "SECURITY.md").read_text(encoding="utf-8")
    assert len(list(rules(text))) > 40
    assert f"## {NOT_PROMISED}\n" in text
    assert faulty(text) == []


HERE = "(`tests/test_security.py::test_every_rule_has_its_test`)"


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        (f"## Rules\n\n- All is well. {HERE}\n", 0),
        (f"## Rules\n\n- All is\n  well. {HERE}\n\nText.\n", 0),
        ("## Rules\n\n- All is well.\n", 1),
        (f"## Rules\n\n- All is well. {HERE}\n- So is this.\n", 1),
        ("## Rules\n\n- All is well. (`tests/test_security.py::test_nosuch`)\n", 1),
        ("## Rules\n\n- All is well. (`tests/test_nosuch.py::test_every_rule_has_its_test`)\n", 1),
        (f"## {NOT_PROMISED}\n\n- Nothing is.\n\n## Rules\n\n- All is.\n", 1),
    ],
)
def test_a_rule_without_its_test_is_seen(text: str, wrong: int) -> None:
    assert len(faulty(text)) == wrong


def running(path: Path) -> list[str]:
    """What of a module could run data: modules it imports, functions it calls."""
    found = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found += [alias.name for alias in node.names if alias.name.split(".")[0] in RUNNING]
        elif isinstance(node, ast.ImportFrom):
            found += [node.module or ""] if (node.module or "").split(".")[0] in RUNNING else []
            found += [alias.name for alias in node.names if alias.name in RUN_BY_NAME]
        elif isinstance(node, ast.Call):
            called = node.func
            if isinstance(called, ast.Name) and called.id in RUN_BY_NAME:
                found.append(called.id)
            found += ["shell"] if any(word.arg == "shell" for word in node.keywords) else []
    return found


def test_nothing_read_is_run() -> None:
    files = sorted(PACKAGE.rglob("*.py"))
    assert len(files) > 200
    assert {path.name: found for path in files if (found := running(path))} == {}


@pytest.mark.parametrize(
    "program",
    ["import pickle", "from marshal import loads", "eval('1')", "subprocess.run('ls', shell=True)"],
)
def test_what_runs_data_would_be_seen(program: str, tmp_path: Path) -> None:
    (path := tmp_path / "module.py").write_text(program)
    assert len(running(path)) == 1


def test_workers_import_nothing_from_where_they_are_started(tmp_path: Path) -> None:
    (tmp_path / "random.py").write_text("open('run', 'w').close()")
    program = (
        "from probgen.build.workers import Crew\n"
        "if __name__ == '__main__':\n"
        "    print(sum(Crew(2).each(abs, [(-1,), (-2,)], 2)))\n"
    )
    (elsewhere := tmp_path / "elsewhere").mkdir()
    (elsewhere / "start.py").write_text(program)
    done = subprocess.run(
        [sys.executable, str(elsewhere / "start.py")],
        cwd=tmp_path, capture_output=True, text=True, timeout=120,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )  # fmt: skip
    assert not (tmp_path / "run").exists()
    assert (done.stdout, done.stderr) == ("3\n", "")

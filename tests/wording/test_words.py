"""Words of a language stand in its own package; the rest of what tells and prints has none."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "probgen"
NO_WORDS = sorted(
    path
    for room in ("wording", "working", "mistakes")
    for path in (PACKAGE / room).rglob("*.py")
    if "english" not in path.parts
)
PAGES = [
    PACKAGE / name
    for name in (
        "papers/page.py",
        "papers/covers_and_lists.py",
        "sheets/document.py",
        "sheets/formula_page.py",
    )
]
LAYOUTS = sorted((PACKAGE / "sheets").rglob("*.j2"))
CHOICES = {"half up", "half even", "forces first", "torques throughout"}
"""What an assignment file may say of its method."""


def texts(tree: ast.AST) -> Iterator[str]:
    """Strings that may be printed: not docstrings, nor what is said of faults."""
    for node in ast.iter_child_nodes(tree):
        if isinstance(node, ast.Raise | ast.Assert) or _is_fault(node):
            continue
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            continue
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value
        yield from texts(node)


def _is_fault(node: ast.AST) -> bool:
    name = node.func.id if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) else ""
    return name in ("Fault", "OutsideError", "Loss")


def is_sentence(text: str) -> bool:
    """Two words with a space between, or one beside a space."""
    return bool(re.search(r"[A-Za-z]{2,} | [A-Za-z]{2,}", text))


@pytest.mark.parametrize("path", [*NO_WORDS, *PAGES], ids=lambda path: path.stem)
def test_no_sentence_stands_outside_a_language(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    found = {text for text in texts(tree) if is_sentence(text)} - CHOICES
    assert found == set() or path.name == "likelihood.py"  # cites what its order rests on


def test_a_sentence_would_be_seen() -> None:
    tree = ast.parse('"""Not this."""\nx = f"the force on {y}"\nraise E("nor this one")\n')
    assert [text for text in texts(tree) if is_sentence(text)] == ["the force on "]


@pytest.mark.parametrize("path", LAYOUTS, ids=lambda path: path.name.removesuffix(".tex.j2"))
def test_layouts_have_no_labels(path: Path) -> None:
    """No word with a capital stands in them, but for names of fonts and of TeX's own things."""
    text = re.sub(r"<#.*?#>|{#.*?#}", " ", path.read_text(encoding="utf-8"), flags=re.S)
    if path.name.endswith(".html.j2"):
        text = re.sub(r"{%.*?%}|{{.*?}}|<[^>]*>", " ", text)
    text = re.sub(r"(?<!\\)%.*|<%.*?%>|<<.*?>>|\\[A-Za-z@]+", " ", text)
    words = set(re.findall(r"\b[A-Z][a-z]{2,}\b", text))
    assert words <= {"ActualText", "Span", "Declare"}

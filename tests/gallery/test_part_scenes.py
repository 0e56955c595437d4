"""The contact sheet: every part, once."""

from __future__ import annotations

import ast
import inspect
import re
from collections.abc import Iterator

from probgen.figures.parts import axes, distributed, ground, limb, mechanical, person, solid
from probgen.figures.writers.latex import latex_picture
from tests.gallery import part_scenes as contact_sheet
from tests.gallery.part_scenes import part_scenes

LIBRARY = (mechanical, distributed, person, limb, solid, axes, ground)
NOT_DRAWN = {"backing"}  # what labels keep clear of behind a wall


def library() -> Iterator[str]:
    """The name of every function that draws a part."""
    for module in LIBRARY:
        for name, function in inspect.getmembers(module, inspect.isfunction):
            own = function.__module__ == module.__name__ and not name.startswith("_")
            drawn = re.search(r"\b(Shape|Arc|Path)\b", str(function.__annotations__.get("return")))
            if own and drawn:
                yield name


def test_every_part_is_on_the_contact_sheet_once() -> None:
    tree = ast.parse(inspect.getsource(contact_sheet))
    named = {node.attr for node in ast.walk(tree) if isinstance(node, ast.Attribute)}
    named |= {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    assert len([*library()]) > 40
    assert {*library()} - NOT_DRAWN <= named
    names = [name for name, _ in part_scenes()]
    assert len(set(names)) == len(names)
    for _, scene in part_scenes():
        assert 0 < max(scene.box.width, scene.box.height) < 140
        assert r"\strokepath" in latex_picture(scene)

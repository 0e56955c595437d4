"""SVG: sound XML, one element for each shape, the same words and marks."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from probgen.figures.paper.scene import (
    BARE,
    MEDIUM,
    Arrow,
    Label,
    Path,
    Pen,
    Tone,
    composed,
    polygon,
)
from probgen.figures.writers.svg import svg
from tests.figures.conftest import CASES, Case
from tests.figures.seen import tag

SPACE = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("name", CASES)
def test_both_figures_are_sound_xml(cases: dict[tuple[str, int], Case], name: str) -> None:
    case = cases[name, 0]
    body = case.system.bodies[0].id
    for scene in (
        case.situation(),
        case.alone(body, ""),
    ):
        root = ET.fromstring(svg(scene))
        assert len(root.findall(f"{SPACE}text")) == len(scene.labels)
        arrows = sum(isinstance(shape, Arrow) for shape in scene.shapes)
        others = len(scene.shapes) - arrows - len(scene.labels)
        assert len(root.findall(f"{SPACE}path")) == 2 * arrows + others
        tags = {element.get("data-tag") for element in root if not element.tag.endswith("title")}
        assert {str(shape.tag) for shape in scene.shapes} == tags


def test_labels_read_as_printed(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["beam", 0]
    scene = case.alone("beam", "A")
    root = ET.fromstring(svg(scene))
    texts = {"".join(text.itertext()) for text in root.findall(f"{SPACE}text")}
    assert {"T", "Rx", "Ry", "θ", "A"} <= texts
    assert all(isinstance(label, Label) for label in scene.labels)


def test_a_tone_fills_a_face_and_paints_an_open_stroke() -> None:
    box = polygon((0j, 9 + 0j, 9 + 9j), MEDIUM, tag("body:box"), tone=Tone.BODY)
    arm = Path(((0j, 9 + 0j),), Pen(4.0, round=True), tag("body:p"), tone=Tone.PERSON)
    soil = polygon((0j, 9 + 0j, 9 + 9j), BARE, tag("soil"), tone=Tone.GROUND)
    face, limb, ground = ET.fromstring(svg(composed([box, arm, soil]))).findall(f"{SPACE}path")
    assert (face.get("fill"), face.get("stroke")) == ("#e6e6e6", "#000000")
    assert (limb.get("fill"), limb.get("stroke")) == (None, "#c7c7c7")
    assert (ground.get("fill"), ground.get("stroke")) == ("#d1d1d1", "none")


def test_a_tone_is_a_share_of_an_ink_of_the_page() -> None:
    """A body's grey of 0.9 is a tenth of the ink on the page's own paper."""
    box = polygon((0j, 9 + 0j, 9 + 9j), MEDIUM, tag("body:box"), tone=Tone.BODY)
    (face,) = ET.fromstring(svg(composed([box]), ink="currentColor")).findall(f"{SPACE}path")
    assert face.get("fill") == "color-mix(in srgb, currentColor 10%, Canvas)"
    assert face.get("stroke") == "currentColor"

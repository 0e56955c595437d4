"""Colours: an option of both writers, told by kind, never by colour alone."""

from __future__ import annotations

from probgen.figures.writers.colour import BLACK, hexadecimal, ink_of
from probgen.figures.writers.latex import latex_picture
from probgen.figures.writers.svg import svg
from tests.figures.seen import tag
from tests.figures.sketches import (
    loaded,
    sketch,
)


def test_colour_is_an_option_of_both_writers() -> None:
    scene = sketch(loaded("even"))
    assert r"\color" in latex_picture(scene, colour=True)
    assert r"\color" not in latex_picture(scene)
    assert hexadecimal(ink_of(tag("force:T"))) in svg(scene, colour=True)
    strokes = {part.partition('"')[0] for part in svg(scene).split('stroke="')[1:]}
    assert strokes <= {"#000000", "none"}


def test_ink_is_told_by_the_kind_of_thing_and_black_without_colour() -> None:
    assert ink_of(tag("force:T")) == ink_of(tag("force:W")) != BLACK
    assert ink_of(tag("force:T"), colour=False) == BLACK
    assert ink_of(tag("body:shelf")) == BLACK
    assert hexadecimal((1.0, 0.5, 0.0)) == "#ff8000"

"""What is seen on a scene: what touches, how long a dimension line is, where a thing lies."""

from __future__ import annotations

from probgen.figures.paper.scene import Arrow, Box, Label, Path, Scene, Shape, bounds, segments
from probgen.figures.paper.segment import meets
from probgen.figures.paper.tag import Tag, What


def tag(words: str) -> Tag:
    """A tag as a drawing's file names it: "body:beam"."""
    what, _, of = words.partition(":")
    serves = What(what) in (What.LEADER, What.HATCH)
    return Tag(What(what), tag(of) if serves else of)


def tagged(scene: Scene, words: str) -> tuple[Shape, ...]:
    """The shapes of a tag; of a kind, whatever they are of, where words name a kind alone."""
    sought = tag(words)
    return scene.showing(sought.what, sought.of or None)


def touching(scene: Scene) -> list[str]:
    """Labels that come within half a point of another label or of a stroke."""
    found = []
    for i, label in enumerate(scene.labels):
        box = label.box.grown(0.5)
        found += [f"{label.tag} / {o.tag}" for o in scene.labels[i + 1 :] if box.overlaps(o.box)]
        found += [
            f"{label.tag} / {shape.tag}"
            for shape in scene.shapes
            if not isinstance(shape, Label) and any(meets(s, box) for s in segments(shape))
        ]
    return found


def dimension_ends(scene: Scene, id: str) -> tuple[complex, complex]:
    """The tips of a dimension line's arrows."""
    arrows = [s for s in tagged(scene, f"dimension:{id}") if isinstance(s, Arrow)]
    tips = [arrow.head for arrow in arrows]
    if len(arrows) == 1:
        tips.append(arrows[0].tail)
    assert len(tips) == 2
    return tips[0], tips[1]


def outlines(scene: Scene, words: str) -> list[Path]:
    return [shape for shape in tagged(scene, words) if isinstance(shape, Path)]


def box_of(scene: Scene, words: str) -> Box:
    return bounds(tagged(scene, words))

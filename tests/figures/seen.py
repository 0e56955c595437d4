"""What is seen on a scene: what touches, how long a dimension line is, where a thing lies."""

from __future__ import annotations

from probgen.figures.paper.scene import Arrow, Box, Label, Path, Scene, bounds, segments
from probgen.figures.paper.segment import meets


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
    arrows = [s for s in scene.tagged(f"dimension:{id}") if isinstance(s, Arrow)]
    tips = [arrow.head for arrow in arrows]
    if len(arrows) == 1:
        tips.append(arrows[0].tail)
    assert len(tips) == 2
    return tips[0], tips[1]


def outlines(scene: Scene, tag: str) -> list[Path]:
    return [shape for shape in scene.tagged(tag) if isinstance(shape, Path)]


def box_of(scene: Scene, tag: str) -> Box:
    return bounds(scene.tagged(tag))

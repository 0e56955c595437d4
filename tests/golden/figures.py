"""The figures that are kept as SVG: every part, and situations and bodies alone of many kinds."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

from probgen.bank.bank import read_file
from probgen.figures.paper.scene import Scene
from probgen.figures.writers.svg import svg
from probgen.problem.problem import draw_class, prepare, work
from probgen.problem.problem_figures import every_scene
from probgen.working.convention import Convention
from tests.gallery.make import contact_sheet

DRAWINGS: Final = Path(__file__).parent / "drawings"
_FOLDERS: Final = (Path(__file__).parent / "templates", Path(__file__).parents[1] / "published")
_SEED: Final = "golden drawings"

SITUATIONS: Final = (
    "arm-held-out", "balcony-built-in", "beam-stay-cable", "bent-back-toolbox",
    "bookcase-centre-tilt", "cabinet-slide-or-tip", "cellar-hatch-rope", "cp2e-16.1-p5",
    "cp2e-16.8-p44", "cp2e-4.6-p33", "cp2e-4.7-p42", "cp2e-9.2-p1", "cp2e-9.5-p25",
    "cp2e-9.5-text", "feeder-cord-strength", "footbridge-two-beams", "head-over-phone",
    "jaw-bites-nut", "jetty-mooring", "kneecap-squat", "ladder-holds", "leg-raise-cuff",
    "painter-board-seat", "pedal-bell-crank", "plank-over-edge", "plank-raised-slowly",
    "porch-roof-snow", "reaction-board", "sign-arm-strut", "spring-scales-baskets",
    "stepladder-tie", "table-pulley-sand", "tiptoe-achilles", "up1-10.6-p81", "up1-12.2-ex4",
    "up1-12.2-p43", "up1-5.6-p67b", "up1-6.1-p25", "up1-6.2-ex12", "well-windlass",
    "wheelbarrow-compost",
)  # fmt: skip
"""Templates whose situation is kept."""
BODIES: Final = (
    ("balcony-built-in", "beam"), ("beam-stay-cable", "beam"), ("bookcase-centre-tilt", "bookcase"),
    ("cellar-hatch-rope", "hatch"), ("cp2e-4.5-p19", "before"), ("cp2e-9.2-p1", "door"),
    ("cp2e-9.3-p10", "wall"), ("footbridge-two-beams", "long"), ("kneecap-squat", "kneecap"),
    ("painter-board-seat", "worker+board"), ("porch-roof-snow", "deck"),
    ("stepladder-tie", "left"), ("stepladder-tie", "left+right"),
    ("up1-10.6-p81", "beam"), ("up1-5.6-p66", "scale"), ("well-windlass", "windlass"),
    ("wheelbarrow-compost", "barrow"),
)  # fmt: skip
"""Bodies whose free-body diagram is kept, with their template."""
LAID_OFF: Final = (
    ("forearm-load", "forearm", Convention(torque="arm")),
    ("beam-stay-cable", "beam", Convention(torque="arm")),
    ("leg-raise-cuff", "leg", Convention(torque="components")),
    ("sign-arm-strut", "arm", Convention(torque="components")),
)
"""The same, with the lever arms or components that a course's method takes from the diagram."""


def drawn() -> dict[str, str]:
    """Every drawing that is kept, as the code draws it now; by name."""
    wanted = {(id, "situation") for id in SITUATIONS}
    wanted |= {(id, f"free-body-{body}") for id, body in BODIES}
    found = {"parts": contact_sheet()}
    for id in sorted({id for id, _ in wanted}):
        scenes = _scenes(id, Convention())
        found |= {f"{id}-{name}": svg(scenes[name]) for name in scenes if (id, name) in wanted}
    for id, body, convention in LAID_OFF:
        scene = _scenes(id, convention)[f"free-body-{body}"]
        found[f"{id}-{convention.torque}-{body}"] = svg(scene)
    return found


def _scenes(id: str, convention: Convention) -> dict[str, Scene]:
    problem = prepare(read_file(_template(id)), convention)
    (own,) = work(problem, draw_class(problem, _SEED, ["one"]).draws)
    return dict(every_scene(problem, own))


def _template(id: str) -> Path:
    return next(path for folder in _FOLDERS if (path := folder / f"{id}.toml").exists())


def kept(name: str) -> str:
    return (DRAWINGS / f"{name}.svg").read_text(encoding="utf-8")


TOLERANCE: Final = 0.05
"""Units of a drawing, of which there are 72 in an inch: less than anybody sees."""
_NUMBER: Final = re.compile(r"-?\d+(?:\.\d+)?")


def differences(before: str, now: str) -> list[str]:
    """The elements of a drawing that are not as they were; none where only roundings differ."""
    old, new = before.splitlines(), now.splitlines()
    if len(old) != len(new):
        return [f"{len(new)} elements instead of {len(old)}"]
    return [f"{b} instead of {a}" for a, b in zip(old, new, strict=True) if not _alike(a, b)]


def _alike(one: str, other: str) -> bool:
    if _NUMBER.sub("0", one) != _NUMBER.sub("0", other):
        return False
    pairs = zip(_NUMBER.findall(one), _NUMBER.findall(other), strict=True)
    return all(abs(float(a) - float(b)) <= TOLERANCE for a, b in pairs)

"""Which breaks are tried: some in every room, more where there is more code, by a seed.

A change of the code leaves what is chosen elsewhere as it was, so that a break that nobody noticed
can be tried again once there is a test.
"""

from __future__ import annotations

import hashlib
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from fnmatch import fnmatch
from pathlib import Path
from typing import Final

from tests.mutants.breaks import Break, breaks_in
from tests.mutants.reach import ROOT
from tests.mutants.trial import Module

_LEAST: Final = 5  # in each room
# Where numbers are measures of drawings and pages, looked at on paper and not computed.
_OF_TASTE: Final = ("figures/*", "sheets/*", "papers/*", "press/*", "marking/class_page.py")

Site = tuple[Module, Break]


def sites() -> Iterator[Site]:
    """Every break of every module of the package."""
    for path in sorted((ROOT / "probgen").rglob("*.py")):
        module = Module(path.relative_to(ROOT))
        if len(module.path.parts) > 2:  # the package's own __init__ and __main__ are in no room
            source = path.read_text(encoding="utf-8")
            name = Path(*module.path.parts[1:]).as_posix()
            taste = any(fnmatch(name, pattern) for pattern in _OF_TASTE)
            changes = breaks_in(source, taste=taste)
            yield from ((module, change) for change in changes)


def sample(found: Sequence[Site], count: int, seed: str) -> list[Site]:
    """So many of the sites, the same for the same seed, room by room."""
    rooms: dict[str, list[Site]] = defaultdict(list)
    for site in found:
        rooms[site[0].room].append(site)
    shares = _shares({room: len(own) for room, own in rooms.items()}, count)
    chosen: list[Site] = []
    for room, share in shares.items():
        chosen += _spread(seed, rooms[room], share)
    return chosen


def _shares(sizes: dict[str, int], count: int) -> dict[str, int]:
    """How many of each room: a few in each, the rest by its size."""
    shares = {room: min(_LEAST, size) for room, size in sizes.items()}
    if len(sizes) == 1:
        return {room: min(count, size) for room, size in sizes.items()}
    while sum(shares.values()) < min(count, sum(sizes.values())):
        open_rooms = (room for room in sizes if shares[room] < sizes[room])
        shares[max(open_rooms, key=lambda room: sizes[room] / shares[room])] += 1
    return shares


def _spread(seed: str, own: Sequence[Site], share: int) -> list[Site]:
    """Some of a room's sites, never two of one line: those whose digests come first."""
    alike: Counter[tuple[str, ...]] = Counter()
    ranked: list[tuple[str, Site]] = []
    for module, change in own:
        texts = (seed, module.path.as_posix(), change.kind, change.old, change.new)
        ranked.append((_digest(*texts, str(alike[texts])), (module, change)))
        alike[texts] += 1
    lines: dict[tuple[Path, int], Site] = {}
    for _, (module, change) in sorted(ranked, key=lambda each: each[0]):
        lines.setdefault((module.path, change.line), (module, change))
    return list(lines.values())[:share]


def _digest(*texts: str) -> str:
    return hashlib.sha256("\n".join(texts).encode()).hexdigest()

"""How far a build has come, told to whoever shows it."""

from __future__ import annotations

from collections.abc import Callable

Report = Callable[[str, int, int], None]
"""Told of a stage, what of it is done, and its whole: ("students", 12, 300)."""

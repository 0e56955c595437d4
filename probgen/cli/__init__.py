"""The commands, thin: they read options, call the course, and show what comes back."""

from __future__ import annotations

from probgen.cli.group import main

__all__ = ["main"]

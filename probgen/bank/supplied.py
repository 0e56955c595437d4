"""Where the templates and banks that come with probgen lie."""

from __future__ import annotations

from pathlib import Path


def supplied(kind: str) -> Path:
    """The folder of supplied "templates" or "banks": in the package, else in the source tree."""
    package = Path(__file__).resolve().parents[1]
    packaged = package / "_data" / kind
    return packaged if packaged.is_dir() else package.parent / kind

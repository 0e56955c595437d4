"""What a solution told in words is made of: paragraphs, aligned equations, pictures.

Blocks carry no mark-up of any page language; formulas stay expression trees, so that one telling
is written as LaTeX, as plain text in a terminal, or re-evaluated by the proof.
"""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.formula import Formula


@dataclass(frozen=True, slots=True)
class Text:
    """Running text, as plain Unicode; never mark-up."""

    text: str


@dataclass(frozen=True, slots=True)
class Math:
    """A formula in running text."""

    formula: Formula


Inline = Text | Math


@dataclass(frozen=True, slots=True)
class Paragraph:
    """bound: it says something of the equations before it, or goes on from there."""

    inlines: tuple[Inline, ...]
    bound: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """One line of aligned equations: left (may be empty), relation ("=", "→", ...), right."""

    left: Formula
    relation: str
    right: Formula


@dataclass(frozen=True, slots=True)
class Display:
    """Equations set apart, aligned at their relations."""

    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Itemize:
    """A short list; each item is one run of inlines."""

    items: tuple[tuple[Inline, ...], ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """The place of a figure: "situation", or "free-body" or "diagram" of the body named."""

    kind: str
    body: str = ""


Block = Paragraph | Display | Itemize | Picture


@dataclass(frozen=True, slots=True)
class Section:
    """One step of the working with its heading ("Torque balance").

    heading: the title with its letters as formulas; empty where it has none.
    """

    title: str
    blocks: tuple[Block, ...]
    heading: tuple[Inline, ...] = ()

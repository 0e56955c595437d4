"""Blocks as HTML."""

from decimal import Decimal

import pytest
from markupsafe import Markup

from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Relation
from probgen.quantities.unit import NEWTON
from probgen.sheets.html.blocks import write_blocks, write_inlines, write_step
from probgen.wording.block import (
    Block,
    Display,
    Inline,
    Itemize,
    Math,
    Paragraph,
    Picture,
    Row,
    Section,
    Text,
)

T = Name("T", "T")
FORCE = Number(Decimal("12.0"), NEWTON)
UNIT = '<mrow><mn>12.0</mn><mspace width="0.167em"/><mtext>N</mtext></mrow>'

INLINES: dict[str, tuple[tuple[Inline, ...], str]] = {
    "text is escaped": ((Text('5 < 6 & "up"'),), "5 &lt; 6 &amp; &#34;up&#34;"),
    "a letter keeps to its word": (
        (Text("at "), Math((T,))), 'at<span class="tie"> </span><math><mi>T</mi></math>',
    ),
    "a blank line": ((Text("a\n\nb"),), 'a<span class="paragraph"></span>b'),
    "lines may break before relations": (
        (Math((T, Relation("="), FORCE)),),
        f"<math><mi>T</mi></math><wbr><math><mo>=</mo>{UNIT}</math>",
    ),
    "and not before commas": (
        (Math((T, Relation(","), T)),), "<math><mi>T</mi><mo>,</mo><mi>T</mi></math>",
    ),
}  # fmt: skip
BLOCKS: dict[str, tuple[Block, str]] = {
    "a paragraph": (Paragraph((Text("<b>"),)), "<p>&lt;b&gt;</p>"),
    "a list": (Itemize(((Text("a"),), (Text("b"),))), "<ul>\n<li>a</li>\n<li>b</li>\n</ul>"),
    "an equation": (
        Display((Row((T,), "=", (FORCE,)),)),
        '<div class="equations">\n<div class="left"><math><mi>T</mi></math></div>'
        f'<div class="right"><math><mo>=</mo>{UNIT}</math></div>\n</div>',
    ),
    "an equation that goes on": (
        Display((Row((), "=", (T,)),)),
        '<div class="equations">\n<div class="left"></div>'
        '<div class="right"><math><mo>=</mo><mi>T</mi></math></div>\n</div>',
    ),
    "a picture": (Picture("free-body", "shelf"), "<free-body shelf>"),
}


def draw(picture: Picture) -> Markup:
    return Markup(f"<{picture.kind} {picture.body}>")


@pytest.mark.parametrize(("inlines", "html"), INLINES.values(), ids=INLINES)
def test_inlines(inlines: tuple[Inline, ...], html: str) -> None:
    assert write_inlines(inlines) == html


@pytest.mark.parametrize(("block", "html"), BLOCKS.values(), ids=BLOCKS)
def test_blocks(block: Block, html: str) -> None:
    assert write_blocks([block], draw) == html


def test_the_pictures_of_a_step_come_first() -> None:
    section = Section("Forces", (Paragraph((Text("a"),)), Picture("situation")))
    assert write_step(section, draw) == "<situation >\n<p>a</p>"

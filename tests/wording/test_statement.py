import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.draws.draw import Draw, draw
from probgen.input.fault import InputError
from probgen.quantities.expression import Name
from probgen.quantities.formula import Relation
from probgen.wording.block import Inline, Math, Text
from probgen.wording.english import ENGLISH
from probgen.wording.statement import tell_statement


def seesaw(statement: str) -> Template:
    template = default_bank().read("seesaw-two-riders")
    written = statement.replace("\\", "\\\\")  # as TOML has it
    return read_template(template.source.replace(template.statement, written), "seesaw.toml")


CASES = [
    ("A child of mass {{ mass_1 }} sits.", ["A child of mass ", "value", " sits."]),
    ("{{ mass_1 | symbol }} at {{ O }}", ["symbol", " at ", "letter"]),
    ("It is {{ mass_1 | equation }}.", ["It is ", "equation", "."]),
    ("{{ distance_2 }}{{ P }}", ["unknown", "unknown"]),
    ("Of {{ mass_1 | quantity }} m.", ["Of ", "mass", " m."]),
    ("No\n   numbers \u2003here.", ["No numbers here."]),
    ("100 % of \\LaTeX & <b>", ["100 % of \\LaTeX & <b>"]),
    ("{{mass_1|symbol}}, {{\n  O\n}}", ["symbol", ", ", "letter"]),
]


def kind(inline: Inline, drawn: Draw) -> str:
    if isinstance(inline, Text):
        return inline.text
    assert isinstance(inline, Math)
    symbol = Name("mass_1", "m_1")
    known: dict[tuple[object, ...], str] = {
        (drawn.values["mass_1"],): "value",
        (symbol,): "symbol",
        (Name("O", "O"),): "letter",
        (symbol, Relation("="), drawn.values["mass_1"]): "equation",
        (Name("distance_2", "d_2"),): "unknown",
        (Name("P", "P"),): "unknown",
    }
    return known[inline.formula]


@pytest.mark.parametrize(("statement", "told"), CASES)
def test_names_become_formulas(statement: str, told: list[str]) -> None:
    template = seesaw(statement)
    drawn = draw(template, "s", "ann")
    assert [kind(inline, drawn) for inline in tell_statement(template, drawn, ENGLISH)] == told


def test_marks_an_author_types_are_only_text() -> None:
    template = seesaw("A\ue000value:mass_1\ue001 plank.")
    told = tell_statement(template, draw(template, "s", "ann"), ENGLISH)
    assert told == (Text("A\ue000value:mass_1\ue001 plank."),)


@pytest.mark.parametrize(
    "statement",
    [
        "{{ mass_1.__class__ }}",
        "{{ mass_1['id'] }}",
        "{{ mass_1.marked('x') }}",
        "{{ cycler }}",
        "{{ range(9) }}",
        "{% set x = 1 %}",
        "{% include 'x' %}",
        "{{ 'a' * 999999999 }}",
        "{{ mass_1 | attr('id') }}",
        "{ mass_1 }",
        "{{ mass_1 }",
        "{{{ mass_1 }}}",
        "\\LaTeX{}",
        "a note {# here #}",
        "{{ mass_1 | symbol | equation }}",
        "{{- mass_1 }}",
        "{\ue000{ 1230+4 }\ue000}",
        "{\u200b{ mass_1 }}",
        "{{ mass_1 }} {\ue000% include 'x' %\ue001}",
        "{{ " + "(" * 1500 + "mass_1" + ")" * 1500 + " }}",
    ],
)
def test_anything_but_names_is_refused(statement: str) -> None:
    with pytest.raises(InputError) as caught:
        seesaw(statement)
    assert {fault.field for fault in caught.value.faults} == {"statement"}


@pytest.mark.parametrize("id", default_bank().files)
def test_every_statement_tells_every_given(id: str) -> None:
    template = default_bank().read(id)
    drawn = draw(template, "s", "ann")
    # The value ends its formula: 84 N/m, or w_0 = 84 N/m.
    told = {i.formula[-1] for i in tell_statement(template, drawn, ENGLISH) if isinstance(i, Math)}
    assert set(drawn.values.values()) <= told

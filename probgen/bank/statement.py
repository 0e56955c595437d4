"""The statement of a template: jinja2 text that can only name quantities and points.

`{{ L }}` prints a quantity with its value, an unknown or g as its symbol, a point as its letter;
`{{ L | symbol }}` prints the symbol alone and `{{ L | equation }}` both, "L = 1.20 m".  Nothing
else of jinja2 is allowed, and it runs sandboxed all the same.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from jinja2 import StrictUndefined, TemplateSyntaxError, nodes
from jinja2.sandbox import ImmutableSandboxedEnvironment

from probgen.input.fault import nearest, one_of
from probgen.input.table import Table

LONGEST_STATEMENT: Final = 4000
FILTERS: Final = ("symbol", "equation")
_ALLOWED: Final = (nodes.Template, nodes.Output, nodes.TemplateData, nodes.Name, nodes.Filter)


class StatementEnvironment(ImmutableSandboxedEnvironment):
    """Sandboxed jinja2 with nothing in it: no globals, no tests, two filters, no attributes."""

    def __init__(self) -> None:
        super().__init__(undefined=StrictUndefined, autoescape=False)
        self.globals.clear()
        self.tests.clear()
        self.filters = dict.fromkeys(FILTERS, _unready)

    def is_safe_attribute(self, obj: object, attr: str, value: object) -> bool:
        """No attribute of anything is safe."""
        return False


def check_statement(table: Table, key: str, known: Collection[str] | None) -> str:
    """The statement under `key`, its faults noted: syntax, anything but names, unknown names.

    known: what may be named; None when that could not be found out.
    """
    text = table.text(key, expected="the problem's text")
    if len(text) > LONGEST_STATEMENT:
        table.fault(key, f"{len(text)} characters", f"at most {LONGEST_STATEMENT} characters")
        return text
    try:
        tree = StatementEnvironment().parse(text)
    except TemplateSyntaxError as error:
        table.fault(key, f"line {error.lineno}", "text with {{ names }} in it", error.message or "")
        return text
    except RecursionError:
        table.fault(key, "brackets in brackets", "text with {{ names }} in it")
        return text
    _check_node(table, key, tree, known)
    return text


def _check_node(
    table: Table, key: str, node: nodes.Node, known: Collection[str] | None
) -> None:
    if not isinstance(node, _ALLOWED):
        what = f"{type(node).__name__.lower()} on line {node.lineno}"
        table.fault(key, what, "only {{ name }}, {{ name | symbol }} or {{ name | equation }}")
        return
    if isinstance(node, nodes.Filter) and node.name not in FILTERS:
        table.fault(key, f"| {node.name}", one_of(FILTERS, "the filters "))
    elif isinstance(node, nodes.Name) and known is not None and node.name not in known:
        expected = one_of(sorted(known), "the names ")
        table.fault(key, f"{{{{ {node.name} }}}}", expected, nearest(node.name, known))
    for child in node.iter_child_nodes():
        _check_node(table, key, child, known)


def _unready(value: object) -> object:
    return value

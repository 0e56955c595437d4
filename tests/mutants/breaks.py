"""Single changes to a module that its tests should notice: a sign, a limit, a rule left out.

What no test can be asked to notice is passed over: words in messages, annotations, caches and
checks for programmers (`strict=True`), and measures of taste in what is drawn, with the sums they
stand in, their signs, and the spots two of them make: no test knows whether an arm looks better a
tenth longer.  Nor is drawn what computes the
same number: a spot 25 + 0j written 25 - 0j, a division by 1.0 or -1.0 in place of a product, the
sides of a scalar product exchanged, another whole number as the pattern of `quantize`,
which reads its exponent alone.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Break:
    """One change of a source: the characters from `start` to `end` become `new`.

    line: where it is, from 1; kind: what sort of change it is; old, new: the text before and after.
    """

    start: int
    end: int
    line: int
    kind: str
    old: str
    new: str

    def applied(self, source: str) -> str:
        return source[: self.start] + self.new + source[self.end :]


_Found = Iterator[tuple[ast.AST, str, str]]  # what is replaced, what sort of change, by which text
_Change = Callable[[ast.AST], _Found]

_TURNED: Final[dict[type[ast.cmpop], str]] = {
    ast.Lt: ">", ast.Gt: "<", ast.LtE: ">=", ast.GtE: "<=", ast.Eq: "!=", ast.NotEq: "==",
    ast.In: "not in", ast.NotIn: "in", ast.Is: "is not", ast.IsNot: "is",
}  # fmt: skip
_EDGE: Final[dict[type[ast.cmpop], str]] = {
    ast.Lt: "<=", ast.Gt: ">=", ast.LtE: "<", ast.GtE: ">"
}  # fmt: skip
_OPPOSITE: Final[dict[type[ast.operator], str]] = {
    ast.Add: "-", ast.Sub: "+", ast.Mult: "/", ast.Div: "*", ast.FloorDiv: "*", ast.Mod: "*",
    ast.BitOr: "&", ast.BitAnd: "|",
}  # fmt: skip
_OTHER_NAME: Final = {
    "min": "max", "max": "min", "any": "all", "all": "any", "sin": "cos", "cos": "sin",
    "floor": "ceil", "ceil": "floor", "startswith": "endswith", "endswith": "startswith",
    "partition": "rpartition", "rpartition": "partition",
}  # fmt: skip
# Dropping these changes nothing but a type.
_SAME_VALUE: Final = frozenset(
    {
        "Decimal", "Fraction", "Path", "array", "asarray", "bool", "cast", "complex", "dict",
        "enumerate", "float", "frozenset", "int", "iter", "len", "list", "range", "repr",
        "reversed", "set", "str", "super", "tuple", "type",
    }
)  # fmt: skip
# These do not mind the order of their arguments, or mind it for programmers only.
_ANY_ORDER: Final = frozenset(
    {
        "add", "apart", "chain", "combinations", "crosses", "dot", "gcd", "getattr", "hypot",
        "isclose", "isinstance", "issubclass", "logical_and", "logical_or", "max", "maximum",
        "min", "minimum", "multiply", "print", "product", "setattr", "union", "zip", "_product",
    }
)  # fmt: skip
# Keyword arguments that only programmers meet, or that bound a cache; what a dataclass's repr
# shows is theirs too, and which way a type varies.
_FOR_PROGRAMMERS: Final = frozenset(
    {
        "covariant", "default", "encoding", "exist_ok", "frozen", "maxsize", "newline", "parents",
        "repr", "slots", "strict", "timeout",
    }
)  # fmt: skip
# How long a thread sleeps before it looks again: more changes when it sees, and nothing that is
# seen.  Only a test with a clock would notice, and those fail on a busy machine.
_NAPS: Final = frozenset({"sleep", "wait"})


def breaks_in(source: str, *, taste: bool = False) -> list[Break]:
    """Every break there is of a module's source, in the order of its lines.

    taste: its numbers are measures of a drawing or a page, which are no rule: they stay.
    """
    tree = ast.parse(source)
    offsets = [0]
    for text in source.split("\n"):
        offsets.append(offsets[-1] + len(text.encode()) + 1)
    encoded = source.encode()

    def place(line: int, column: int) -> int:
        return len(encoded[: offsets[line - 1] + column].decode())

    found: dict[tuple[int, int, str], Break] = {}
    for node, kind, new in _in_block(tree, taste):
        assert isinstance(node, ast.expr | ast.stmt)
        start = place(node.lineno, node.col_offset)
        end = place(node.end_lineno or node.lineno, node.end_col_offset or 0)
        change = Break(start, end, node.lineno, kind, source[start:end], new)
        if change.old != change.new:
            found[change.start, change.end, change.new] = change
    return sorted(found.values(), key=lambda each: (each.start, each.end, each.new))


def _in_block(node: ast.AST, taste: bool) -> _Found:
    """The breaks below a node, without those in what is passed over."""
    for child in _looked_into(node, taste):
        if _is_for_types(child):
            continue
        for change in _CHANGES:
            if not (taste and _is_measure(child, change)):
                yield from change(child)
        if not taste and isinstance(child, ast.Constant):
            yield from _number(child)
        yield from _in_block(child, taste)


def _is_for_types(node: ast.AST) -> bool:
    """Whether it is `assert_never(name)`, which mypy alone comes to."""
    match node:
        case ast.Expr(ast.Call(func=ast.Name(id="assert_never"))):
            return True
        case _:
            return False


def _is_measure(node: ast.AST, change: _Change) -> bool:
    """Whether a change is of a measure alone: a sum with 0.55 of a limb, the spot (0.9, 0.4)."""
    match node:
        case ast.BinOp() | ast.AugAssign():
            return change is _arithmetic and _measured(node)
        case ast.UnaryOp(ast.USub(), ast.Constant()):
            return change is _logic and _measured(node)
        case ast.Call(args=[one, other]):
            return change is _call and _is_number(one) and _is_number(other) and _measured(node)
        case _:
            return False


def _measured(node: ast.AST) -> bool:
    """Whether it holds a measure: 0.55 of a limb, as whoever drew it found right."""
    parts = ast.walk(node)
    return any(isinstance(part, ast.Constant) and type(part.value) is float for part in parts)


def _is_number(node: ast.expr) -> bool:
    match node:
        case ast.Constant(value=int() | float()) | ast.UnaryOp(ast.USub(), ast.Constant()):
            return True
        case _:
            return False


def _is_whole(node: ast.expr) -> bool:
    """Whether it is Decimal(1), whose exponent is that of any other whole number written out."""
    match node:
        case ast.Call(func=ast.Name(id="Decimal"), args=[ast.Constant(value=int())]):
            return True
        case _:
            return False


def _looked_into(node: ast.AST, taste: bool) -> Iterator[ast.AST]:
    """The parts of a node that hold rules."""
    match node:
        case ast.FunctionDef() if node.name in ("__repr__", "__hash__", "__str__"):
            return
        case ast.FunctionDef():
            yield from (*node.args.defaults, *filter(None, node.args.kw_defaults), *node.body)
        case ast.ClassDef():
            yield from node.body
        case ast.AnnAssign():
            if node.value is not None and not taste:
                yield node.value
        case ast.If(test=ast.Name(id="TYPE_CHECKING")):
            return
        case ast.If(body=[*_, ast.Raise()]):
            yield from (node.test, *node.orelse)  # what stands before it only words the message
        case ast.Call(func=ast.Attribute(attr="quantize") as function, args=[pattern, *others]) if (
            _is_whole(pattern)
        ):
            yield from (function, *others, *node.keywords)
        case ast.Call(func=ast.Attribute(attr=name) as function) if name in _NAPS:
            yield from (function, *(each for each in node.args if not _is_number(each)))
        case ast.Raise() | ast.Import() | ast.ImportFrom() | ast.JoinedStr() | ast.Assert():
            return
        case ast.keyword() if node.arg in _FOR_PROGRAMMERS:
            return
        case ast.Compare(ast.Name(id="sign"), [ast.Lt()], [ast.Constant(value=0)]):  # it is 1 or -1
            return
        case _:
            yield from ast.iter_child_nodes(node)


def _comparison(node: ast.AST) -> _Found:
    if not isinstance(node, ast.Compare) or len(node.ops) != 1:
        return
    left, right = _in_brackets(node.left), _in_brackets(node.comparators[0])
    operator = type(node.ops[0])
    yield node, "comparison turned", f"{left} {_TURNED[operator]} {right}"
    if operator in _EDGE and (_counts(node.left) or _counts(node.comparators[0])):
        yield node, "edge moved", f"{left} {_EDGE[operator]} {right}"


def _counts(node: ast.expr) -> bool:
    """Whether a side of a comparison is a whole number, so that its edge is met."""
    match node:
        case ast.Constant(value=value):
            return type(value) is int and value != 0
        case ast.Call(func=ast.Name(id="len")):
            return True
        case _:
            return False


def _in_brackets(node: ast.expr) -> str:
    text = ast.unparse(node)
    return f"({text})" if isinstance(node, ast.BoolOp | ast.IfExp | ast.Compare) else text


def _arithmetic(node: ast.AST) -> _Found:
    if isinstance(node, ast.BinOp) and type(node.op) in _OPPOSITE:
        sides = node.left, node.right
        if any(_is_text(side) or _is_type(side) for side in sides) or _same_either_way(node):
            return
        left, right = (f"({ast.unparse(side)})" for side in sides)
        yield node, "arithmetic turned", f"({left} {_OPPOSITE[type(node.op)]} {right})"
    if isinstance(node, ast.AugAssign) and type(node.op) in (ast.Add, ast.Sub):
        sign = _OPPOSITE[type(node.op)]
        target, value = ast.unparse(node.target), ast.unparse(node.value)
        yield node, "arithmetic turned", f"{target} {sign}= {value}"


def _same_either_way(node: ast.BinOp) -> bool:
    """Whether the opposite sign gives an equal number: 25 + 0j, b * 1.0, b / -1.0.

    Not b + 0, which makes 0.0 of -0.0 as b - 0 does not; nor b * 1, which is whole where b is.
    """
    match node:
        case ast.BinOp(left=ast.Constant(value=left), op=ast.Add() | ast.Sub()):
            right = node.right.value if isinstance(node.right, ast.Constant) else None
            above = isinstance(left, int | float) and left > 0
            return above and isinstance(right, complex) and not right
        case ast.BinOp(op=ast.Mult() | ast.Div(), right=ast.Constant(value=right)):
            return type(right) is float and right == 1.0
        case ast.BinOp(op=ast.Mult() | ast.Div(), right=ast.UnaryOp(ast.USub(), one)):
            return isinstance(one, ast.Constant) and type(one.value) is float and one.value == 1.0
        case _:
            return False


def _is_text(node: ast.expr) -> bool:
    match node:
        case ast.JoinedStr() | ast.Constant(value=str()):
            return True
        case ast.BinOp(left=left, right=right):
            return _is_text(left) or _is_text(right)
        case _:
            return False


def _is_type(node: ast.expr) -> bool:
    """Whether it is a type, in a union of types."""
    match node:
        case ast.Constant(value=None):
            return True
        case ast.Name(id=name) | ast.Attribute(attr=name):
            return (name[:1].isupper() and not name.isupper()) or name in ("str", "int", "float")
        case ast.Subscript(value=value):
            return _is_type(value)
        case _:
            return False


def _logic(node: ast.AST) -> _Found:
    if isinstance(node, ast.BoolOp):
        word = " or " if isinstance(node.op, ast.And) else " and "
        parts = (f"({ast.unparse(value)})" for value in node.values)
        yield node, "and for or", f"({word.join(parts)})"
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not | ast.USub):
        yield node, "sign or not dropped", f"({ast.unparse(node.operand)})"


def _number(node: ast.Constant) -> _Found:
    if isinstance(node.value, bool):
        yield node, "truth turned", str(not node.value)
    elif isinstance(node.value, int) and node.value >= 100 and not node.value % 100:
        yield node, "number doubled", str(2 * node.value)  # a round bound, where one more is none
    elif isinstance(node.value, int):
        yield node, "off by one", str(node.value + 1)
    elif isinstance(node.value, float) and node.value >= 0.01:  # smaller ones are slack
        yield node, "number doubled", str(2 * node.value or 1.0)


def _condition(node: ast.AST) -> _Found:
    """A rule that never applies, a choice the other way, a filter that lets all through."""
    match node:
        case ast.If(test=ast.Name(id="TYPE_CHECKING")):
            return
        case ast.If(body=[*_, ast.Raise()]):
            yield node.test, "rule left out", "False"
        case ast.If():
            yield node.test, "rule left out", "False"
            yield node.test, "rule always", "True"
        case ast.IfExp():
            yield node.test, "choice turned", f"not ({ast.unparse(node.test)})"
        case ast.comprehension():
            yield from ((test, "filter left out", "True") for test in node.ifs)


def _call(node: ast.AST) -> _Found:
    if not isinstance(node, ast.Call):
        return
    name = _called(node.func)
    texts = [ast.unparse(argument) for argument in node.args]
    if name in _OTHER_NAME:
        function = ast.unparse(node.func)
        yield node.func, "other function", function[: -len(name)] + _OTHER_NAME[name]
    if any(isinstance(argument, ast.Starred) for argument in node.args):
        return
    lone = len(texts) == 1 and not node.keywords and isinstance(node.func, ast.Name)
    if lone and name not in _SAME_VALUE and name[:1].islower():
        yield node, "call dropped", f"({texts[0]})"
    if len(texts) == 2 and texts[0] != texts[1] and name not in _ANY_ORDER:
        keywords = [ast.unparse(keyword) for keyword in node.keywords]
        swapped = ", ".join([texts[1], texts[0], *keywords])
        yield node, "arguments swapped", f"{ast.unparse(node.func)}({swapped})"


def _called(function: ast.expr) -> str:
    match function:
        case ast.Name(id=name) | ast.Attribute(attr=name):
            return name
        case _:
            return ""


def _statement(node: ast.AST) -> _Found:
    match node:
        case ast.Expr(value=ast.Call()):
            yield node, "statement dropped", "pass"
        case ast.Continue():
            yield node, "loop ended", "break"
        case ast.Break():
            yield node, "loop not ended", "continue"


_CHANGES: Final[tuple[_Change, ...]] = (
    _comparison, _arithmetic, _logic, _condition, _call, _statement
)  # fmt: skip

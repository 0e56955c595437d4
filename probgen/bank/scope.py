"""The quantities a template has named so far, and expressions read over them."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from decimal import Decimal
from itertools import count
from typing import Any, Final, TypeVar

from probgen.bank.bounds import Interval
from probgen.bank.labels import Coined, Label, Sort
from probgen.input.table import Table
from probgen.quantities.dimension import (
    DimensionError,
    common_dimension,
    phrase,
    require_dimension,
)
from probgen.quantities.expression import FUNCTIONS, UNITY, Expression, Name, names_in
from probgen.quantities.parser import (
    Comparison,
    ExpressionError,
    UnknownNameError,
    parse,
    parse_comparison,
    parse_equation,
)
from probgen.quantities.unit import ACCELERATION, METRE_PER_SECOND_SQUARED, Dimension
from probgen.statics.system import Role, Variable

_GREEK: Final = (
    "alpha|beta|gamma|delta|epsilon|eta|theta|kappa|lambda|mu|nu|rho|sigma|tau|phi|psi|omega|"
    "Delta|Sigma|Phi|Omega|ell"
)
_SYMBOL: Final = re.compile(rf"(?:[A-Za-z]|{_GREEK})(?:_[A-Za-z0-9]{{1,6}})?")
_ID: Final = re.compile(r"[A-Za-z][A-Za-z0-9_]{0,39}")
GRAVITY: Final = Variable(Name("g", "g"), ACCELERATION, METRE_PER_SECOND_SQUARED, Role.CONSTANT)
_DECLARE: Final = (
    "what is not there yet stands below [given] with its range, or below [unknown] where it is "
    "looked for"
)
_FREE_FALL: Final = Label("g", Coined(Sort.FREE_FALL))

_Read = TypeVar("_Read")


@dataclass(slots=True)
class Scope:
    """Quantities by id, in the order they are named.

    labels: what each is called.
    doubtful: ids whose entry had a fault, so that what uses them is not blamed as well.
    whole: False once a part of the file could not be read; a name not found may be in that part.
    bounds: between which values a quantity is known to lie, coherent units.
    callings: the ids of quantities, by further names that expressions may use.
    """

    variables: dict[str, Variable] = field(default_factory=lambda: {"g": GRAVITY})
    labels: dict[str, Label] = field(default_factory=lambda: {"g": _FREE_FALL})
    doubtful: set[str] = field(default_factory=set)
    whole: bool = True
    bounds: dict[str, Interval] = field(default_factory=lambda: {"g": (0.1, 100.0)})
    callings: dict[str, str] = field(default_factory=dict)

    @property
    def names(self) -> dict[str, Name]:
        """What expressions may name."""
        names = {id: variable.as_name for id, variable in self.variables.items()}
        return names | {other: names[id] for other, id in self.callings.items()}

    def call(self, id: str, other: str) -> None:
        """Gives a quantity a second name, that of the weight it is (W_b beside bag_mass)."""
        if id != other:
            self.callings.setdefault(other, id)

    @property
    def symbols(self) -> frozenset[str]:
        """Every printed letter that is taken."""
        return frozenset(label.symbol for label in self.labels.values())

    def declare(self, variable: Variable, label: Label, table: Table, key: str = "symbol") -> None:
        """Adds a quantity and what it is called; its id and its symbol must be its own."""
        if not table.faulty(key):
            self._check_own(variable.id, label.symbol, table, key)
        self.variables.setdefault(variable.id, variable)
        self.labels.setdefault(variable.id, label)

    def _check_own(self, id: str, symbol: str, table: Table, key: str) -> None:
        taken = [other for other, label in self.labels.items() if label.symbol == symbol]
        if id in self.variables:
            another = f"choose another, such as {self._free(id)}"
            table.fault(key, id, "a name that nothing else has", another)
        elif taken and symbol:
            mend = f'{taken[0]} has this symbol; write symbol = "..."'
            table.fault(key, symbol, "a symbol that nothing else has", mend)

    def _free(self, id: str) -> str:
        """A name like one that is taken, with the next number: N_2 for N, as in a second state."""
        stem = id.partition("_")[0]
        names = (f"{stem}_{number}" for number in count(2))
        return next(each for each in names if each not in self.variables.keys() | self.symbols)

    def expression(
        self, table: Table, key: str, wanted: Dimension, value: Any = None
    ) -> Expression:
        """The expression under `key`, of the dimension wanted; a stand-in after a fault."""
        expected = f"an expression for {phrase(wanted)}"
        value = table.value(key, expected, True) if value is None else value
        if value is None:
            return UNITY
        if type(value) is int or isinstance(value, Decimal):
            value = str(value)
        if not isinstance(value, str):
            table.fault(key, value, expected, "write it in quotes")
            return UNITY
        read = self._read(table, key, value, parse, expected)
        if read is None:
            return UNITY
        if self._sure(read):
            try:
                require_dimension(read, self._dimensions, wanted)
            except DimensionError as error:
                table.fault(key, value, expected, str(error))
        return read

    def comparison(self, table: Table, key: str) -> Comparison | None:
        """The comparison under `key`; None after a fault."""
        return self._sides(table, key, parse_comparison, 'a comparison, such as "T < 1500 N"')

    def equation(self, table: Table, key: str) -> Comparison | None:
        """The equation under `key`; None after a fault."""
        return self._sides(table, key, parse_equation, 'an equation, such as "A.y = 2*B.y"')

    def _sides(
        self,
        table: Table,
        key: str,
        reader: Callable[[str, dict[str, Name]], Comparison],
        expected: str,
    ) -> Comparison | None:
        value = table.text(key, expected=expected)
        read = self._read(table, key, value, reader, expected) if value else None
        if read is not None and self._sure(read.left) and self._sure(read.right):
            try:
                common_dimension(read.left, read.right, self._dimensions)
            except DimensionError as error:
                table.fault(key, value, expected, str(error))
        return read

    @property
    def _dimensions(self) -> dict[str, Dimension]:
        return {id: variable.dimension for id, variable in self.variables.items()}

    def _sure(self, expression: Expression) -> bool:
        return not names_in(expression) & self.doubtful

    def _read(
        self,
        table: Table,
        key: str,
        text: str,
        reader: Callable[[str, dict[str, Name]], _Read],
        expected: str,
    ) -> _Read | None:
        try:
            return reader(text, self.names)
        except UnknownNameError as error:
            if self.whole:
                table.fault(key, text, expected, f"{error}; {_DECLARE}")
        except ExpressionError as error:
            table.fault(key, text, expected, str(error))
        return None


def read_symbol(table: Table, id: str) -> str:
    """The symbol of a quantity: as written, or its id where that is one short letter."""
    symbol = table.text("symbol", id)
    if _SYMBOL.fullmatch(symbol):
        return symbol
    found = symbol if table.has("symbol") else None
    mend = "" if found else f'"{id}" is no letter; add symbol = "..."'
    table.fault("symbol", found, SYMBOL_EXPECTED, mend)
    return ""


SYMBOL_EXPECTED: Final = 'a letter or Greek name with a short subscript, such as "m_1" or "theta"'


def is_symbol(text: str) -> bool:
    """Whether a text is a symbol in the short notation, such as "m_1"."""
    return bool(_SYMBOL.fullmatch(text))


def check_id(table: Table, id: str) -> bool:
    """Whether a name may be given to a quantity."""
    if _ID.fullmatch(id) and id not in FUNCTIONS and id != "g":
        return True
    mend = "choose another name" if id in FUNCTIONS or id == "g" else "use letters, digits and _"
    table.faults.add(table.path, id, "a name for a quantity, such as load_mass", mend)
    return False

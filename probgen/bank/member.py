"""The members of a truss: [[member]], straight bars from joint to joint.

    [[member]]
    along = ["A", "C", "E"]      two members, AC and CE

All members of a body make its truss.  The force in each is an unknown of its own, F_AC, positive
where the member pulls at its joints: tension.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from probgen.bank.direction import direction_between
from probgen.bank.labels import Coined, Label, Lettered, Piece, Sort
from probgen.bank.scope import is_symbol
from probgen.bank.situation import Situation
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.quantities.unit import NEWTON
from probgen.statics.quantity_id import back_id
from probgen.statics.system import Body, Member
from probgen.statics.truss import walk

_LETTER: Final = "F"
TRUSS: Final = "truss"
"""The id of the body that members make where the file names none."""


def read_members(rows: Sequence[Table], situation: Situation) -> None:
    """Reads every [[member]], and makes trusses of the bodies that have some."""
    for row in rows:
        _read_row(row, situation)
    situation.bodies = tuple(_with_members(body, situation.members) for body in situation.bodies)
    for body in situation.bodies if rows and situation.scope.whole else ():
        if not body.outline:
            rows[0].faults.add(
                f"body.{body.id}", None, "along, or members", f'[[member]] body = "{body.id}"'
            )


def _with_members(body: Body, members: Sequence[Member]) -> Body:
    own = [member for member in members if member.body == body.id]
    joints = dict.fromkeys(at for member in own for at in (member.start, member.end))
    return replace(body, outline=walk(own), joints=tuple(joints)) if own else body


def _read_row(row: Table, situation: Situation) -> None:
    body, letter = situation.body(row), row.text("symbol", _LETTER)
    if any(each.id == body and each.outline for each in situation.bodies):
        expected = "a body of members alone"
        row.fault("body", body, expected, f"leave along and particle out of [body.{body}]")
    for one, other in pairwise(_read_joints(row, situation)):
        _add_member(row, situation, body, letter, (min(one, other), max(one, other)))
    situation.finish(row)


def _read_joints(row: Table, situation: Situation) -> Sequence[str]:
    """The joints a row of members runs through; none after a fault."""
    joints = row.texts("along", required=True)
    for place, name in enumerate(joints):
        if name not in situation.points:
            expected = one_of(situation.points, "the points ")
            row.fault(f"along[{place}]", name, expected, nearest(name, situation.points))
    if len(joints) == 1 or any(one == other for one, other in pairwise(joints)):
        expected = "two joints or more, each another than the one before"
        row.fault("along", list(joints), expected, 'along = ["A", "B", "C"]')
        return ()
    if not joints or not set(joints) <= situation.points.keys():
        situation.scope.whole = False
        return ()
    return joints


def _add_member(
    row: Table, situation: Situation, body: str, letter: str, joints: tuple[str, str]
) -> None:
    """The member between two joints, in the order of the alphabet, with its force declared."""
    start, end = joints
    symbol = f"{letter}_{start}{end}"
    if not is_symbol(symbol):
        expected = "a letter for the forces, and joints of a letter each"
        row.fault("symbol", symbol, expected, 'joints are best lettered "A", "B", "C", ...')
        situation.scope.whole = False
        return
    if any({start, end} == member.ends for member in situation.members):
        row.fault("along", f"{start}{end}", "a member that is not there yet", "leave one out")
        return
    named = Lettered(Piece.MEMBER, joints)
    force = situation.unknown(row, symbol, NEWTON, Coined(Sort.MEMBER_FORCE, named))
    for id in (symbol, back_id(symbol)):
        situation.named.setdefault(id, Label(symbol, named))
    direction = direction_between(situation.points[start], situation.points[end], situation.scope)
    situation.members.append(Member(body, start, end, force, direction))

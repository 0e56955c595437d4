"""A template file read: TOML text in, a `Template` with its system out, or every fault at once."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace
from typing import Final

from probgen.bank.customary import in_units, require_units, systems_of
from probgen.bank.depiction import Depictions
from probgen.bank.depicts import carried, read_depicts
from probgen.bank.diagram import read_diagrams
from probgen.bank.element import READERS
from probgen.bank.finds import read_finds
from probgen.bank.labels import Labels, told_apart
from probgen.bank.lettering import lettered, names_lettered
from probgen.bank.link import find_links
from probgen.bank.member import TRUSS, read_members
from probgen.bank.origin import read_origin
from probgen.bank.points import read_point, read_points
from probgen.bank.proportions import read_picture
from probgen.bank.quantity import check_used, read_derived, read_givens, read_unknowns
from probgen.bank.requirements import read_conditions, read_limits, read_requirements
from probgen.bank.scope import Scope, is_symbol
from probgen.bank.situation import Situation
from probgen.bank.statement import check_statement
from probgen.bank.template import Template
from probgen.input.fault import Faults, nearest, one_of
from probgen.input.table import Table
from probgen.input.time_limit import within
from probgen.input.toml import parse_toml
from probgen.quantities.expression import number
from probgen.quantities.unit import METRE, SI, UnitSystem
from probgen.statics.system import Body, Find, Kind, Link, System

FAMILIES: Final = (
    "particles",
    "levers",
    "limbs",
    "beams",
    "ladders",
    "loads",
    "friction",
    "structures",
)
VIEWS: Final = ("side", "plan")
WAYS_APART: Final = ("joints", "sections")
CAUTIONS: Final = ("body", "design", "ladder", "lifting", "rigging")
_SECONDS: Final = 4.0
"""Of processor time for reading; the supplied templates take some hundredths."""
_ID: Final = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
_BODY_ID: Final = re.compile(r"[A-Za-z][A-Za-z0-9_-]{0,39}")


_TOP: Final = (
    *("id", "revision", "title", "family", "level", "goals", "statement", "cautions", "pivot"),
    *("minutes", "origin", "member", "by", "whole"),
    *("given", "derived", "unknown", "points", "body", "depicts", "picture", "view"),
    *("find", "require", "condition", "share", "limit", "diagram"),
)
_TOUCHING: Final = ("contact", "rough", "roller", "fulcrum")
_QUANTITIES: Final = ("given", "derived", "unknown")


def read_template(text: str, where: str, units: UnitSystem = SI) -> Template:
    """The template a TOML text describes, in one system of units; `where` names it in messages.

    Raises InputError with every fault there is.
    """
    with within(_SECONDS, where, "reading it"):
        return _read(text, where, units)


def in_each_system(template: Template) -> Iterator[Template]:
    """A template, and then as it is in each other system of units that it is written for.

    Raises InputError where it has faults in one of these.
    """
    yield template
    for units in systems_of(parse_toml(template.source, template.path)):
        if units != template.units:
            yield read_template(template.source, template.path, units)


def _read(text: str, where: str, units: UnitSystem) -> Template:
    faults = Faults(where)
    top = Table(in_units(parse_toml(text, where), units, faults), "", faults)
    scope = Scope()
    top.expect(*_TOP, *READERS)
    scope.whole = top.close() and all(_is_table_of_tables(top, key) for key in _QUANTITIES)
    givens = read_givens(top.table("given"), scope)
    derived = read_derived(top.table("derived"), scope)
    picture = read_picture(top.table("picture"), scope)
    read_unknowns(top.table("unknown"), scope)
    situation = _read_situation(top, scope)
    finds = read_finds(top, situation)
    scaled = not top.content.get("picture")
    diagrams, to_draw = read_diagrams(top.tables("diagram"), situation, to_scale=scaled)
    given = (*(each.id for each in givens), *(each.id for each in derived))
    depicts = read_depicts(top.table("depicts"), situation)
    template = Template(
        id=_read_id(top),
        revision=top.whole("revision", 1, 1_000_000),
        title=top.text("title"),
        family=top.word("family", FAMILIES),
        level=top.whole("level", 1, 5),
        goals=top.texts("goals", required=True),
        statement=_read_statement(top, situation),
        givens=givens,
        derived=derived,
        system=replace(
            lettered(
                _system(situation, finds, _read_pivot(top, situation), given, _read_by(top)),
                situation.points,
            ),
            diagrams=diagrams,
            to_draw=to_draw,
        ),
        labels=names_lettered(_labels(top, situation, depicts), situation.points, faults),
        requirements=lettered(read_requirements(top, situation, finds), situation.points),
        cautions=_read_cautions(top),
        depicts=depicts,
        picture=picture,
        source=text,
        path=where,
        units=units,
        origin=read_origin(top),
        varying=frozenset(situation.varying),
    )
    require_units(template.id, units, (*givens, *derived), faults)
    faults.settle()
    return template


def _is_table_of_tables(top: Table, key: str) -> bool:
    content = top.content.get(key, {})
    return isinstance(content, dict) and all(isinstance(v, dict) for v in content.values())


def _read_situation(top: Table, scope: Scope) -> Situation:
    points = top.table("points")
    situation = Situation(scope, read_points(points, scope), frozenset(_letters(top.content)))
    members = top.tables("member")
    situation.bodies = _read_bodies(top, top.table("body"), situation, trusses=bool(members))
    read_members(members, situation)
    for kind, reader in READERS.items():
        for row in top.tables(kind):
            reader(row, situation)
            situation.finish(row)
    if any(top.faulty(kind) for kind in READERS):
        scope.whole = False
    if scope.whole:
        find_links(top, situation)
    read_conditions(top, situation)
    read_limits(top, situation)
    _check_letters(points, situation)
    if not top.faults.found:  # else what uses an unknown may be what could not be read
        check_used(top.table("unknown"), situation.names_used)
    return situation


def _letters(content: object) -> Iterator[str]:
    """Every text in a file that could be a symbol."""
    if isinstance(content, str) and is_symbol(content):
        yield content
    elif isinstance(content, dict | list):
        inner = content.values() if isinstance(content, dict) else content
        for each in inner:
            yield from _letters(each)


def _read_bodies(
    top: Table, table: Table, situation: Situation, *, trusses: bool
) -> tuple[Body, ...]:
    """trusses: whether a body may be left to its members."""
    bodies: list[Body] = []
    pins = _pinned_at(top)
    for id, row in table.rows():
        if not _BODY_ID.fullmatch(id):
            table.fault(id, id, "a name of letters, digits, _ and -")
        particle = row.flag("particle")
        if particle and not row.has("along") and pins.get(id) in situation.points:
            outline: tuple[str, ...] = (pins[id],)
        elif particle and not row.has("along"):
            # Particles nobody placed stand side by side, the first at the origin.
            away = Link(number(len(bodies), METRE), number(0))
            outline = (situation.add_point("P", [away] if bodies else []),)
            situation.nowhere[outline[0]] = id
        elif trusses and not particle and not row.has("along"):
            outline = ()
        else:
            outline = _read_outline(row, situation.points, particle)
        bodies.append(Body(id, outline, particle))
        situation.nouns[id] = row.text("name", id)
        row.close()
    if not table.content and trusses:
        bodies.append(Body(TRUSS, ()))
        situation.nouns[TRUSS] = TRUSS
    elif not table.content:
        table.faults.add("body", None, "a body", 'add [body.shelf] and along = ["A", "B"]')
    return tuple(bodies)


def _pinned_at(top: Table) -> dict[str, str]:
    """Where a hinge says that it holds a body, or the one contact that it touches another at: a
    particle nobody placed is there.
    """
    pins, touching = (dict(_places_named(top, kinds)) for kinds in (("hinge",), _TOUCHING))
    several = {body for body, at in _places_named(top, _TOUCHING) if touching[body] != at}
    return {**{body: at for body, at in touching.items() if body not in several}, **pins}


def _places_named(top: Table, kinds: Sequence[str]) -> Iterator[tuple[str, str]]:
    """The bodies that elements of some kinds name, each with the point they act at; of contacts
    those between two bodies.
    """
    for kind in kinds:
        rows = top.content.get(kind, [])
        for row in rows if isinstance(rows, list) else []:
            if not isinstance(row, dict) or (kind in _TOUCHING and "other" not in row):
                continue
            for key in ("body", "other"):
                body, at = row.get(key), row.get("at")
                if isinstance(body, str) and isinstance(at, str):
                    yield body, at


def _read_outline(row: Table, points: Collection[str], particle: bool) -> tuple[str, ...]:
    outline = row.texts("along", required=True)
    for place, name in enumerate(outline):
        if name not in points:
            expected = one_of(points, "the points ")
            row.fault(f"along[{place}]", name, expected, nearest(name, points))
    if len(outline) == 1 and not particle:
        row.fault("along", outline, "two points or more", "or write particle = true")
    if len(outline) > 1 and particle:
        row.fault("along", outline, "the one point of a particle", "or leave particle out")
    return outline


def _check_letters(table: Table, situation: Situation) -> None:
    """A point and a quantity of the same letter would be taken for each other."""
    symbols = situation.scope.symbols | {label.symbol for label in situation.named.values()}
    for name in situation.points:
        if name in symbols:
            table.fault(name, name, "a letter no quantity is printed with", "rename the point")


def _read_pivot(top: Table, situation: Situation) -> str:
    return read_point(top, "pivot", situation.points) if top.has("pivot") else ""


def _read_by(top: Table) -> str:
    """How the trusses are worked, "" for the shorter way."""
    return top.word("by", WAYS_APART) if top.has("by") else ""


def _read_whole(top: Table, situation: Situation) -> str:
    """What all bodies together are called, "" where the author does not say."""
    whole = top.text("whole", "")
    if whole and len(situation.bodies) < 2:
        top.fault("whole", whole, "several bodies that it is made of", "leave it out")
    return whole


def _read_cautions(top: Table) -> tuple[str, ...]:
    cautions = top.texts("cautions")
    for place, word in enumerate(cautions):
        if word not in CAUTIONS:
            top.fault(f"cautions[{place}]", word, one_of(CAUTIONS), nearest(word, CAUTIONS))
    return cautions


def _read_statement(top: Table, situation: Situation) -> str:
    quantities = situation.scope.variables
    formulas = [each.id for each in situation.elements if each.spread and each.spread.intensity]
    return check_statement(top, "statement", situation.names_to_tell, quantities, formulas)


def _system(
    situation: Situation,
    finds: tuple[Find, ...],
    pivot: str,
    given: tuple[str, ...],
    by: str,
) -> System:
    return System(
        variables=situation.scope.variables,
        definitions=tuple(situation.definitions),
        points=situation.points,
        bodies=situation.bodies,
        forces=tuple(situation.forces),
        couples=tuple(situation.couples),
        elements=tuple(situation.elements),
        conditions=tuple(situation.conditions),
        limits=tuple(situation.limits),
        finds=finds,
        pivot=pivot,
        given=given,
        members=tuple(situation.members),
        by=by,
        largest=tuple(situation.largest),
    )


def _labels(top: Table, situation: Situation, depicts: Depictions) -> Labels:
    return Labels(
        quantities=told_apart(situation.scope.labels, situation.forces, situation.bodies),
        elements=situation.named,
        bodies=situation.nouns,
        limits=situation.events,
        reasons=situation.reasons,
        finds=situation.wordings,
        plan=_is_plan(top, situation),
        carried=carried(depicts),
        together=_read_whole(top, situation),
    )


def _is_plan(top: Table, situation: Situation) -> bool:
    """Whether all is seen from above, y to the north; weights, which point away, then have none."""
    plan = top.word("view", VIEWS, VIEWS[0]) == "plan"
    if plan and any(force.kind in (Kind.WEIGHT, Kind.HOLE) for force in situation.forces):
        top.fault("view", "plan", "a situation without weights", "leave view out, or the weights")
    return plan


def _read_id(top: Table) -> str:
    expected = 'small letters, digits and hyphens, such as "shelf-stay-cable"'
    id = top.text("id", expected=expected)
    if id and not _ID.fullmatch(id):
        top.fault("id", id, expected)
    return id

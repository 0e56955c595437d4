"""Bodies taken as one: a body more, on which only what comes from outside acts.

What acts from outside keeps its id there, as the loads of a truss do on its parts; the forces
between the bodies cancel in pairs and are left out.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from probgen.statics.quantity_id import whole_id
from probgen.statics.system import Body, Couple, Force, System


@dataclass(frozen=True, slots=True)
class Whole(Body):
    """Bodies taken as one; made_of: their ids.  It is a particle where all of them are."""

    made_of: tuple[str, ...] = ()


def made_of(body: Body) -> tuple[str, ...]:
    """The bodies that one stands for, as a balance names them: itself, or those taken as one."""
    return body.made_of if isinstance(body, Whole) else (body.id,)


def whole_of(system: System, bodies: tuple[str, ...]) -> Body:
    """The body that a balance is of, one or several taken as one."""
    if len(bodies) == 1:
        return system.body(bodies[0])
    parts = [system.body(id) for id in bodies]
    particle = all(part.particle for part in parts)
    outline = parts[0].outline if particle else sum((part.outline for part in parts), ())
    return Whole(whole_id(bodies), outline, particle, made_of=bodies)


def with_wholes(system: System, bodies: Sequence[Body]) -> System:
    """The system with its wholes beside its bodies, in the order in which bodies are told.

    bodies: those that are told, wholes among them; others follow.  The forces on bodies are in that
    order too, so that of a pair the first is told first; those on the wholes come last.
    """
    wholes = [body for body in bodies if isinstance(body, Whole)]
    single = [body for body in bodies if body not in wholes]
    others = [body for body in system.bodies if body not in single]
    places = {body.id: place for place, body in enumerate((*single, *others))}
    forces = sorted(system.forces, key=lambda force: places[force.body])
    outer = {whole.id: list(_outer_forces(system, whole)) for whole in wholes}
    return replace(
        system,
        bodies=(*bodies, *others),
        forces=(*forces, *(force for whole in wholes for force in outer[whole.id])),
        couples=(
            *system.couples,
            *(
                replace(couple, body=whole.id)
                for whole in wholes
                for couple in turning_on(system, whole.made_of)
            ),
        ),
        elements=(
            *system.elements,
            *(
                replace(element, body=whole.id, forces=kept)
                for whole in wholes
                for element in system.elements
                if element.body in whole.made_of
                and (kept := _kept(element.forces, outer[whole.id])) is not None
            ),
        ),
    )


def acting_on(
    system: System, bodies: Collection[str]
) -> tuple[tuple[Force, ...], tuple[Force, ...]]:
    """The forces on bodies from outside, and those between them, on both bodies of each pair."""
    on = [force for force in system.forces if force.body in bodies]
    ids = {force.id for force in on}
    return (
        tuple(force for force in on if force.pair not in ids),
        tuple(force for force in on if force.pair in ids),
    )


def turning_on(system: System, bodies: Collection[str]) -> tuple[Couple, ...]:
    """The couples on bodies from outside."""
    on = [couple for couple in system.couples if couple.body in bodies]
    ids = {couple.id for couple in on}
    return tuple(couple for couple in on if couple.pair not in ids)


def turned(system: System, bodies: Collection[str]) -> bool:
    """Whether torques are taken on bodies: not on particles alone.

    Beside bodies with extent a particle is where it touches them, as the pin of two legs is: all
    that acts on it does so there.
    """
    particles = [body for body in bodies if system.body(body).particle]
    _, between = acting_on(system, bodies)
    touching = {force.pair: force.point for force in between}
    where: dict[str, set[str]] = {}
    for force in system.forces:
        if force.body in particles:
            where.setdefault(force.body, set()).update(
                (force.point, touching.get(force.id, force.point))
            )
    return len(particles) < len(bodies) and all(len(points) == 1 for points in where.values())


def told_before(system: System, body: Body) -> tuple[Body, ...]:
    """The bodies told before one, in a system with its wholes; none in a system without any."""
    if not any(isinstance(each, Whole) for each in system.bodies):
        return ()
    return system.bodies[: system.bodies.index(body)]


def _outer_forces(system: System, whole: Whole) -> Iterator[Force]:
    """What acts from outside; on a particle all at its one point."""
    outer, _ = acting_on(system, whole.made_of)
    for force in outer:
        yield replace(
            force, body=whole.id, point=whole.outline[0] if whole.particle else force.point
        )


def _kept(forces: Iterable[str], outer: Iterable[Force]) -> tuple[str, ...] | None:
    """The forces of an element that act from outside; None where it exerts none but between."""
    own = tuple(forces)
    kept = tuple(id for id in own if id in {force.id for force in outer})
    return kept if kept or not own else None

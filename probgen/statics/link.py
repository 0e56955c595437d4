"""Two-force members of frames and machines: bars pinned at both ends that carry nothing else.

A link is read as a body with two pins, whose components follow from one force along it.  For the
plan its pins give way to that force: at each end it pulls what it is pinned to toward its other
end, and is pulled the opposite way itself; a negative force pushes.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from probgen.statics.geometry import opposite
from probgen.statics.quantity_id import back_id, pull_id
from probgen.statics.system import Body, Element, Force, Kind, Member, System


def links_of(system: System) -> tuple[Member, ...]:
    """The two-force members that are bodies of their own, not bars of a truss."""
    trusses = {body.id for body in system.bodies if body.joints}
    return tuple(member for member in system.members if member.body not in trusses)


def is_link(system: System, body: Body) -> bool:
    """Whether nothing acts on a body but the pull along it at each end, once links are taken."""
    acting = [force for force in system.forces if force.body == body.id]
    return bool(acting) and all(force.kind is Kind.LINK for force in acting) and not body.particle


def along_links(system: System) -> System:
    """The system with one force along each link in the place of its pins' components."""
    links = links_of(system)
    for link in links:
        system = _with_pull(system, link)
    return replace(system, members=tuple(m for m in system.members if m not in links))


def _with_pull(system: System, link: Member) -> System:
    pins = [element for element in system.elements if element.body == link.body]
    joined = {pin.id: joined_to(system.elements, pin) for pin in pins}
    pins.sort(key=lambda pin: not joined[pin.id])  # what another body feels has the force's id
    forces: dict[str, Force] = {}
    elements: dict[str, Element] = {}
    for place, pin in enumerate(pins, 1):
        id = link.force.id if place == 1 else pull_id(link.force.id, place)
        for force, element in _pulls(link, pin, joined[pin.id], id):
            forces[element.id], elements[element.id] = force, element
    others = (force for force in system.forces if force.element not in elements)
    return replace(
        system,
        forces=(*others, *forces.values()),
        elements=tuple(elements.get(each.id, each) for each in system.elements),
    )


def _pulls(
    link: Member, pin: Element, joined: Element | None, id: str
) -> Iterator[tuple[Force, Element]]:
    """The pull on what the link is pinned to, and the equal and opposite one on the link."""
    at_start = pin.at == link.start
    far = link.end if at_start else link.start
    inward = link.direction if at_start else opposite(link.direction)
    back = back_id(id)
    size, kind = link.force, Kind.LINK
    if joined is not None:
        pull = Force(id, joined.body, joined.at, size, inward, kind, joined.id, pair=back)
        yield pull, replace(joined, kind=kind, toward=far, forces=(id,))
    pair = id if joined is not None else ""
    own = Force(back, link.body, pin.at, size, opposite(inward), kind, pin.id, pair=pair)
    yield own, replace(pin, kind=kind, forces=(back,))


def joined_to(elements: Iterable[Element], pin: Element) -> Element | None:
    """The same pin as another body has it; None where it is held from outside."""
    return next((each for each in elements if each.id == pin.of or each.of == pin.id), None)


def whole_links(system: System, bodies: Collection[str]) -> bool:
    """Whether bodies taken together hold a link just where they hold all that it joins.

    One that reaches out of them is no better than its pull, which acts on them already.
    """
    for body in system.bodies:
        if not is_link(system, body):
            continue
        own = [force for force in system.forces if force.body == body.id]
        joined = {force.body for force in system.forces if force.pair in {f.id for f in own}}
        inside = all(force.pair for force in own) and joined <= set(bodies)
        if (body.id in bodies) != inside:
            return False
    return True

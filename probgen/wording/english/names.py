"""What things go by in English: an author's own nouns with their articles, and ours.

The letters of points and axes in them are marked (`probgen.quantities.symbol`), and become formulas
where a fact has been said (`probgen.wording.language`).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, assert_never

from probgen.bank.labels import (
    BodyNamed,
    ByKind,
    Called,
    Coined,
    Lettered,
    Piece,
    Reason,
    Slipping,
    Sort,
)
from probgen.quantities.symbol import italic
from probgen.wording.nouns import Nouns

X: Final = italic("x")
Y: Final = italic("y")
_ARTICLES: Final = ("the", "a", "an", "your", "one", "each", "every", "both", "")
_KINDS: Final = {
    ByKind.HINGE: "hinge",
    ByKind.SUPPORT: "support",
    ByKind.PART_CUT_OFF: "part cut off",
    ByKind.ROLLER: "roller",
    ByKind.SURFACE: "surface",
    ByKind.FULCRUM: "fulcrum",
    ByKind.CABLE: "cable",
    ByKind.MUSCLE: "muscle",
    ByKind.STRUT: "strut",
    ByKind.SPRING: "spring",
    ByKind.ROPE: "rope",
    ByKind.FORCE: "force",
    ByKind.COUPLE: "couple",
    ByKind.LOAD: "load",
}
_COINED: Final = {
    Sort.TENSION: "tension in {of}",
    Sort.LEVEL_PART: "horizontal part of the tension",
    Sort.PULL: "pull of {of}",
    Sort.PUSH: "push of {of}",
    Sort.SPRING_FORCE: "force of {of}",
    Sort.SUPPORT_FORCE: "force from {of}",
    Sort.X_COMPONENT: f"{X}-component of the force from {{of}}",
    Sort.Y_COMPONENT: f"{Y}-component of the force from {{of}}",
    Sort.COUPLE: "couple from {of}",
    Sort.NORMAL_FORCE: "normal force from {of}",
    Sort.FRICTION: "friction from {of}",
    Sort.LEAST_COEFFICIENT: "least coefficient of static friction",
    Sort.AXIAL_FORCE: "axial force at {at}",
    Sort.SHEAR_FORCE: "shear force at {at}",
    Sort.BENDING_MOMENT: "bending moment at {at}",
    Sort.LARGEST_MOMENT: "largest bending moment in {of}",
    Sort.LARGEST_MOMENT_PLACE: "distance from {at} to the largest bending moment",
    Sort.APPLIED_FORCE: "force from {of}",
    Sort.WEIGHT: "weight of {of}",
    Sort.RESULTANT: "resultant of {of}",
    Sort.CENTRE_X: f"{X}-coordinate of the centre of mass",
    Sort.CENTRE_Y: f"{Y}-coordinate of the centre of mass",
    Sort.MEMBER_FORCE: "force in {of}",
    Sort.FREE_FALL: "acceleration of free fall",
    Sort.ALONG_LOAD: "distance along the load",
    Sort.INTENSITY: "load per length of {of}",
    Sort.CENTROID: "distance of the resultant of {of}",
    Sort.TORQUE: "{turning} about {at}, counter-clockwise positive",
    Sort.CROSSING: "distance from {at} to the line of action of {of}, positive {way}",
}
_ALONE: Final = {
    (Sort.APPLIED_FORCE, ByKind.FORCE): "the force",
    (Sort.COUPLE, ByKind.COUPLE): "the couple",
}
"""What is no more than a force or a couple."""
_FORCE_NOUNS: Final = ("force", "push", "pull", "thrust", "load")
_OWN_NOUNS: Final = {Sort.APPLIED_FORCE: _FORCE_NOUNS, Sort.COUPLE: ("couple",)}
"""What a name says already where it ends so: "the second push", not "the force from" it."""
_REASONS: Final = {
    Reason.RATIO_STATED: "the problem says how these two share the load",
    Reason.SLIDES_STEADILY: "while it slides, friction is the coefficient times the normal push",
    Reason.VERGE_OF_SLIPPING: (
        "on the verge of slipping, static friction has its largest value, the coefficient times "
        "the normal push"
    ),
    Reason.FRICTION_AT_LIMIT: "friction is the coefficient times the normal push",
    Reason.LEAST_COEFFICIENT: (
        "static friction can be at most the coefficient times the normal push. With the least "
        "coefficient that will do, it reaches this"
    ),
    Reason.CENTRE_OF_MASS: (
        "the centre of mass of several parts is the mean of their positions, each weighted by the "
        "part's share of the whole"
    ),
    Reason.CENTRE_WITH_HOLES: (
        "the centre of mass of several parts is the mean of their positions, each weighted by the "
        "part's share of the whole; what is cut out is taken away from both sums"
    ),
    Reason.CENTRE_SHARED: (
        "all parts have this coordinate of their centres in common, so the whole has it too"
    ),
    Reason.LOAD_ON_PART: "how much of the load acts on the part depends on how long it is",
    Reason.LARGEST_MOMENT: "this is where the bending moment is largest, as was seen",
    Reason.TORQUE: (
        "each force turns with its size times its lever arm, counter-clockwise counted positive"
    ),
    Reason.SAME_TORQUE: (
        "the resultant turns as much as all of them together, so it acts at such a distance that "
        "its own {turning} is theirs"
    ),
}


def the(noun: str) -> str:
    """A noun as sentences use it: "the cable"; left alone when it has an article already."""
    return noun if noun.split(" ", 1)[0].lower() in _ARTICLES else f"the {noun}"


def is_named(name: str, nouns: Sequence[str] = _FORCE_NOUNS) -> bool:
    """Whether a name says itself that it is a force: "the second push"."""
    return name.rsplit(" ", 1)[-1] in nouns


def the_called(name: Called, nouns: Nouns) -> str:
    """ "the cable", "your forearm", "member AB"."""
    match name:
        case Lettered(Piece.PART):
            return f"the {called(name, nouns)}"
        case Lettered():
            return called(name, nouns)
        case BodyNamed(body):
            return the_body(body, nouns)
        case _:
            return the(called(name, nouns))


def called(name: Called, nouns: Nouns) -> str:
    """A name without an article of ours: "cable", "tension in the cable"."""
    match name:
        case str():
            return name
        case ByKind():
            return _KINDS[name]
        case BodyNamed(body):
            return called(nouns.body(body), nouns)
        case Coined(sort, of, at, line):
            if isinstance(of, ByKind) and (sort, of) in _ALONE:
                return _ALONE[sort, of]
            if isinstance(of, str) and is_named(of, _OWN_NOUNS.get(sort, ())):
                return of
            pattern = _COINED[sort]
            if at and "{at}" not in pattern:
                pattern += " at {at}"
            by, way = the_called(of, nouns), _way(line, nouns)
            return pattern.format(of=by, at=italic(at), turning=nouns.turning, way=way)
        case Lettered(piece, joints):
            return _lettered(piece, joints)
        case _:
            assert_never(name)


def _way(line: tuple[str, ...], nouns: Nouns) -> str:
    """Which way a distance is counted: between two points, or as x is."""
    if line:
        return f"from {italic(line[0])} toward {italic(line[1])}"
    return "to the east" if nouns.labels.plan else "to the right"


def _lettered(piece: Piece, joints: Sequence[str]) -> str:
    """ "member AB", "joint A", "part ABC"."""
    letters = italic("".join(joints))
    match piece:
        case Piece.MEMBER:
            return f"member {letters}"
        case Piece.JOINT:
            return f"joint {italic(joints[0])}"
        case Piece.PART:
            return f"part {letters}"


def the_body(id: str, nouns: Nouns) -> str:
    """ "the shelf", "your forearm"."""
    return the_called(nouns.body(id), nouns)


def the_element(id: str, nouns: Nouns) -> str:
    """What exerts a force: "the cable"."""
    return the_called(nouns.element(id), nouns)


def the_members(ids: Sequence[str], nouns: Nouns) -> str:
    """ "member AB", "members AB, BC and CD"."""
    named = (nouns.element(id) for id in ids)
    letters = [italic("".join(name.joints)) for name in named if isinstance(name, Lettered)]
    if len(letters) == 1:
        return f"member {letters[0]}"
    return f"members {', '.join(letters[:-1])} and {letters[-1]}"


def the_couple(id: str, nouns: Nouns) -> str:
    """What exerts a couple: "the motor"."""
    return the_called(nouns.couple(id), nouns)


def quantity(id: str, nouns: Nouns) -> str:
    """ "shelf mass", "tension in the cable"."""
    return called(nouns.quantity(id), nouns)


def limit(id: str, nouns: Nouns) -> str:
    """What happens beyond a limit: "the foot slips"."""
    match nouns.limit(id):
        case Slipping(body, on):
            return f"{the_body(body, nouns)} slips on {the_called(on, nouns)}"
        case str(words):
            return words


def reason(id: str, nouns: Nouns) -> str:
    """Why a condition holds, in a sentence without its end."""
    match nouns.reason(id):
        case Reason() as ours:
            return _REASONS[ours].format(turning=nouns.turning)
        case str(words):
            return words

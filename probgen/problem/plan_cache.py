"""Plans kept on disk between runs, by what they were made from.

A plan follows from the system, the method and the engine's own code alone; its file is named after
a hash of all three, so that a changed template, method or release never meets an old plan.
"""

from __future__ import annotations

import hashlib
import pickle
from contextlib import suppress
from functools import cache
from pathlib import Path

from probgen.bank.template import Template
from probgen.input.cache_folder import cache_folder, cached_bytes
from probgen.input.file import write_beside
from probgen.problem.problem import Problem, prepare
from probgen.statics.plan import Plan
from probgen.working.convention import Convention

_ENGINE = ("quantities", "statics")


def prepared(template: Template, convention: Convention) -> Problem:
    """The problem as `prepare` makes it, its plan taken from the user's cache where it is there.

    Raises InputError when the situation cannot be solved as stated.
    """
    file = plans_folder() / f"{_mark(template, convention)}.plan"
    plan = _kept(file)
    if plan is not None:
        return Problem(template, plan, convention)
    problem = prepare(template, convention)
    _keep(file, problem.plan)
    return problem


def plans_folder() -> Path:
    """Where plans are kept: in the user's cache folder."""
    return cache_folder("plans")


def _mark(template: Template, convention: Convention) -> str:
    mark = hashlib.blake2b(_engine(), digest_size=16)
    mark.update(pickle.dumps((template.system, template.givens, template.derived)))
    mark.update(repr((convention.torque, convention.positive, convention.axes)).encode())
    mark.update(convention.gravity.encode())
    return mark.hexdigest()


@cache
def _engine() -> bytes:
    """A hash of the code that makes plans."""
    mark = hashlib.blake2b(digest_size=32)
    package = Path(__file__).resolve().parents[1]
    for room in _ENGINE:
        for path in sorted((package / room).glob("*.py")):
            mark.update(path.name.encode())
            mark.update(path.read_bytes())
    return mark.digest()


def _kept(file: Path) -> Plan | None:
    """The plan in a file; None when there is none, or none that can be read."""
    try:
        plan = pickle.loads(cached_bytes(file) or b"")
    except Exception:  # a file cut short or of another Python makes pickle raise nearly anything
        return None
    return plan if isinstance(plan, Plan) else None


def _keep(file: Path, plan: Plan) -> None:
    """Writes a plan; where that cannot be done, it is left."""
    with suppress(OSError):
        write_beside(file, pickle.dumps(plan))

"""What is kept of a paper: each problem its own numbers, each code its own text."""

from __future__ import annotations

from dataclasses import replace

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.issue import Erratum, FrozenTemplate, Issue
from probgen.course.record import Record
from probgen.course.succession import succeed
from probgen.course.wanted import Wanted
from probgen.working.convention import Convention
from tests.terms import begun, class_of, lamp, new_record, on, problem_of

SIGN = lamp("A sign of", low="20.0", high="60.0").replace('id = "lamp"', 'id = "sign"')


def wanted(count: int, lamp_text: str = "A lamp of", sign: str = SIGN) -> Wanted:
    """A lamp of 2 kg to 6 kg and, as a rule, a sign of 20 kg to 60 kg, for so many students."""
    problems = tuple(problem_of(source, Convention()) for source in (lamp(lamp_text), sign))
    assigned = tuple(Assigned(problem.template.id, 8) for problem in problems)
    chosen = ProblemSet("Mechanics", "Week 1", "class.csv", assigned)
    frozen = tuple(FrozenTemplate(p.template.id, 1, p.template.source) for p in problems)
    issue = Issue(chosen, frozen)
    return Wanted(issue, tuple(class_of(count)), problems, "week-1.toml", "class.csv")


def masses(record: Record, place: int) -> list[float]:
    return [float(edition.draws[place].values["m"].value) for edition in record.current]


def test_numbers_are_kept_template_by_template() -> None:
    record, _ = succeed(new_record(), wanted(6))
    assert max(masses(record, 0)) <= 6.0
    assert min(masses(record, 1)) >= 20.0
    later, changes = succeed(record, wanted(6, "A lantern of"), Erratum("2027-03-12", "the name"))
    assert changes.redrawn == ()
    for place in (0, 1):
        assert masses(later, place) == masses(record, place)


def test_newcomers_draw_around_the_numbers_of_the_same_template_alone() -> None:
    """Lamps and signs alike have 45 sets of numbers, as many as there are students at last."""
    alike = lamp("A sign of").replace('id = "lamp"', 'id = "sign"')
    record, _ = succeed(new_record(), wanted(22, sign=alike))
    later, _ = succeed(record, wanted(45, sign=alike))
    for place in (0, 1):
        values = [edition.draws[place].values for edition in later.current]
        assert len({(own["m"].value, own["L"].value) for own in values}) == 45


def test_large_print_of_a_corrected_paper_has_its_errata() -> None:
    """The same code, so the same text: of a record whose text was corrected before."""
    students = class_of(2)
    record, _ = on(begun(students), students, correct="the lamp", source=lamp("A lantern of"))
    large = [replace(students[0], large=True), students[1]]
    later, changes = on(record, large, source=lamp("A lantern of"))
    (new,) = later.printings[-1].editions
    held = record.held["1", False]
    assert new == replace(held, large=True, follows=held.code)
    assert [erratum.what for erratum in new.errata] == ["the lamp"]
    assert (changes.corrected, changes.printed) == (0, 1)


def test_whose_numbers_somebody_has_stays_when_the_list_says_another() -> None:
    """The newcomer has those of the first student, and says so at every build."""
    one, two, three = class_of(3)
    record, _ = on(begun([one, two]), [one, two])
    alike = replace(three, numbers_of=one.id)
    later, changes = on(record, [one, two, alike])
    assert later.held["3", False].draws == later.held["1", False].draws
    kept, changes = on(later, [one, two, alike])
    assert (kept.printings, changes.remarks) == (later.printings, ())
    _, changes = on(later, [one, two, replace(three, numbers_of=two.id)])
    (remark,) = changes.remarks
    assert remark.endswith("the numbers in hand stay, and not those of 2")

"""A paper told again from its record: its numbers, answers, intervals, slips, and its key."""

from __future__ import annotations

from pathlib import Path

from probgen.course.record import CODES
from probgen.course.record_file import write_record
from probgen.course.trail import Trail, follow
from probgen.papers.traced import as_data, traced
from tests.terms import begun, class_of


def trail_of(tmp_path: Path, id: str = "2") -> Trail:
    path = tmp_path / "record.json"
    path.write_text(write_record(begun(class_of(3))), encoding="utf-8")
    (trail,) = follow(id, [path])
    return trail


def test_answer_interval_and_slip_of_a_lamp_by_hand(tmp_path: Path) -> None:
    trail = trail_of(tmp_path)
    mass = float(trail.edition.draws[0].values["m"].value)
    tension = mass * 9.80 / 2  # each of two upright cords carries half
    data = as_data(traced(trail))
    (problem,) = data["problems"]
    (answer,) = problem["answers"]
    assert problem["values"]["m"] == {"value": mass, "unit": "kg", "printed": f"{mass} kg"}
    assert abs(answer["value"] - tension) < 1e-9
    assert "angle_from_x" not in answer, "of no direction"
    low, high = (answer["full_marks"][end]["value"] for end in ("low", "high"))
    assert tension * 0.97 < low <= tension * 0.98
    assert tension * 1.02 <= high < tension * 1.03
    assert any("the mass used as a weight" in slip["told"] for slip in answer["slips"])
    assert (data["code"], data["id"], data["edition"]) == (trail.edition.code, "2", 1)
    assert data["key"] == {"file": "", "pile": "", "page": 0}


def test_the_likely_slips_are_those_of_the_key(tmp_path: Path) -> None:
    (problem,) = traced(trail_of(tmp_path)).problems
    every = [told for _, told in problem.slips_of("T")]
    few = [told for _, told in problem.slips_of("T", likely_ones=True)]
    assert 0 < len(few) <= 3
    assert set(few) <= set(every)


def test_where_the_key_is_stands_in_the_table_beside_the_record(tmp_path: Path) -> None:
    trail = trail_of(tmp_path)
    (tmp_path / CODES).write_text(
        "\ufeffcode,key,key_pile,key_page\n"
        f"XXXXX-XXXXX,keys/other.pdf,all-keys.pdf,1\n{trail.edition.code},keys/me.pdf,all-keys.pdf,3\n",
        encoding="utf-8",
    )
    assert traced(trail).key == ("keys/me.pdf", "all-keys.pdf", 3)

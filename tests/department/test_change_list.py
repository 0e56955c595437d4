"""Changes told in lines."""

from dataclasses import replace

from probgen.bank.reading import read_template
from probgen.department.change_list import change_lines, change_list
from probgen.department.changes import changes
from probgen.department.comparison import compare
from tests.banks import template_text

BEFORE = read_template(template_text("forearm-load"), "before")


def test_gravest_first_and_what_came_and_went() -> None:
    texts = (
        template_text("forearm-load", 9, level="5"),
        template_text("tiptoe-achilles", 9, title='"Other words"'),
        template_text("seesaw-two-riders"),
    )
    after = [read_template(text, "after") for text in texts]
    ids = ("forearm-load", "tiptoe-achilles", "well-windlass")
    old = {id: read_template(template_text(id), id) for id in ids}
    lines = list(change_list(changes(old, {each.id: each for each in after})))
    assert [line for line in lines if not line.startswith(" ")] == [
        "new: seesaw-two-riders",
        "gone: well-windlass",
        "reworded: tiptoe-achilles (r1 -> r9)",
        "other particulars: forearm-load (r1 -> r9)",
        "0 as they were",
    ]


def test_many_fields_are_counted_and_long_values_cut() -> None:
    text = BEFORE.source
    for old, new in (("from = 30.0", "from = 31.0"), ("to = 8.0", "to = 9.0"),
                     ("to = 19.0", "to = 19.5"), ("to = 5.0", "to = 5.1"), ("to = 25", "to = 26"),
                     ("to = 2.2", "to = 2.3"), ("level = 2", "level = 3")):  # fmt: skip
        assert old in text
        text = text.replace(old, new)
    lines = list(change_lines(compare(BEFORE, read_template(text, "after"))))
    assert len(lines) == 8
    assert lines[1] == "    level: 2 -> 3"
    assert lines[-1] == "    and 1 more"
    long = BEFORE.source.replace('title = "', f'title = "{"word " * 60}')
    _, told = change_lines(compare(BEFORE, read_template(long, "after")))
    assert len(told) < 200
    assert told.endswith("…")


def test_nothing_other() -> None:
    assert list(change_lines(compare(BEFORE, BEFORE))) == ["as it was: forearm-load (r1)"]


def test_other_marks_are_told_with_their_points() -> None:
    after = read_template(BEFORE.source.replace("level = 2", "level = 3"), "after")
    marks = ((("torque", 60), ("result", 40)), (("torque", 70), ("result and balance", 30)))
    found = replace(compare(BEFORE, after), marks=marks)
    told = "    points, of a hundred: torque 60, result 40 -> torque 70, result and balance 30"
    assert list(change_lines(found))[-1] == told
    assert not any("points" in line for line in change_lines(compare(BEFORE, after)))

"""The goals of the supplied templates are of one list, which the guide shows."""

from __future__ import annotations

import re
from collections import Counter

from probgen.bank.bank import default_bank
from tests.bank.goal_table import GUIDE, goal_table, kept_table


def test_the_guide_has_the_table_of_all_goals() -> None:
    made, kept = goal_table(default_bank().read_all()), kept_table()
    assert kept == made, "python -m tests.bank.goal_table writes it anew"


def test_a_goal_has_one_name() -> None:
    goals = {goal for template in default_bank().read_all() for goal in template.goals}
    assert [name for name, times in Counter(map(str.casefold, goals)).items() if times > 1] == []
    assert all(goal == " ".join(goal.split()) and not goal.endswith(".") for goal in goals)


def test_each_template_stands_once_among_what_courses_set_more_or_less_often() -> None:
    text = GUIDE.read_text(encoding="utf-8")
    (part,) = re.findall(r"How often courses set such a problem.*?\n\n(.*?)\n\n", text, re.S)
    assert sorted(re.findall(r"`([a-z0-9-]+)`", part)) == sorted(default_bank().files)

"""A department over some years: keepers who change its templates, review, merge and release."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from pathlib import Path

from probgen.bank.bank_folder import BankFolder, read_bank_folder
from probgen.bank.customary import systems_of
from probgen.bank.reading import read_template
from probgen.bank.reviews import Review, Verdict
from probgen.department.change import Kind
from probgen.department.next_release import NextRelease, next_release, write_release
from probgen.department.review import give_verdict
from probgen.input.fault import InputError
from probgen.input.toml import parse_toml
from probgen.problem.template_check import check_template
from tests.banks import git, make_bank, put, ready_text
from tests.department.spoiling import KINDS

KEEPERS = ("A. Ash", "B. Birch", "C. Cedar", "D. Elm", "E. Fir", "F. Hazel")
HONEST = (Kind.WORDS, Kind.FIGURE, Kind.NUMBERS, Kind.PARTICULARS)
HEAD = """id = "statics"
name = "Statics problems"
keeper = "A. Ash"
goals = ["direction of a force", "a goal"]
"""
DRAWS = 5
TRIES = 10


class Department:
    """slipped: templates whose physics somebody changed since the last release, as a rewording.

    touched, renamed: ids since then, the latter with those before.
    texts: what each release was made of; changed, slips, clashes, renames: how many in all.
    """

    def __init__(self, folder: Path, ids: Sequence[str], seed: str) -> None:
        self.random = random.Random(seed)
        self.bank = make_bank(folder / "statics", ())
        (self.bank / "bank.toml").write_text(HEAD, "utf-8")
        (self.bank / ".gitattributes").write_text("reviews.csv merge=union\n", "utf-8")
        self.ids, self.day, self.changed = list(ids), date(2027, 1, 1), 0
        self.slips = self.clashes = self.renames = 0
        self.slipped: set[str] = set()
        self.touched: set[str] = set()
        self.renamed: dict[str, str] = {}
        self.texts: dict[str, dict[str, str]] = {}
        git(self.bank, "init", "-q", "-b", "main")
        for id in ids:
            put(self.bank, id, 1, ready_text(id))
        self.approve(*ids)
        self.commit("the first templates")

    @property
    def folder(self) -> BankFolder:
        return read_bank_folder(self.bank)

    def commit(self, said: str) -> None:
        git(self.bank, "add", ".")
        git(self.bank, "commit", "-qm", said)

    def say(self, verdict: Verdict, person: str, *ids: str, note: str = "") -> None:
        self.day += timedelta(days=1)
        give_verdict(self.folder, ids, None, Review("", 0, "", person, self.day, verdict, note))

    def approve(self, *ids: str) -> None:
        """Two keepers of whom one proposes and the other approves."""
        one, other = self.random.sample(KEEPERS, 2)
        self.say(Verdict.PROPOSED, one, *ids, note="reworded")
        self.say(Verdict.APPROVED, other, *ids)

    def newest(self, id: str) -> tuple[int, str]:
        files = self.folder.revisions[id]
        return max(files), files[max(files)].read_text("utf-8")

    def other(self, id: str, text: str, slip: bool) -> str:
        """A text of a template that somebody changed, and that holds its proof.

        Where no slip does, the change is an honest one.
        """
        for _ in range(TRIES):
            made = text
            kinds = (Kind.PHYSICS, Kind.WORDS) if slip else (self.random.choice(HONEST),)
            for kind in kinds:
                before, made = made, KINDS[kind](made, self.random)
                if made == before:
                    break
            else:
                if holds(made):
                    self.changed += 1
                    self.touched.add(id)
                    if slip:
                        self.slipped.add(id)
                        self.slips += 1
                    return made
        return self.other(id, text, slip=False)

    def change(self, id: str, slip: bool) -> None:
        revision, text = self.newest(id)
        put(self.bank, id, revision + 1, numbered(self.other(id, text, slip), revision + 1))
        self.approve(id)
        self.commit("reworded")

    def rename(self, id: str) -> None:
        """Under its new id it has other draws; where these do not hold, it is changed instead."""
        new = f"{id.partition('-renamed')[0]}-renamed-{self.changed}"
        _, text = self.newest(id)
        text = numbered(re.sub(r"(?m)^id = .*$", f'id = "{new}"', text), 1)
        if not holds(text):
            self.change(id, slip=False)
            return
        put(self.bank, new, 1, text)
        self.say(Verdict.WITHDRAWN, self.random.choice(KEEPERS), id)
        self.approve(new)
        self.commit("renamed")
        self.ids[self.ids.index(id)] = new
        self.renamed[new] = id
        self.renames += 1
        self.changed += 1
        self.touched.add(new)

    def clash(self, id: str, slip: bool) -> str:
        """Two branches with the same next revision, merged; what a release said before that."""
        self.clashes += 1
        revision, text = self.newest(id)
        own = theirs = numbered(self.other(id, text, slip), revision + 1)
        while theirs == own:
            theirs = numbered(self.other(id, text, slip=False), revision + 1)
        git(self.bank, "switch", "-qc", "branch")
        put(self.bank, id, revision + 1, theirs)
        self.say(Verdict.PROPOSED, KEEPERS[0], id)
        self.commit("on a branch")
        git(self.bank, "switch", "-q", "main")
        put(self.bank, id, revision + 1, own)
        self.say(Verdict.PROPOSED, KEEPERS[1], id)
        self.commit("on the other")
        git(self.bank, "merge", "-q", "branch", fails=True)
        faults = self.plan("half-merged").faults
        put(self.bank, id, revision + 1, own)
        put(self.bank, id, revision + 2, numbered(self.other(id, own, False), revision + 2))
        self.approve(id)
        self.commit("merged")
        git(self.bank, "branch", "-D", "branch")
        return "; ".join({fault.expected for fault in faults})

    def plan(self, name: str) -> NextRelease:
        return next_release(self.folder, name, self.random.choice(KEEPERS), self.day, draws=DRAWS)

    def release(self, name: str) -> NextRelease:
        found = self.plan(name)
        write_release(found)
        self.commit(name)
        self.texts[name] = {id: self.newest(id)[1] for id in self.ids}
        return found


def numbered(text: str, revision: int) -> str:
    return re.sub(r"(?m)^revision = .*$", f"revision = {revision}", text, count=1)


def holds(text: str) -> bool:
    """Whether a text is a template in each system of units, and its draws hold."""
    try:
        for units in systems_of(parse_toml(text, "changed")):
            check_template(read_template(text, "changed", units), DRAWS)
    except InputError:
        return False
    return True


def named_with(changes: Sequence[str], kind: str) -> set[str]:
    """Ids that a release's list of changes names with a kind."""

    def found() -> Iterator[str]:
        for line in changes:
            told = re.fullmatch(r"(\S[^:]*): (\S+) \(.*\)", line)
            if told and kind in told[1].split(", "):
                yield told[2]

    return set(found())

"""Any characters in any text, through TeX itself: set, or a box stands for them; none stops it."""

import unicodedata
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from probgen.press.batch import Document, print_batch
from probgen.press.lualatex import scripts_used
from probgen.sheets.latex.escape import MISSING, escape, unprintable
from probgen.sheets.latex.layout import Layouts

SPECIAL = "\\{}%#$^&_~-'\"`<>|,[]*"
MARKS = "\u0301\u0300\u0308\u0323\u0327\u20dd\u0489\u064b"
HIDDEN = (
    "\u200b\u200d\u200e\u202e\u2066\ufeff\u00ad\ue000\ue001\U0010ffff\ufffe\u0378\x00\x1b\x7f\u2028"
)
LETTERS = "aijÅßøŁžđĲŒβΩЖїİıſﬁｶﾞﾊﾟ①½²℃Ⅷ🙂𝔘"

ATTACKS = tuple(
    [f"{sign}{mark}" for sign in SPECIAL for mark in MARKS]
    + [f"a{mark * 40}" for mark in MARKS]
    + [f"{sign}\u0301 محمد {sign}\u0301" for sign in "\\}{%#"]
    + ["\u0301", " \u0301", "\u00a0\u0301", "\ud800", "\ud800\u0301", "ı\u0301", "i\u0323\u0301"]
    + [f"x{hidden}y{hidden}\u0301" for hidden in HIDDEN]
)

pieces = st.one_of(
    st.sampled_from([*SPECIAL, *MARKS, *HIDDEN, *LETTERS]),
    st.characters(codec=None, max_codepoint=0x24F),
    st.characters(codec=None),
)
texts = st.lists(pieces, min_size=1, max_size=8).map("".join)


@pytest.fixture(scope="module", autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


def printed(chosen: list[str]) -> None:
    """All texts printed in one run: as a paragraph, as a course and as a title."""
    shown = [escape(text) for text in chosen]
    body = "\n\n".join(
        rf"\def\runningcourse{{{each}}}\head{{{each}}}{{}}{{{each}}}{{\keymark{{{each}}}}}X{each}X"
        for each in shown
    )
    batch = print_batch([Document("x", "x", body, Layouts().preamble())])
    assert [failure.complaint for failure in batch.failures] == []


def fast(text: str) -> bool:
    return not scripts_used(escape(text))


def test_what_once_stopped_a_page_is_set() -> None:
    printed([text for text in ATTACKS if fast(text)])


@pytest.mark.proof
def test_what_once_stopped_a_page_is_set_in_other_scripts() -> None:
    printed([text for text in ATTACKS if not fast(text)])


@settings(
    max_examples=4, deadline=None, derandomize=True, phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)  # fmt: skip
@given(st.lists(texts.filter(fast), min_size=80, max_size=80))
def test_any_characters_are_set(chosen: list[str]) -> None:
    printed(chosen)


@pytest.mark.proof
@settings(
    max_examples=25, deadline=None, phases=[Phase.generate],
    suppress_health_check=list(HealthCheck),
)  # fmt: skip
@given(st.lists(texts, min_size=80, max_size=80))
def test_any_characters_of_any_script_are_set(chosen: list[str]) -> None:
    for engine in (True, False):
        some = [text for text in chosen if fast(text) is engine]
        if some:
            printed(some)


@settings(max_examples=400, deadline=None, derandomize=True)
@given(texts)
def test_what_is_boxed_is_named(text: str) -> None:
    assert (MISSING in escape(text)) == bool(unprintable(text))
    assert all(unicodedata.category(sign) != "Zs" for sign in unprintable(text))


@pytest.mark.parametrize("sign", SPECIAL)
def test_accents_are_put_on_letters_only(sign: str) -> None:
    assert escape(f"{sign}\u0301") == escape(sign) + MISSING
    assert unprintable(f"{sign}\u0301") == f"{sign}\u0301"

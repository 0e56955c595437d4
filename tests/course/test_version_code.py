"""Version codes: unique in a class, stable, and checked against slips."""

from hashlib import blake2b

import pytest

from probgen.course.version_code import ALPHABET, code_of, is_draft, is_like_code, read_code

SECRET = "0123456789abcdef" * 2
CONTENTS = [f"paper {number}" for number in range(2000)]
SIGNS = "0123456789ABCDEFGHJKMNPQRSTWXYZ"


def test_codes_are_stable_and_other_papers_have_other_codes() -> None:
    codes = [code_of(SECRET, content) for content in CONTENTS]
    assert len(set(codes)) == len(CONTENTS)
    assert codes == [code_of(SECRET, content) for content in CONTENTS]


def test_without_the_secret_a_guess_cannot_be_confirmed() -> None:
    other = SECRET.replace("0", "1")
    assert not {code_of(SECRET, each) for each in CONTENTS} & {
        code_of(other, each) for each in CONTENTS
    }


def test_a_code_is_the_keyed_digest_it_has_always_been() -> None:
    """What is on paper must be found again: the digest worked out a second time, sign by sign."""
    keyed = blake2b(b"0:paper 0", digest_size=16, key=SECRET.encode(), person=b"version code")
    number = int.from_bytes(keyed.digest(), "big")
    places = [number // 31**n % 31 for n in range(9)]
    places.append(sum((n + 2) * place for n, place in enumerate(places)) % 31)
    signs = "".join(SIGNS[place] for place in places)
    assert code_of(SECRET, "paper 0") == f"{signs[:5]}-{signs[5:]}"


def test_a_code_that_is_taken_is_passed_over() -> None:
    taken: set[str] = set()
    for _ in range(20):
        taken.add(code_of(SECRET, "paper", taken))
    assert len(taken) == 20
    assert code_of(SECRET, "paper", taken) == code_of(SECRET, "paper", taken)


@pytest.mark.parametrize("content", CONTENTS[:5])
def test_codes_are_read_back_as_people_type_them(content: str) -> None:
    code = code_of(SECRET, content)
    assert read_code(code) == code
    typed = code.lower().replace("-", " ").replace("0", "o").replace("1", "l")
    assert read_code(typed) == code
    assert is_like_code(typed)


def test_codes_of_version_0_1_are_read_still() -> None:
    """Two codes as that version printed them."""
    for code in ("01EW-0DSM", "01XY-13PY"):
        assert read_code(code.lower()) == code
        assert is_like_code(code.lower())


@pytest.mark.parametrize("code", [code_of(SECRET, "paper 0"), "01EW-0DSM"])
def test_every_wrong_sign_and_every_swap_is_noticed(code: str) -> None:
    signs = code.replace("-", "")
    count = len(signs)
    slips = {signs[:i] + new + signs[i + 1 :] for i in range(count) for new in ALPHABET}
    slips |= {signs[:i] + signs[i + 1] + signs[i] + signs[i + 2 :] for i in range(count - 1)}
    for slip in slips - {signs}:
        with pytest.raises(ValueError, match="mistyped"):
            read_code(slip)


WRONG = ["", "7K3M", "7K3M-Q9T", "7K3MQ-9TXX", "7K3MQ-9TXB4C", "7K3M-Q9T!", "UUUU-UUUU"]


@pytest.mark.parametrize("typed", WRONG)
def test_what_is_no_code_is_refused(typed: str) -> None:
    assert not is_like_code(typed)
    with pytest.raises(ValueError, match="is not a code"):
        read_code(typed)


def test_a_drafts_code_says_so_and_no_other_does() -> None:
    drafts = {code_of(SECRET, f"paper {n}", draft=True) for n in range(200)}
    assert len(drafts) == 200
    assert all(is_draft(code) and read_code(code) == code for code in drafts)
    assert not any(is_draft(code_of(SECRET, f"paper {n}")) for n in range(200))

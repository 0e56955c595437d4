from collections import Counter

import pytest

from probgen.draws import keyed_choice as module
from probgen.draws.keyed_choice import keyed_choice, keyed_numbers


def test_choices_are_fixed_for_good() -> None:
    # BLAKE2b of the length-prefixed parts, worked out with the coreutils program b2sum:
    # printf '\0\0\0\0\0\0\0\4seed\0\0\0\0\0\0\0\1\x37\0\0\0\0\0\0\0\1\x30' | b2sum -l 128
    digest = 0x01463F9F61681E7937AD1A039C72D9D3
    assert keyed_choice(1000, "seed", 7) == digest % 1000


def test_every_choice_is_equally_likely() -> None:
    counts = Counter(keyed_choice(6, "die", i) for i in range(6000))
    assert sorted(counts) == list(range(6))
    # Five degrees of freedom: chi-squared above 20.5 has a chance of 1 in 1000; the draw is fixed.
    assert sum((count - 1000) ** 2 / 1000 for count in counts.values()) < 20.5


@pytest.mark.parametrize(
    ("one", "other"), [(("ab", "c"), ("a", "bc")), (("a", ""), ("a",)), (("a", "b"), ("b", "a"))]
)
def test_keys_that_read_alike_are_told_apart(one: tuple[str, ...], other: tuple[str, ...]) -> None:
    assert keyed_choice(1 << 100, *one) != keyed_choice(1 << 100, *other)


@pytest.mark.parametrize("count", [0, -1])
def test_nothing_to_choose_from(count: int) -> None:
    with pytest.raises(ValueError, match="nothing"):
        keyed_choice(count, "a")
    assert keyed_choice(1, "a") == 0


def test_digests_that_would_favour_a_choice_are_passed_over(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """2^128 is one more than a multiple of 3: its last number would be a 0 too many."""
    last = 2**128 - 1
    digests = {0: last, 1: last - 1, 2: 5}
    monkeypatch.setattr(module, "_digest", lambda key, counter: digests[counter])
    assert keyed_choice(3, "a") == 2  # (2^128 - 2) % 3
    assert keyed_choice(2, "a") == 1  # an even number: all digests are fair
    assert keyed_choice(2**128 - 2, "a") == 5  # both of the first two are beyond


def test_many_numbers_are_fixed_for_good() -> None:
    # SHAKE-256 of the same bytes as above without the last part, worked out with openssl:
    # printf '\0\0\0\0\0\0\0\4seed\0\0\0\0\0\0\0\1\x37' | openssl dgst -shake256 -xoflen 16
    halves = bytes.fromhex("61826d20d1635142"), bytes.fromhex("2fff59639aa48ef7")
    expected = [int.from_bytes(each, "little") for each in halves]
    assert keyed_numbers(2, "seed", 7).tolist() == expected
    assert keyed_numbers(1, "seed", 7).tolist() == expected[:1]

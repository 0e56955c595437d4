"""Version codes: unique in a class, stable, and checked against slips."""

from hashlib import blake2b, scrypt
from itertools import islice

import pytest

from probgen.course.version_code import ALPHABET, assign_codes, read_code

STUDENTS = {f"student-{number}": f"paper {number % 50}" for number in range(2000)}


def test_codes_are_stable_and_unique() -> None:
    codes = assign_codes("spring", STUDENTS)
    assert len(set(codes.values())) == len(STUDENTS)
    assert codes == assign_codes("spring", STUDENTS)
    assert not set(codes.values()) & set(assign_codes("autumn", STUDENTS).values())


def test_a_code_is_the_keyed_digest_it_has_always_been() -> None:
    """What is on paper must be found again: the digest worked out a second time, sign by sign."""
    key = scrypt(b"spring", salt=b"probgen version code", n=2**14, r=8, p=1, dklen=32)
    said = b"3:ada4:L: 21:0"
    digest = blake2b(said, key=key, digest_size=16, person=b"version code").digest()
    number = int.from_bytes(digest, "big")
    places = [number // 31**n % 31 for n in range(7)]
    places.append(sum((n + 2) * place for n, place in enumerate(places)) % 31)
    signs = "".join("0123456789ABCDEFGHJKMNPQRSTWXYZ"[place] for place in places)
    assert assign_codes("spring", {"ada": "L: 2"}) == {"ada": f"{signs[:4]}-{signs[4:]}"}


def test_another_paper_of_the_same_owner_has_another_code() -> None:
    one, other = (assign_codes("spring", {"ada": said})["ada"] for said in ("L: 2", "L: 3"))
    assert one != other


def test_a_student_joining_later_changes_no_other_code() -> None:
    fewer = dict(islice(STUDENTS.items(), 50))
    codes = assign_codes("spring", fewer)
    assert assign_codes("spring", {**fewer, "late": "paper 7"}).items() >= codes.items()


@pytest.mark.parametrize("student", list(STUDENTS)[:5])
def test_codes_are_read_back_as_people_type_them(student: str) -> None:
    code = assign_codes("spring", {student: "L: 2"})[student]
    assert read_code(code) == code
    typed = code.lower().replace("-", " ").replace("0", "o").replace("1", "l")
    assert read_code(typed) == code


def test_every_wrong_sign_and_every_swap_is_noticed() -> None:
    signs = assign_codes("spring", {"ada": "L: 2"})["ada"].replace("-", "")
    slips = {signs[:i] + new + signs[i + 1 :] for i in range(8) for new in ALPHABET}
    slips |= {signs[:i] + signs[i + 1] + signs[i] + signs[i + 2 :] for i in range(7)}
    for slip in slips - {signs}:
        with pytest.raises(ValueError, match="mistyped"):
            read_code(slip)


@pytest.mark.parametrize("typed", ["", "7K3M", "7K3M-Q9TXX", "7K3M-Q9T!", "7K3M-Q9TU"])
def test_what_is_no_code_is_refused(typed: str) -> None:
    with pytest.raises(ValueError, match="is not a code"):
        read_code(typed)

"""The version code printed on each sheet: short, hard to misread, and checked against typing slips.

Seven signs and a check sign, such as "7K3M-Q9TX": a keyed digest of whose the paper is and of what
stands on it.  The alphabet leaves out I, L, O, U and V, which
are misread for 1, 0 and one another.  What is left are 31 signs, a prime number, so that a weighted
sum modulo 31 catches every single wrong sign and every two signs that changed places.
"""

from __future__ import annotations

from collections.abc import Mapping
from hashlib import blake2b, scrypt
from typing import Final

ALPHABET: Final = "0123456789ABCDEFGHJKMNPQRSTWXYZ"
_LENGTH: Final = 7
_SALT: Final = b"probgen version code"
"""Of the key's derivation from the seed, which is slow and takes memory: 16 MB and a twentieth of a
second or so for each guess at a seed."""
_MISREAD: Final = str.maketrans("ILO", "110", " -–—")


def assign_codes(seed: str, papers: Mapping[str, str]) -> dict[str, str]:
    """The code of each owner, a student's id or an exam's version: no two alike in the class.

    papers: what stands on each owner's paper (`course.paper`).  The same seed and paper give the
    same code; a paper with another text or other values has another.  An owner whose code is taken
    by one earlier in the order gets the next one of its own sequence.
    """
    key = scrypt(seed.encode(), salt=_SALT, n=2**14, r=8, p=1, dklen=32)
    codes: dict[str, str] = {}
    taken: set[str] = set()
    for owner, paper in papers.items():
        attempt = 0
        while (code := _draw_code(key, owner, paper, attempt)) in taken:
            attempt += 1
        taken.add(code)
        codes[owner] = code
    return codes


def read_code(text: str) -> str:
    """The code as it is printed, from what somebody typed: any case, O for 0, I or L for 1.

    Raises ValueError when it is no code, or when its check sign tells of a slip.
    """
    signs = text.upper().translate(_MISREAD)
    if len(signs) != _LENGTH + 1 or any(sign not in ALPHABET for sign in signs):
        raise ValueError(f"{text!r} is not a code: expected eight signs such as 7K3M-Q9TX")
    if _check_sign(signs[:_LENGTH]) != signs[-1]:
        raise ValueError(f"{text!r} was mistyped: its last sign does not fit the others")
    return _grouped(signs)


def _draw_code(key: bytes, owner: str, paper: str, attempt: int) -> str:
    """One code of an owner's sequence: a digest of the paper that needs the key to be made."""
    words = (owner, paper, str(attempt))
    keyed = "".join(f"{len(word)}:{word}" for word in words).encode()
    digest = blake2b(keyed, key=key, digest_size=16, person=b"version code").digest()
    left = int.from_bytes(digest)
    signs = ""
    for _ in range(_LENGTH):
        left, place = divmod(left, len(ALPHABET))
        signs += ALPHABET[place]
    return _grouped(signs + _check_sign(signs))


def _check_sign(signs: str) -> str:
    weighted = sum(weight * ALPHABET.index(sign) for weight, sign in enumerate(signs, start=2))
    return ALPHABET[weighted % len(ALPHABET)]


def _grouped(signs: str) -> str:
    return f"{signs[:4]}-{signs[4:]}"

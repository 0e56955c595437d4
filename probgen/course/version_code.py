"""The version code printed on each paper: the name of its content, hard to misread, and checked.

Nine signs and a check sign, such as "7K3MQ-9TXB4": a keyed digest of all that is printed, so that
another paper has another code, and nothing of a seed or a student can be told from it.  The
alphabet leaves out I, L, O, U and V, which are misread for 1, 0 and one another.  What is left are
31 signs, a prime number, so that a weighted sum modulo 31 catches every single wrong sign and every
two signs that changed places.  There are 31^9 codes, 2.6e13: among the 60,000 papers that a large
department prints in a term two share one by chance once in 15,000 terms.

A draft's code begins with DRAFT, such as "DRAFT-7K3MQ", and no other does.
"""

from __future__ import annotations

from collections.abc import Container
from hashlib import blake2b
from typing import Final

ALPHABET: Final = "0123456789ABCDEFGHJKMNPQRSTWXYZ"
_LENGTH: Final = 9
_DRAFT: Final = "DRAFT"
_ONCE: Final = 7
"""Signs, without the check sign, of the codes that version 0.1 printed."""
_MISREAD: Final = str.maketrans("ILO", "110", " -–—")


def code_of(secret: str, content: str, taken: Container[str] = (), draft: bool = False) -> str:
    """The code of a paper's content: the first of its sequence that is not taken.

    taken: codes that stand for other papers; draft: whether it is to say that of itself.
    The same arguments give the same code.
    """
    attempt = 0
    while (code := _draw_code(secret, content, attempt, draft)) in taken or (
        is_draft(code) and not draft
    ):
        attempt += 1
    return code


def is_draft(code: str) -> bool:
    """Whether a code says that its paper is a draft, which nobody was handed."""
    return code.startswith(f"{_DRAFT}-")


def read_code(text: str) -> str:
    """The code as it is printed, from what somebody typed: any case, O for 0, I or L for 1.

    Raises ValueError when it is no code, or when its check sign tells of a slip.
    """
    signs = text.upper().translate(_MISREAD)
    if len(signs) not in (_LENGTH + 1, _ONCE + 1) or any(sign not in ALPHABET for sign in signs):
        raise ValueError(f"{text!r} is not a code: expected ten signs such as 7K3MQ-9TXB4")
    if _check_sign(signs[:-1]) != signs[-1]:
        raise ValueError(f"{text!r} was mistyped: its last sign does not fit the others")
    return _grouped(signs)


def is_like_code(text: str) -> bool:
    """Whether somebody may have meant a code, mistyped or not."""
    signs = text.upper().translate(_MISREAD)
    return len(signs) in (_LENGTH + 1, _ONCE + 1) and all(sign in ALPHABET for sign in signs)


def _draw_code(secret: str, content: str, attempt: int, draft: bool) -> str:
    """One code of a content's sequence."""
    keyed = blake2b(
        f"{attempt}:{content}".encode(),
        digest_size=16,
        key=secret.encode(),
        person=b"version code",
    )
    left = int.from_bytes(keyed.digest())
    signs = _DRAFT if draft else ""
    while len(signs) < _LENGTH:
        left, place = divmod(left, len(ALPHABET))
        signs += ALPHABET[place]
    return _grouped(signs + _check_sign(signs))


def _check_sign(signs: str) -> str:
    weighted = sum(weight * ALPHABET.index(sign) for weight, sign in enumerate(signs, start=2))
    return ALPHABET[weighted % len(ALPHABET)]


def _grouped(signs: str) -> str:
    half = len(signs) // 2
    return f"{signs[:half]}-{signs[half:]}"

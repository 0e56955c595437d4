r"""Text somebody typed, made safe and faithful for LaTeX (T1 fonts, UTF-8 input).

Whatever is typed is printed as it stands: no character commands TeX, none joins a neighbour to
become a third (as "--" or "<<" would), and none stops the run.  A Latin letter the T1 fonts do not
have is taken from another cut or composed from a letter and its accents; Greek and Cyrillic are
spelled in the fonts of their alphabets, and other scripts named for LuaLaTeX.  Where even that
fails a small box stands, and `unprintable` tells which those are.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Container, Iterator
from functools import cache, lru_cache
from itertools import groupby, pairwise
from typing import Final

from pylatex.utils import escape_latex

from probgen.sheets.latex.alphabet import ALPHABETS
from probgen.sheets.latex.cluster import clusters
from probgen.sheets.latex.letter import LETTERS
from probgen.sheets.latex.right_to_left import mirrored, parts, run_end
from probgen.sheets.latex.script import SCRIPTS, east_asian, script_of

MISSING: Final = r"\missingglyph{}"
"""Stands for a character that cannot be printed; the preamble defines it as a small box."""

# What pylatex leaves alone but T1 fonts join to something else, or give another meaning.
_ASCII: Final = {
    "^": r"\textasciicircum{}",
    '"': r"\textquotedbl{}",
    "`": r"\textasciigrave{}",
    "'": "{'}",
    "<": r"\textless{}",
    ">": r"\textgreater{}",
    "|": r"\textbar{}",
    ",": "{,}",
}

# Cork encoding (T1), as listed in the LaTeX Companion's font tables and t1enc.dfu.
_CORK: Final = frozenset(
    "¡£§«»¿ßÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖØÙÚÛÜÝÞàáâãäåæçèéêëìíîïðñòóôõöøùúûüýþÿ"
    "ĂăĄąĆćČčĎďđĘęĚěĞğĹĺĽľŁłŃńŇňŊŋŐőŒœŔŕŘřŚśŞşŠšŢţŤťŮůŰűŸŹźŻżŽžİıȷĲĳ"
    "–—‘’‚“”„‹›"
)

# Text companion symbols (TS1), and signs the working of a problem may carry.
_SYMBOLS: Final = {
    "\u00ad": r"\-", "\u200b": r"\hskip0pt\relax{}",
    "\u00a0": "~", "\u2007": "~", "\u2009": r"\,", "\u202f": r"\,", "\u2011": r"\mbox{-}",
    "°": r"\textdegree{}", "±": r"\textpm{}", "¹": r"\textonesuperior{}",
    "²": r"\texttwosuperior{}", "³": r"\textthreesuperior{}", "·": r"\ensuremath{\mathord{\cdot}}",
    "×": r"\texttimes{}", "÷": r"\textdiv{}", "µ": r"\textmu{}", "€": r"\texteuro{}",
    "¢": r"\textcent{}", "¥": r"\textyen{}", "©": r"\textcopyright{}",
    "®": r"\textregistered{}", "™": r"\texttrademark{}", "ª": r"\textordfeminine{}",
    "º": r"\textordmasculine{}", "¶": r"\textparagraph{}", "†": r"\textdagger{}",
    "‡": r"\textdaggerdbl{}", "•": r"\textbullet{}", "…": r"\dots{}", "‰": r"\textperthousand{}",
    "½": r"\textonehalf{}", "¼": r"\textonequarter{}", "¾": r"\textthreequarters{}",
    "¦": r"\textbrokenbar{}", "¬": r"\textlnot{}", "№": r"\textnumero{}", "\u2010": "{-}",
    "−": r"\ensuremath{-}", "→": r"\ensuremath{\rightarrow}", "←": r"\ensuremath{\leftarrow}",
    "↑": r"\ensuremath{\uparrow}", "↓": r"\ensuremath{\downarrow}",
    "⇒": r"\ensuremath{\Rightarrow}", "≈": r"\ensuremath{\approx}", "≠": r"\ensuremath{\neq}",
    "≤": r"\ensuremath{\leq}", "≥": r"\ensuremath{\geq}", "√": r"\ensuremath{\surd}",
    "∞": r"\ensuremath{\infty}", "∠": r"\ensuremath{\angle}", "⊥": r"\ensuremath{\perp}",
    "ʼ": r"\oneletter{02BC}{’}", "ʻ": r"\oneletter{02BB}{‘}",
    "✓": r"\ensuremath{\checkmark}", "′": r"\ensuremath{'}", "″": r"\ensuremath{''}",
} | {
    raised: rf"\ensuremath{{^{{{plain}}}}}"
    for raised, plain in zip("⁰⁴⁵⁶⁷⁸⁹⁺⁻", "0456789+-", strict=True)
} | {
    lowered: rf"\ensuremath{{_{{{plain}}}}}"
    for lowered, plain in zip("₀₁₂₃₄₅₆₇₈₉₊₋", "0123456789+-", strict=True)
}  # fmt: skip

_GREEK: Final = {
    "α": "alpha", "β": "beta", "γ": "gamma", "δ": "delta", "ε": "varepsilon", "ζ": "zeta",
    "η": "eta", "θ": "theta", "ι": "iota", "κ": "kappa", "λ": "lambda", "μ": "mu", "ν": "nu",
    "ξ": "xi", "ο": "mathit{o}", "π": "pi", "ρ": "rho", "ς": "varsigma", "σ": "sigma",
    "τ": "tau", "υ": "upsilon", "φ": "varphi", "χ": "chi", "ψ": "psi", "ω": "omega",
    "Γ": "Gamma", "Δ": "Delta", "Θ": "Theta", "Λ": "Lambda", "Ξ": "Xi", "Π": "Pi",
    "Σ": "Sigma", "Υ": "Upsilon", "Φ": "Phi", "Ψ": "Psi", "Ω": "Omega",
    "Α": "mathrm{A}", "Β": "mathrm{B}", "Ε": "mathrm{E}", "Ζ": "mathrm{Z}", "Η": "mathrm{H}",
    "Ι": "mathrm{I}", "Κ": "mathrm{K}", "Μ": "mathrm{M}", "Ν": "mathrm{N}", "Ο": "mathrm{O}",
    "Ρ": "mathrm{P}", "Τ": "mathrm{T}", "Χ": "mathrm{X}",
}  # fmt: skip

# Combining marks with an accent command in T1; those above the letter want i and j undotted.
_ABOVE: Final = {
    "\u0300": r"\`", "\u0301": r"\'", "\u0302": r"\^", "\u0303": r"\~", "\u0304": r"\=",
    "\u0306": r"\u", "\u0307": r"\.", "\u0308": r'\"', "\u030a": r"\r", "\u030b": r"\H",
    "\u030c": r"\v",
}  # fmt: skip
_BELOW: Final = {
    "\u0323": r"\d", "\u0326": r"\textcommabelow", "\u0327": r"\c", "\u0328": r"\k",
    "\u0331": r"\b",
}  # fmt: skip
_MOST_ACCENTS: Final = 4
"""On one letter: no language has more, and TeX's groups do not nest without end."""
_UNDOTTED: Final = {"i": r"\i", "j": r"\j"}

_EAST_ASIAN: Final = ("chinese", "japanese", "korean")
_JOINTS: Final = " \u00a0\u2007\u2009\u202f\u200b\u00ad"
"""What may stand between two words of one run."""


@lru_cache(maxsize=4096)  # a class's pages say the same words again and again
def escape(text: str) -> str:
    r"""LaTeX that prints the text; white space of any kind and length becomes one space.

    Greek and Cyrillic stand in `\inalphabet{script}{places}{letters}`; what else Latin fonts do not
    have stands in `\inscript{script}{...}` and asks for LuaLaTeX.
    """
    letters = clusters(text)
    scripts = _scripts(letters)
    spelled = _spelled(letters, scripts)
    pieces = []
    for script, run in _runs(letters, scripts, spelled):
        if not script:
            pieces += [_latex_of(cluster) for cluster in run]
        elif script in spelled:
            pieces.append(_in_alphabet(script, run))
        else:
            write = _leftward if SCRIPTS[script].leftward else _in_script
            pieces.append(rf"\inscript{{{script}}}{{{write(script, run)}}}")
    return "".join(pieces)


def unprintable(text: str) -> str:
    """The characters of a text that `escape` can only print as boxes, each once, in order."""
    letters = clusters(text)
    lost = (
        cluster
        for cluster, script in zip(letters, _scripts(letters), strict=True)
        if not script and MISSING in _latex_of(cluster)
    )
    return "".join(dict.fromkeys(lost))


def _scripts(letters: list[str]) -> list[str]:
    """The script of each cluster that Latin fonts cannot print, "" for the others."""
    own = [script_of(cluster[0]) for cluster in letters]
    ideographs = east_asian(own)
    symbols = ("greek", "greek") not in pairwise(own)  # no words: single letters are symbols
    found = []
    for cluster, name in zip(letters, own, strict=True):
        if name == "greek" and not (symbols and cluster in _GREEK):
            found.append(name)
        elif MISSING not in _latex_of(cluster):
            found.append("")
        else:
            found.append(ideographs if name in _EAST_ASIAN else name)
    return found


def _spelled(letters: list[str], scripts: list[str]) -> set[str]:
    """The scripts of a text whose alphabet has every letter that is used of them."""
    wanting = {
        script
        for cluster, script in zip(letters, scripts, strict=True)
        if script not in ALPHABETS or cluster not in ALPHABETS[script].letters
    }
    return set(scripts) - wanting


def _runs(
    letters: list[str], scripts: list[str], spelled: Container[str]
) -> Iterator[tuple[str, list[str]]]:
    """Clusters in a row of the same script, with the spaces between its words.

    Of a script that goes from right to left all that stands between its words; of one that is
    spelled words alone.
    """
    place = 0
    while place < len(letters):
        script = scripts[place]
        if script and script not in spelled and SCRIPTS[script].leftward:
            end = run_end(letters, scripts, place)
        else:
            joints = _JOINTS if script and script not in spelled else ""
            end = _row_end(letters, scripts, place, joints)
        yield script, letters[place:end]
        place = end


def _row_end(letters: list[str], scripts: list[str], start: int, joints: str) -> int:
    """Where the clusters in a row end that have the script of the first, or are joints in it."""
    end = start + 1
    for place in range(start + 1, len(letters)):
        if scripts[place] == scripts[start]:
            end = place + 1
        elif letters[place] not in joints:
            break
    return end


def _in_alphabet(script: str, word: list[str]) -> str:
    letters = ALPHABETS[script].letters
    places = "".join(letters[cluster] for cluster in word)
    return rf"\inalphabet{{{script}}}{{{places}}}{{{''.join(word)}}}"


def _in_script(script: str, run: list[str]) -> str:
    joint = r"\inbreak{}" if script in _EAST_ASIAN else ""  # lines may end after any ideograph
    return joint.join(_latex_of(each) if each in _JOINTS else each for each in run)


def _leftward(script: str, run: list[str]) -> str:
    """Clusters from right to left; numbers and Latin words among them stay as they are read."""
    written = []
    for rightward, places in parts(run):
        part = [run[place] if rightward else mirrored(run[place]) for place in places]
        shown = "".join(
            "".join(some) if own else rf"\inlatin{{{''.join(map(_latex_of, some))}}}"
            for own, some in groupby(part, lambda each: each == " " or script_of(each[0]) == script)
        )
        written.append(rf"\rightward{{{shown}}}" if rightward else shown)
    return "".join(written)


@cache
def _latex_of(cluster: str) -> str:
    if len(cluster) == 1 and cluster.isascii() and cluster.isprintable():
        return _ASCII.get(cluster) or str(escape_latex(cluster))
    if cluster in LETTERS:
        encoding, slot = LETTERS[cluster]
        return rf"\lettercut{{{encoding}}}{{{slot}}}{{{cluster}}}"
    if cluster in _CORK:
        return cluster
    if cluster in _SYMBOLS:
        return _SYMBOLS[cluster]
    if cluster in _GREEK:
        return rf"\ensuremath{{\{_GREEK[cluster]}}}"
    return _composed(cluster)


def _composed(cluster: str) -> str:
    """A letter with its accents one by one; boxes for what of it cannot be set."""
    apart = unicodedata.normalize("NFD", cluster)
    letter, marks = apart[0], apart[1:]
    if not marks or not (letter.isascii() or letter in _CORK):
        return MISSING
    accents = [_ABOVE.get(mark) or _BELOW.get(mark) for mark in marks[:_MOST_ACCENTS]]
    if None in accents or len(marks) > _MOST_ACCENTS or not letter.isalpha():
        return _latex_of(letter) + MISSING  # TeX puts accents on letters only
    shown = letter
    if any(mark in _ABOVE for mark in marks):
        shown = _UNDOTTED.get(letter, letter)
    for accent in accents:
        shown = f"{accent}{{{shown}}}"
    code = cluster.encode("utf-16-be").hex().upper()
    return rf"\oneletter{{{code}}}{{{shown}}}"

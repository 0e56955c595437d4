r"""Text somebody typed, made safe and faithful for LaTeX (T1 fonts, UTF-8 input).

Whatever is typed is printed as it stands: no character commands TeX, none joins a neighbour to
become a third (as "--" or "<<" would), and none stops the run.  A Latin letter the T1 fonts do not
have is taken from another cut or composed from a letter and its accents; Greek and Cyrillic are
spelled in the fonts of their alphabets, and other scripts named for LuaLaTeX.  Where even that
fails a small box stands, and `unprintable` tells which those are.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Container, Iterator
from functools import cache, lru_cache
from itertools import pairwise
from typing import Final

from pylatex.utils import escape_latex

from probgen.sheets.latex.alphabet import ALPHABETS
from probgen.sheets.latex.letter import LETTERS
from probgen.sheets.latex.script import east_asian, script_of

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
    "\u00a0": "~", "\u2007": "~", "\u2009": r"\,", "\u202f": r"\,", "\u2011": "{-}",
    "°": r"\textdegree{}", "±": r"\textpm{}", "¹": r"\textonesuperior{}",
    "²": r"\texttwosuperior{}", "³": r"\textthreesuperior{}", "·": r"\textperiodcentered{}",
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
_MICRO: Final = re.compile("μ(?=[A-Za-z])")  # the prefix of a unit, whichever of the two was typed
_SPACE: Final = re.compile(r"[\s\u2028\u2029]+")
_NO_BREAK: Final = "\u00a0\u2007\u2009\u202f"


@lru_cache(maxsize=4096)  # a class's pages say the same words again and again
def escape(text: str) -> str:
    r"""LaTeX that prints the text; white space of any kind and length becomes one space.

    Greek and Cyrillic stand in `\inalphabet{script}{places}{letters}`; what else Latin fonts do not
    have stands in `\inscript{script}{...}` and asks for LuaLaTeX.
    """
    clusters = _clusters(text)
    scripts = _scripts(clusters)
    spelled = _spelled(clusters, scripts)
    pieces = []
    for script, run in _runs(clusters, scripts, spelled):
        if not script:
            pieces += [_latex_of(cluster) for cluster in run]
        else:
            pieces.append((_in_alphabet if script in spelled else _in_script)(script, run))
    return "".join(pieces)


def unprintable(text: str) -> str:
    """The characters of a text that `escape` can only print as boxes, each once, in order."""
    clusters = _clusters(text)
    lost = (
        cluster
        for cluster, script in zip(clusters, _scripts(clusters), strict=True)
        if not script and MISSING in _latex_of(cluster)
    )
    return "".join(dict.fromkeys(lost))


def _scripts(clusters: list[str]) -> list[str]:
    """The script of each cluster that Latin fonts cannot print, "" for the others."""
    own = [script_of(cluster[0]) for cluster in clusters]
    ideographs = east_asian(own)
    symbols = ("greek", "greek") not in pairwise(own)  # no words: single letters are symbols
    found = []
    for cluster, name in zip(clusters, own, strict=True):
        if name == "greek" and not (symbols and cluster in _GREEK):
            found.append(name)
        elif MISSING not in _latex_of(cluster):
            found.append("")
        else:
            found.append(ideographs if name in _EAST_ASIAN else name)
    return found


def _spelled(clusters: list[str], scripts: list[str]) -> set[str]:
    """The scripts of a text whose alphabet has every letter that is used of them."""
    wanting = {
        script
        for cluster, script in zip(clusters, scripts, strict=True)
        if script not in ALPHABETS or cluster not in ALPHABETS[script].letters
    }
    return set(scripts) - wanting


def _runs(
    clusters: list[str], scripts: list[str], spelled: Container[str]
) -> Iterator[tuple[str, list[str]]]:
    """Clusters in a row of the same script.

    What stands between two runs of one script belongs to it, unless that is spelled by words.
    """
    place = 0
    while place < len(clusters):
        script, end = scripts[place], place + 1
        goes_on = script and script not in spelled
        while end < len(clusters):
            following = next((name for name in scripts[end:] if name), "")
            if scripts[end] != script and not (goes_on and script == following):
                break
            end += 1
        yield script, clusters[place:end]
        place = end


def _in_alphabet(script: str, word: list[str]) -> str:
    letters = ALPHABETS[script].letters
    places = "".join(letters[cluster] for cluster in word)
    return rf"\inalphabet{{{script}}}{{{places}}}{{{''.join(word)}}}"


def _in_script(script: str, run: list[str]) -> str:
    joint = r"\inbreak{}" if script in _EAST_ASIAN else ""  # lines may end after any ideograph
    shown = joint.join(cluster if script_of(cluster[0]) else _latex_of(cluster) for cluster in run)
    return rf"\inscript{{{script}}}{{{shown}}}"


def _clusters(text: str) -> list[str]:
    """The text as single letters, each with the marks that belong to it."""
    clusters: list[str] = []
    for character in unicodedata.normalize("NFC", _MICRO.sub("µ", _tidy(text))):
        if clusters and unicodedata.combining(character) and clusters[-1] != " ":
            clusters[-1] += character
        else:
            clusters.append(character)
    return clusters


def _tidy(text: str) -> str:
    """The text without characters that have no shape, and with plain single spaces."""
    shown = "".join(
        character
        if character in _NO_BREAK
        else " "
        if _SPACE.match(character)
        else ""
        if unicodedata.category(character) in ("Cc", "Cf")
        else character
        for character in text
    )
    return re.sub(" {2,}", " ", shown)


@cache
def _latex_of(cluster: str) -> str:
    if len(cluster) == 1 and cluster.isascii():
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

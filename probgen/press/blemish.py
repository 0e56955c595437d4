"""What TeX only says in passing: boxes too large for their place, characters without shape."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

_SAID: Final = re.compile(
    r"\(\./(?P<file>\d+)\.tex\b"
    r"|<bookmark (?P<title>[0-9a-f]*)>"
    r"|<(?P<trial>try|better|sure|kept|dropped)>"
    r"|Overfull \\(?P<box>[hv]box) \((?P<excess>[\d.]+)pt too"
    r"|Missing character: There is no (?P<lost>.+?) in font (?P<font>[^!\n]+)!"
    r"|<missing glyph (?P<undefined>[^>]*)>"
)
_FONT_FILE: Final = re.compile(r"^\[?(?:file:)?([^:\]]+).*")
_POINTS_A_MM: Final = 72.27 / 25.4


@dataclass(frozen=True, slots=True)
class Blemish:
    r"""Something of a document that is not as it should be, though TeX could set it.

    place: the title of the last `\bookmark` before it, "" where there is none.
    """

    place: str
    words: str


def blemishes(said: str) -> dict[int, tuple[Blemish, ...]]:
    """By document of a run, from what TeX has said of it; each once.

    What counts as too wide or too high is for the layouts to say (`\\hfuzz`, `\\vfuzz`), and which
    boxes they only try: `<try>`, and then `<kept>` or `<dropped>`; a trial inside another that is
    `<better>` takes the place of what that one had, and one that is `<sure>` is kept whatever
    becomes of those around it.
    """
    found: dict[int, dict[Blemish, None]] = {}
    for number, blemish in _blemishes(said):
        found.setdefault(number, {})[blemish] = None
    return {number: tuple(some) for number, some in found.items()}


def _blemishes(said: str) -> Iterator[tuple[int, Blemish]]:
    document, place = -1, ""
    trials: list[list[Blemish]] = []  # what is set may be set anew elsewhere, and is then dropped
    for event in _SAID.finditer(said):
        if event["file"]:
            document, place = int(event["file"]), ""
            trials = [[]]
        elif event["title"] is not None:
            place = bytes.fromhex(event["title"]).decode()
        elif document < 0:
            continue
        elif event["trial"] == "try":
            trials.append([])
        elif event["trial"] == "better":
            if len(trials) > 1:
                trials[-2] = [*trials[-1]]
        elif event["trial"]:
            tried = trials.pop() if len(trials) > 1 else []
            if event["trial"] != "dropped":
                trials[-1 if event["trial"] == "kept" else 0] += tried
        else:
            trials[-1].append(Blemish(place, _words(event)))
        if len(trials) == 1:
            yield from ((document, blemish) for blemish in trials[0])
            trials = [[]]


def _words(event: re.Match[str]) -> str:
    if event["box"]:
        side = "wide" if event["box"] == "hbox" else "high"
        return (
            f"something is {float(event['excess']) / _POINTS_A_MM:.1f} mm too {side} for its place"
        )
    if event["undefined"] is not None:
        return f"a box is printed for {event['undefined']}, which the fonts do not have"
    font = _FONT_FILE.sub(r"\1", event["font"]).partition(" ")[0]
    lost = "a character" if "\ufffd" in event["lost"] else event["lost"]  # of an old font: a byte
    return f"{lost} is missing in the font {font}"

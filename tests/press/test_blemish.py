"""What TeX says in passing is told with its document and the place in it."""

import pytest

from probgen.press.batch import Document, print_batch
from probgen.press.blemish import Blemish
from probgen.sheets.latex.escape import MISSING
from probgen.sheets.latex.layout import Layouts

PREAMBLE = Layouts().preamble("letter")
PLACE = r"\bookmark{" + "2 Shelf, 30°".encode().hex() + "}"
WIDE = Blemish("2 Shelf, 30°", "something is 20.0 mm too wide for its place")

BODIES = {
    "as it should be": ("Some text.", ()),
    "too wide": (PLACE + r"\hbox to 30mm{\hskip 50mm}", (WIDE,)),
    "said twice": (PLACE + r"\hbox to 30mm{\hskip 50mm}\hbox to 30mm{\hskip 50mm}", (WIDE,)),
    "tried and not kept": (PLACE + r"\trying\hbox to 30mm{\hskip 50mm}\dropped", ()),
    "tried and kept": (
        PLACE + r"\trying\trying\hbox to 9mm{\hskip 99mm}\dropped\hbox to 30mm{\hskip 50mm}\kept",
        (WIDE,),
    ),
    "in the better of two trials": (
        PLACE + r"\trying\trying\hbox to 9mm{\hskip 99mm}\better\dropped"
        r"\trying\hbox to 30mm{\hskip 50mm}\better\dropped"
        r"\trying\hbox to 9mm{\hskip 9cm}\dropped\kept",
        (WIDE,),
    ),
    "sure in a trial that is dropped": (
        PLACE + r"\trying\trying\hbox to 30mm{\hskip 50mm}\sure\hbox to 9mm{\hskip 9cm}\dropped",
        (WIDE,),
    ),
    "half a point too wide": (r"\hbox to 30mm{\hskip 85.8pt}", ()),
    "a word of a line": (
        r"\parbox{10mm}{\mbox{\rule{30mm}{1pt}}}",
        (Blemish("", "something is 20.0 mm too wide for its place"),),
    ),
    "too high": (
        r"\vbox to 10mm{\hbox{\rule{1mm}{30mm}}}",
        (Blemish("", "something is 20.0 mm too high for its place"),),
    ),
    "no shape in a font": (
        r"\font\few=lmsy10 \few\char200",
        (Blemish("", "a character is missing in the font lmsy10"),),
    ),
    "a box that was told of before": (MISSING, ()),
    "a character in a layout": (
        "ᚠ", (Blemish("", "a box is printed for ᚠ, which the fonts do not have"),),
    ),
}  # fmt: skip


@pytest.mark.parametrize(("body", "expected"), BODIES.values(), ids=BODIES)
def test_blemishes(body: str, expected: tuple[Blemish, ...]) -> None:
    batch = print_batch([Document("a", "a", body, PREAMBLE)])
    assert batch.failures == ()
    assert batch.printed[0].blemishes == expected


def test_each_document_has_its_own() -> None:
    bodies = {"plain": "Text.", "wide": BODIES["too wide"][0], "after": "More text."}
    batch = print_batch([Document(name, name, body, PREAMBLE) for name, body in bodies.items()])
    assert {each.name: each.blemishes for each in batch.printed} == {
        "plain": (), "wide": (WIDE,), "after": (),
    }  # fmt: skip

"""Pictures that are set, and pictures that are refused before TeX meets them."""

import pytest

from probgen.sheets.logo import MOST_PIXELS, Picture, flaw_of
from tests.sheets.pictures import PNG, page, picture, png_saying

GOOD: dict[str, tuple[bytes, Picture]] = {
    "none": (b"", ""),
    "PNG": (PNG, ".png"),
    "JPEG": (picture("JPEG"), ".jpeg"),
    "as wide as may be": (picture("PNG", MOST_PIXELS, 1), ".png"),
    "a page of PDF": (page(72, 36), ".pdf"),
    "the smallest page": (page(1, 1), ".pdf"),
}
BAD: dict[str, tuple[bytes, Picture, str]] = {
    "of no kind": (PNG, "", "no kind"),
    "of another kind": (PNG, ".jpg", "something else"),
    "too wide": (picture("PNG", MOST_PIXELS + 1, 1), ".png", f"{MOST_PIXELS + 1} x 1 pixels"),
    "too high": (picture("PNG", 1, MOST_PIXELS + 1), ".png", f"1 x {MOST_PIXELS + 1} pixels"),
    "a small file with 3.6 billion pixels": (png_saying(60_000, 60_000), ".png", "far too many"),
    "PNG with a head that is not its own": (PNG[:16] + bytes(8) + PNG[24:], ".png", "damaged"),
    "PNG cut short": (PNG[:30], ".png", "damaged"),
    "JPEG cut short": (picture("JPEG")[:20], ".jpg", "damaged"),
    "PDF cut short": (b"%PDF-1.4", ".pdf", "damaged"),
    "PDF without a page": (page(), ".pdf", "without pages"),
    "a page without height": (page(72, 0.5), ".pdf", "72 x 0 pt"),
    "a page as high as a house": (page(72, 20_000), ".pdf", "72 x 20000 pt"),
}  # fmt: skip


@pytest.mark.parametrize(("content", "kind"), GOOD.values(), ids=GOOD)
def test_good_ones(content: bytes, kind: Picture) -> None:
    assert flaw_of(content, kind) == ""


@pytest.mark.parametrize(("content", "kind", "told"), BAD.values(), ids=BAD)
def test_bad_ones(content: bytes, kind: Picture, told: str) -> None:
    assert told in flaw_of(content, kind)

"""Pictures for house styles, as small as they can be."""

from io import BytesIO
from zlib import crc32

from pikepdf import Array, Pdf
from PIL import Image


def picture(kind: str, width: int = 3, height: int = 2) -> bytes:
    """A black one of so many pixels; kind: "PNG" or "JPEG"."""
    kept = BytesIO()
    Image.new("1", (width, height)).save(kept, kind)
    return kept.getvalue()


def page(*sides: float) -> bytes:
    """A PDF with an empty page of two sides in points, or without any page."""
    kept, pdf = BytesIO(), Pdf.new()
    if sides:
        pdf.add_blank_page().mediabox = Array([0, 0, *sides])
    pdf.save(kept)
    return kept.getvalue()


def png_saying(width: int, height: int) -> bytes:
    """A small PNG whose head says another size than its pixels have."""
    small = picture("PNG")
    head = b"IHDR" + width.to_bytes(4, "big") + height.to_bytes(4, "big") + small[24:29]
    return small[:12] + head + crc32(head).to_bytes(4, "big") + small[33:]


PNG = picture("PNG")

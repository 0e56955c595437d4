"""PDFs joined into one."""

from io import BytesIO
from pathlib import Path

import pikepdf

from probgen.press.split import join, page_count


def blank(pages: int) -> bytes:
    made = BytesIO()
    with pikepdf.new() as pdf:
        for _ in range(pages):
            pdf.add_blank_page()
        pdf.save(made)
    return made.getvalue()


def test_joined_from_bytes_and_paths(tmp_path: Path) -> None:
    path = tmp_path / "two.pdf"
    path.write_bytes(blank(2))
    whole = join([blank(1), path], "All sheets")
    assert page_count(whole) == 3
    assert whole == join([blank(1), path], "All sheets")
    with pikepdf.open(BytesIO(whole)) as opened:
        assert opened.docinfo["/Title"] == "All sheets"

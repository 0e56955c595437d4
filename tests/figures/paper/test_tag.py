"""What a shape stands for, as a drawing's file names it."""

from __future__ import annotations

from probgen.figures.paper.tag import UNTAGGED, Tag, What


def test_tags_read_as_kind_and_id() -> None:
    assert str(Tag(What.BODY, "beam")) == "body:beam"
    assert str(Tag(What.GROUND)) == "ground"
    assert str(Tag(What.LEADER, Tag(What.LETTER, "A"))) == "leader:letter:A"
    assert str(UNTAGGED) == ""


def test_an_id_that_reads_like_a_kind_is_none() -> None:
    assert Tag(What.LABEL, "force:T") != Tag(What.FORCE, "T")
    assert Tag(What.LABEL, "force:T").what is What.LABEL

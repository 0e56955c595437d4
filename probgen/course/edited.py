"""A record that somebody has edited, taken all the same: no code stands for what it never named."""

from __future__ import annotations

from dataclasses import replace

from probgen.course.edition import Coder, Edition, Printing
from probgen.course.record import Record


def recoded(record: Record) -> tuple[Record, tuple[str, ...]]:
    """The record with new codes for the editions whose code is not of their content; remarks.

    Codes of version 0.1 followed from seed and id: without a secret nothing can be told of them.
    """
    if not record.secret:
        return record, ()
    taken = {edition.code for edition in record.editions}
    coders = [Coder(record.secret, issue, taken) for issue in record.issues]
    renamed: dict[str, str] = {}
    remarks: list[str] = []
    for printing in record.printings:
        coder = coders[printing.issue]
        for edition in printing.editions:
            if edition.code not in renamed and not coder.fits(edition):
                renamed[edition.code] = coder.coded(edition).code
                owner = f"{edition.name} ({edition.owner})" if edition.name else edition.owner
                remarks.append(
                    f"{owner}: the record's paper {edition.code} has been edited; "
                    f"as it is now its code is {renamed[edition.code]}"
                )

    def named(edition: Edition) -> Edition:
        code, follows = edition.code, edition.follows
        return replace(edition, code=renamed.get(code, code), follows=renamed.get(follows, follows))

    printings = tuple(
        Printing(each.issue, tuple(map(named, each.editions))) for each in record.printings
    )
    # Who could copy was told of other numbers.
    told = () if renamed else record.copying
    return replace(record, printings=printings, copying=told), tuple(remarks)

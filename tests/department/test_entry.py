"""Templates as a bank lists them."""

import pytest

from probgen.bank.bank import default_bank
from probgen.department.entry import entry_of

ASKS = {
    "forearm-load": ("force", "direction"),
    "seesaw-two-riders": ("length", "force"),
    "ladder-smooth-wall": ("force", "plain number"),
    "ladder-holds": ("holds",),
}


@pytest.mark.parametrize("id", ASKS)
def test_what_is_asked(id: str) -> None:
    asks = entry_of(default_bank().read(id)).asks
    assert set(ASKS[id]) <= set(asks)


def test_every_template_asks_something() -> None:
    for template in default_bank().read_all():
        entry = entry_of(template)
        assert entry.asks
        assert (entry.id, entry.goals, entry.last) == (template.id, template.goals, None)

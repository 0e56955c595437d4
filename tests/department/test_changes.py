"""Templates of two states held against each other."""

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.department.change import Kind
from probgen.department.changes import changes
from tests.banks import template_text


def state(*ids: str, **texts: str) -> dict[str, Template]:
    found = {id: default_bank().read(id) for id in ids}
    for text in texts.values():
        template = read_template(text, "own")
        found[template.id] = template
    return found


def test_new_gone_changed_and_same() -> None:
    level = template_text("seesaw-two-riders", level="5")
    found = changes(
        state("forearm-load", "seesaw-two-riders", "well-windlass"),
        state("forearm-load", "tiptoe-achilles", own=level),
    )
    assert (found.new, found.gone, found.same) == (("tiptoe-achilles",), ("well-windlass",), 1)
    assert [(each.id, each.kinds) for each in found.changed] == [
        ("seesaw-two-riders", (Kind.PARTICULARS,))
    ]


def test_a_template_with_another_id_is_known_again() -> None:
    text = template_text("forearm-load", id='"arm-with-bag"')
    found = changes(state("forearm-load", "well-windlass"), state("well-windlass", own=text))
    assert (found.new, found.gone) == ((), ())
    (one,) = found.changed
    assert (one.id, one.formerly, one.kinds, one.renamed) == (
        "arm-with-bag", "forearm-load", (), True,
    )  # fmt: skip


def test_so_is_one_whose_quantities_have_other_names_too() -> None:
    text = template_text("forearm-load", id='"arm-with-bag"').replace("forearm_mass", "mass_of_arm")
    found = changes(state("forearm-load"), state(own=text))
    assert [(each.id, each.formerly) for each in found.changed] == [
        ("arm-with-bag", "forearm-load"),
    ]  # fmt: skip


def test_one_that_says_what_it_replaces_is_known_again_with_other_physics() -> None:
    text = template_text("forearm-load", id='"arm-with-bag"', direction='"90 - muscle_angle"')
    own = text.replace("[origin]", '[origin]\nreplaces = "forearm-load"')
    found = changes(state("forearm-load"), state(own=own))
    assert found.changed[0].formerly == "forearm-load"
    assert Kind.PHYSICS in found.changed[0].kinds
    without = changes(state("forearm-load"), state(own=text))
    assert (without.new, without.gone) == (("arm-with-bag",), ("forearm-load",))


def test_of_two_copies_the_more_alike_is_the_one_renamed() -> None:
    near = template_text("forearm-load", id='"near-copy"')
    far = template_text("forearm-load", id='"a-far-copy"', title='"Something else altogether"')
    found = changes(state("forearm-load"), state(near=near, far=far))
    assert found.new == ("a-far-copy",)
    assert [each.id for each in found.changed] == ["near-copy"]

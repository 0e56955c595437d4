"""What a bank's pages are rendered with."""

from types import SimpleNamespace

from probgen.department.bank_page import page_environment


def test_what_is_typed_is_escaped_and_fields_are_counted_from_one() -> None:
    environment = page_environment(SimpleNamespace(word="<b>"), 7)
    layout = environment.from_string('{{ words.word }} {{ trials }} {{ "cable[0].at" | field }}')
    assert layout.render() == "&lt;b&gt; 7 cable 1, at"

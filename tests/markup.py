"""A page of HTML read back: every element closed in its turn, its words and its attributes."""

from html.parser import HTMLParser

VOID = {"meta", "wbr", "mspace", "path", "input", "br"}
UNSEEN = {"style", "script"}


class Reader(HTMLParser):
    """words: what is read on the page; found: elements in their order, with their attributes."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.words: list[str] = []
        self.found: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if not UNSEEN & set(self.open):
            self.words.append(data)

    def all(self, tag: str) -> list[dict[str, str | None]]:
        """The attributes of every element of a name."""
        return [attributes for name, attributes in self.found if name == tag]

    @property
    def ids(self) -> list[str]:
        return [each["id"] for _, each in self.found if each.get("id")]  # type: ignore[misc]


def read(page: str) -> Reader:
    """A whole page, or a part of one in which every element is closed."""
    reader = Reader()
    reader.feed(page)
    reader.close()
    assert reader.open == []
    return reader


def one_line(reader: Reader) -> str:
    """All words of a page, a space between any two."""
    return " ".join(" ".join(reader.words).split())

r"""TeX and Lua that try to get out: to read, to write, to run programs; or that never end.

Whatever stands in a layout or slips through `escape` reads nothing beyond the folder of its run and
TeX's own trees, and costs no more than the document it is in.
"""

import os
import subprocess
from collections.abc import Iterable, Iterator
from datetime import date
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from probgen.press import batch as module
from probgen.press.batch import Batch, Document, print_batch

SECRET = "quetzalcoatlus"
PLAIN = r"\documentclass{article}\pagestyle{empty}\def\missingglyph{}" "\n"
SCRIPTED = PLAIN + r"\def\inscript#1#2{#2}" "\n"
IN_LUA = r"\inscript{thai}{x}"
"""Has a document printed by LuaLaTeX."""

SHOW = r"\ifeof\r\else\read\r to\x \x\fi"
INPUT = r"\csname @@input\endcsname "
NO_MATHS = r"\catcode`\$=12 "
READING = {
    "absolute": r"\input{HOME/secret.tex}",
    "the letter of TeX": INPUT + "HOME/secret.tex ",
    "up": r"\input{../../../../../..HOME/secret.tex}",
    "home": r"\catcode`\~=12 " + INPUT + "~/secret.tex ",
    "a user's home": r"\catcode`\~=12 " + INPUT + "~USER/secret.tex ",
    "a variable": NO_MATHS + INPUT + "$HOME/secret.tex ",
    "a variable of the path": NO_MATHS + INPUT + "$SELFAUTOPARENT/HOME/secret.tex ",
    "a variable in braces": NO_MATHS + INPUT + "${SELFAUTOGRANDPARENT}HOME/secret.tex ",
    "a stream": r"\newread\r \openin\r=HOME/secret.tex " + SHOW,
    "a stream by a variable":
        NO_MATHS + r"\newread\r \openin\r=$SELFAUTOPARENT/HOME/secret.tex " + SHOW,
    "a dump": r"\message{\pdffiledump offset 0 length 40{HOME/secret.tex}}",
    "an object": r"\immediate\pdfobj stream file{HOME/secret.tex}",
    "an object by a variable":
        NO_MATHS + r"\immediate\pdfobj stream file{$SELFAUTOPARENT/HOME/secret.tex}",
    "a picture": r"\pdfximage{HOME/secret.pdf}\pdfrefximage\pdflastximage",
    "a verbatim file": r"\makeatletter\verbatim@input{}{HOME/secret.tex}",
    "a pipe": r'\csname @@input\endcsname|"cat HOME/secret.tex" ',
}  # fmt: skip
"""What a document may try, and SHOW what it has read; HOME is a folder with a secret."""

WRITING = {
    "a shell": r"\immediate\write18{touch HOME/made}",
    "elsewhere": r"\newwrite\w \immediate\openout\w=HOME/made ",
    "up": r"\newwrite\w \immediate\openout\w=../made ",
    "a variable": NO_MATHS + r"\newwrite\w \immediate\openout\w=$SELFAUTOPARENT/HOME/made ",
}

BY_LUA = {
    "from a document": r"\directlua{tex.print('SECRET')}",
    "by its other names": r"\csname tex_directlua:D\endcsname{tex.print(os.date())}",
    "as it was": r"\primitive\directlua{tex.print('SECRET')}",
    "later": r"\latelua{print('SECRET')}",
    "expl3": r"\csname lua_now:e\endcsname{tex.print('SECRET')}",
}
"""What LuaLaTeX's documents may try."""

IN_PREAMBLE = {
    "a shell": "os.execute('touch HOME/made')",
    "a pipe": "return io.popen('cat HOME/secret.tex'):read('a')",
    "a program": "os.spawn({'touch', 'HOME/made'})",
    "a file": "return io.open('HOME/secret.tex'):read('a')",
    "lines": "for line in io.lines('HOME/secret.tex') do return line end",
    "a chunk": "return loadfile('HOME/secret.tex')",
    "what the loader has": "return io.loaddata('HOME/secret.tex')",
    "upvalues": "return debug.getupvalue(io.open, 1)",
    "a library": "return package.loadlib('libc.so.6', '*')",
    "C": "return require('ffi')",
    "a file written": "return io.open('HOME/made', 'w')",
    "a new setting": "os.setenv('openin_any', 'a')",
    "a socket": "return require('socket')",
    "a folder": "for name in lfs.dir('HOME') do return name end",
}
"""What a layout's preamble may try in Lua."""

GREEDY = {
    "time": r"\loop\iftrue\repeat",
    "pages": r"\loop\iftrue x\newpage\repeat",
    "words": r"\loop\iftrue\message{x}\repeat",
    "memory": r"\def\x{xxxxxxxx}\loop\iftrue\edef\x{\x\x}\repeat",
    "depth": r"\def\x{{\x}}\x",
    "a file": r"\newwrite\w\immediate\openout\w=x \loop\iftrue\immediate\write\w{xxxxxxxx}\repeat",
}


@pytest.fixture(scope="module", autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A home with a secret, as it is TeX's to find; nothing else is in it afterwards."""
    monkeypatch.setenv("HOME", str(tmp_path))
    (tmp_path / "secret.tex").write_text(f"{SECRET}\n")
    with pikepdf.new() as pdf:
        pdf.add_blank_page()
        pdf.pages[0].Note = pikepdf.String(SECRET)
        pdf.save(tmp_path / "secret.pdf")
    yield tmp_path
    assert {path.name for path in tmp_path.iterdir()} == {"secret.tex", "secret.pdf"}


def told(attack: str, home: Path) -> str:
    user = os.environ.get("USER", "root")
    return attack.replace("HOME", str(home)).replace("USER", user).replace("SECRET", SECRET)


def everything_in(batch: Batch) -> str:
    """All that comes back from TeX: complaints, and the objects of PDFs."""
    found = [failure.complaint for failure in batch.failures]
    for printed in batch.printed:
        with pikepdf.open(BytesIO(printed.pdf)) as pdf:
            for held in pdf.objects:
                found.append(repr(held))
                if isinstance(held, pikepdf.Stream):
                    found.append(held.read_bytes().decode("latin-1"))
        read = subprocess.run(["pdftotext", "-", "-"], input=printed.pdf, capture_output=True)
        found.append(read.stdout.decode())
    return "\n".join(found)


def tried(attacks: Iterable[str], home: Path, preamble: str = PLAIN, begin: str = "x ") -> Batch:
    """Attacks, each in a document of its own, and a document beside them that is printed."""
    bad = [Document(str(n), "", begin + told(a, home), preamble) for n, a in enumerate(attacks)]
    batch = print_batch([*bad, Document("beside", "", f"{begin}beside", preamble)])
    assert "beside" in {printed.name for printed in batch.printed}
    return batch


def test_a_document_reads_nothing_elsewhere(home: Path) -> None:
    assert SECRET not in everything_in(tried(READING.values(), home))


def test_a_document_reads_what_lies_beside_it(home: Path) -> None:
    """The attacks are such that they show what they read."""
    for name in ("a stream", "the letter of TeX"):
        attack = READING[name].replace("HOME/secret.tex", "secret.tex")
        document = Document("x", "", f"x {attack}", PLAIN)
        batch = print_batch([document], files={"secret.tex": SECRET.encode()})
        assert SECRET in everything_in(batch)


def test_a_document_writes_nothing_elsewhere(home: Path) -> None:
    tried(WRITING.values(), home)


@pytest.mark.parametrize(
    "names", [["from a document"], pytest.param(list(BY_LUA), marks=pytest.mark.proof)]
)
def test_a_document_has_no_lua(names: list[str], home: Path) -> None:
    batch = tried([BY_LUA[name] for name in names], home, SCRIPTED, f"{IN_LUA} ")
    for printed in batch.printed:  # what is undefined may be printed as it stands
        text = everything_in(Batch((printed,), (), {}))
        assert str(date.today().year) not in text
    assert len(batch.failures) >= len(names) - 1


def test_lua_of_a_preamble_does_nothing_elsewhere(home: Path) -> None:
    lua = "".join(
        f"print('[{name}]', pcall(function() {told(code, home)} end)) "
        for name, code in IN_PREAMBLE.items()
    )
    run = print_batch([Document("x", "", IN_LUA, f"{SCRIPTED}\\directlua{{{lua}}}\n")])
    assert len(run.printed) == 1


@pytest.mark.parametrize("attack", GREEDY.values(), ids=GREEDY)
def test_a_document_without_end_costs_itself_only(
    attack: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name, seconds in {"_SECONDS_A_RUN": 1.0, "_SECONDS_A_DOCUMENT": 0.1}.items():
        monkeypatch.setattr(module, name, seconds)
    documents = [Document(str(n), "", attack if n == 3 else f"text {n}", PLAIN) for n in range(6)]
    batch = print_batch(documents)
    assert [printed.name for printed in batch.printed] == ["0", "1", "2", "4", "5"]
    (failure,) = batch.failures
    assert failure.name == "3"
    assert failure.complaint

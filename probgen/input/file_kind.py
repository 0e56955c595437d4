"""Which of probgen's files a person has named where another belongs, by its ending and fields."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

from probgen.input.fault import Fault, InputError
from probgen.input.file import a
from probgen.input.remedy import BuildIt, Remedy, WorkIt

ASSIGNMENT: Final = "assignment file"
TEMPLATE: Final = "template"
BANK: Final = "bank"
CLASS_LIST: Final = "class list"
_FIELDS: Final[dict[str, tuple[str, ...]]] = {
    ASSIGNMENT: ("roster", "problem"),
    TEMPLATE: ("statement", "find", "given"),
    BANK: ("template",),
}
"""Fields that no other kind of file has at its top."""
_TABLES: Final = (".csv", ".tsv", ".xlsx", ".xls", ".ods")


def kind_of(content: Mapping[str, Any]) -> str:
    """What a TOML file is, "" where its fields do not tell."""
    found = [kind for kind, fields in _FIELDS.items() if any(each in content for each in fields)]
    return found[0] if len(found) == 1 else ""


def require_kind(content: Mapping[str, Any], wanted: str, path: Path | str) -> None:
    """Raises InputError where a TOML file is plainly of another kind than the one wanted."""
    found = kind_of(content)
    if found not in ("", wanted):
        raise _other(found, wanted, str(path))


def require_no_table(path: Path, wanted: str) -> None:
    """Raises InputError where somebody names a spreadsheet's file in place of what names it."""
    if path.suffix.lower() in _TABLES:
        raise _other(CLASS_LIST, wanted, str(path))


def _other(found: str, wanted: str, path: str) -> InputError:
    remedies: dict[str, Remedy] = {ASSIGNMENT: BuildIt(path), TEMPLATE: WorkIt(path)}
    field = {CLASS_LIST: "roster", BANK: "bank"}.get(found)
    mend = f'name it in an {ASSIGNMENT}: {field} = "{Path(path).name}"' if field else ""
    return InputError([Fault(path, "", a(found), a(wanted), mend, remedies.get(found))])

"""The command line: its commands, and the one place where failures become messages and exit codes.

0 done; 1 the input is wrong; 2 wrong usage (click's own); 3 something outside failed;
130 Ctrl-C.  No traceback reaches a user for any of these.  Everything heavy is imported by a
command when it runs.
"""

from __future__ import annotations

from typing import Final, NoReturn

import click

from probgen import __version__
from probgen.cli.bank.group import bank
from probgen.cli.build import build
from probgen.cli.check import check
from probgen.cli.demo import demo
from probgen.cli.form import form
from probgen.cli.list import list_templates
from probgen.cli.mark import mark
from probgen.cli.mend import told, told_by_system
from probgen.cli.new import new
from probgen.cli.reprint import reprint
from probgen.cli.solutions import solutions
from probgen.cli.terminal import make_tolerant, say
from probgen.cli.trace import trace
from probgen.cli.work import work
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError

_WRONG_INPUT = 1
_OUTSIDE = 3
_INTERRUPTED = 130  # as shells have it


class _Guarded(click.Group):
    """A group whose commands end with a message and an exit code, whatever happens."""

    def invoke(self, ctx: click.Context) -> object:
        make_tolerant()
        try:
            return super().invoke(ctx)
        except InputError as error:
            _stop(error, told(error), _WRONG_INPUT)
        except OutsideError as error:
            _stop(error, told(error), _OUTSIDE)
        except KeyboardInterrupt as error:
            _stop(error, "stopped", _INTERRUPTED)
        except (BrokenPipeError, click.exceptions.Exit):
            raise
        except OSError as error:
            _stop(error, told_by_system(error, self._makes_folder(ctx)), _OUTSIDE)

    def _makes_folder(self, ctx: click.Context) -> bool:
        """Whether the command that was called has an option --out."""
        command = self.get_command(ctx, ctx.invoked_subcommand or "")
        return command is not None and any(each.name == "out" for each in command.params)


def _stop(error: BaseException, message: str, code: int) -> NoReturn:
    """Ends with a message and what is noted on the error, such as how to go on."""
    for line in (message, *getattr(error, "__notes__", ())):
        say(line, err=True)
    raise click.exceptions.Exit(code)


@click.group(cls=_Guarded, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="probgen")
def main() -> None:
    """Static-equilibrium problems with own numbers for each student, and worked keys."""


_COMMANDS: Final = (
    demo, new, list_templates, work, check, build, trace, reprint, solutions, form, mark, bank,
)  # fmt: skip
for command in _COMMANDS:
    main.add_command(command)

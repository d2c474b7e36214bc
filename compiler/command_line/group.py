"""All commands, for click; what a run of one ends with."""

from __future__ import annotations

import errno
import os
import sys
from importlib import import_module
from typing import Any, Final, cast

import click

from .. import __version__
from ..door.inputs import EXTENSIONS
from ..door.settings import read_settings
from ..door.stopping import INTERRUPTED, SHELL_BASE
from ..failures import MachineFailed, OwnMistake, ShelfDamaged, machine_text, mistake_text
from ..words.commands import overview
from .console import COMPLAINED, OWN_MISTAKE, USED_WRONGLY, complain, show_diagnostics

NAME: Final = "piecewright"
VARIABLE: Final = "_PIECEWRIGHT_COMPLETE"  # where a shell says that it asks what may follow
NEAR: Final = 0.5  # likeness of words, from 0 to 1: 'bild' is 0.89 like 'build', 'make' 0.4 like 'compare'
HELPS: Final = frozenset(("-h", "--help", "-V", "--version"))  # needed most when something is wrong
NOBODY_READS: Final = SHELL_BASE + 13  # as a shell counts a program stopped by a closed pipe


class Commands(click.Group):
    """The commands by their names, each loaded when it is asked for: a build needs nothing of the others'."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Their names, for help and completion."""
        return sorted(overview.COMMANDS)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Each in a line of the help; none is loaded for it."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, overview.COMMANDS[name]) for name in self.list_commands(ctx)])

    def shell_complete(self, ctx: click.Context, incomplete: str) -> list[Any]:
        """Those that begin so, for the shell, and the options; none is loaded for it."""
        from click.shell_completion import CompletionItem

        begun = [name for name in self.list_commands(ctx) if name.startswith(incomplete)]
        named = [CompletionItem(name, help=overview.COMMANDS[name]) for name in begun]
        return [*named, *click.Command.shell_complete(self, ctx, incomplete)]

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of that name: what its own module calls by it."""
        if cmd_name not in overview.COMMANDS:
            return None
        return cast(click.Command, getattr(import_module(f".commands.{cmd_name}", __package__), cmd_name))

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """The command and what follows it; for a word that is none, a use error with the nearest, or with
        what can be done with a file."""
        word = args[0] if args else ""
        unknown = word and word not in overview.COMMANDS and not word.startswith("-")
        if unknown and not ctx.resilient_parsing:
            from difflib import get_close_matches

            if word.endswith(EXTENSIONS) or os.path.exists(word):
                raise click.UsageError(overview.command_wanted(word), ctx)
            near = get_close_matches(word.lower(), sorted(overview.COMMANDS), n=1, cutoff=NEAR)
            raise click.UsageError(overview.no_command(word, near, sorted(overview.COMMANDS)), ctx)
        return super().resolve_command(ctx, args)


@click.group(
    cls=Commands,
    help=overview.HELP,
    epilog=overview.EXAMPLES,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)
@click.version_option(__version__, "-V", "--version", prog_name=NAME, message="%(prog)s %(version)s")
def commands() -> None:
    """All commands."""


def run_command(given: list[str]) -> int:
    """The exit status of one command. click's own `main` would end the process its own way."""
    if VARIABLE in os.environ:
        commands.main(given, prog_name=NAME, complete_var=VARIABLE)
    try:
        if not given:
            click.echo(commands.get_help(click.Context(commands, info_name=NAME)), err=True)
            return USED_WRONGLY
        settings = read_settings()
        if settings.value is None or (settings.failed and not HELPS & {*given}):
            source = settings.value.source if settings.value else None
            show_diagnostics(settings.diagnostics, {source.name: source} if source else {}, err=True)
            return COMPLAINED
        of_all = dict.fromkeys(overview.COMMANDS, settings.value.options)
        with commands.make_context(NAME, list(given), obj=settings.value, default_map=of_all) as context:
            status = commands.invoke(context)
        return status if isinstance(status, int) else 0
    except click.Abort:
        end_line()
        return INTERRUPTED
    except click.exceptions.Exit as end:
        return end.exit_code
    except click.ClickException as problem:
        problem.show()
        return USED_WRONGLY


def status_after(problem: Exception) -> int:
    """The exit status after an exception, told in one line on standard error."""
    try:
        if isinstance(problem, OSError) and problem.errno in (errno.EPIPE, errno.ESHUTDOWN):
            _forget_output()
            return NOBODY_READS
        if isinstance(problem, OSError | MemoryError):
            _forget_output()
            complain(machine_text(problem))
            return COMPLAINED
        if isinstance(problem, ShelfDamaged):
            show_diagnostics(problem.said, {problem.source.name: problem.source}, err=True)
            return COMPLAINED
        if isinstance(problem, MachineFailed):
            complain(str(problem))
            return COMPLAINED
        complain(str(problem) if isinstance(problem, OwnMistake) else mistake_text(NAME, problem))
    except OSError:
        _forget_output()  # nobody reads standard error, either
    return OWN_MISTAKE


def _forget_output() -> None:
    """Sends what is still to be written nowhere, so that Python does not complain of it when it ends."""
    for stream, real in ((sys.stdout, sys.__stdout__), (sys.stderr, sys.__stderr__)):
        if stream is real and stream is not None:
            try:
                stream.flush()
            except OSError:
                os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def end_line() -> None:
    """A new line after the ^C that a terminal shows."""
    try:
        click.echo(err=True)
    except OSError:
        _forget_output()

"""`piecewright completion`: what a shell needs to complete our commands."""

from __future__ import annotations

from typing import Final

import click

from ...words.commands import completion as words
from ..choices import command
from ..console import CLEAN, say
from ..group import NAME, VARIABLE

SHELLS: Final = ("bash", "zsh", "fish")


@command("completion", help=words.HELP, epilog=words.EXAMPLES)
@click.argument("shell", type=click.Choice(SHELLS))
@click.pass_context
def completion(context: click.Context, shell: str) -> int:
    """The exit status, when the script is printed."""
    from click.shell_completion import get_completion_class

    kind = get_completion_class(shell)
    assert kind is not None, shell
    say(kind(context.find_root().command, {}, NAME, VARIABLE).source())
    return CLEAN

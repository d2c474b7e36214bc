"""`piecewright completion`: what a shell needs to complete our commands."""

from __future__ import annotations

from typing import Final

import click

from ..choices import command
from ..console import CLEAN, say
from ..group import VARIABLE

SHELLS: Final = ("bash", "zsh", "fish")

EXAMPLES: Final = """
\b
Put one of these at the end of your shell's own start-up file:
  eval "$(piecewright completion bash)"             in ~/.bashrc
  eval "$(piecewright completion zsh)"              in ~/.zshrc
  piecewright completion fish | source              in ~/.config/fish/config.fish
"""


@command("completion", short_help="Let your shell complete commands.", epilog=EXAMPLES)
@click.argument("shell", type=click.Choice(SHELLS))
@click.pass_context
def completion(context: click.Context, shell: str) -> int:
    """Print what SHELL needs to complete the commands, options and files of piecewright."""
    from click.shell_completion import get_completion_class

    kind = get_completion_class(shell)
    assert kind is not None, shell
    say(kind(context.find_root().command, {}, "piecewright", VARIABLE).source())
    return CLEAN

"""`piecewright completion`: its help."""

from __future__ import annotations

from typing import Final

HELP: Final = """\
Print what SHELL needs to complete the commands, options and files of piecewright.
"""
EXAMPLES: Final = """
\b
Put one of these at the end of your shell's own start-up file:
  eval "$(piecewright completion bash)"             in ~/.bashrc
  eval "$(piecewright completion zsh)"              in ~/.zshrc
  piecewright completion fish | source              in ~/.config/fish/config.fish
"""

"""Piecewright: a small language for patchwork blocks, compiled to true-size templates.

    work = piecewright.compile_file("vane.block")
    print(work.blocks[0].title, len(work.blocks[0].pieces))
    work.write("vane.pdf")

All that may be asked for is described in grammar/API.md.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

__version__ = "0.1.0"

if TYPE_CHECKING:
    from .door.messages import CompileError, Message
    from .door.tools import (
        BlockChange,
        Found,
        TemplateChange,
        compare_works,
        find_blocks,
        format_text,
        lint_text,
        resize_text,
    )
    from .door.work import Block, Quilt, Work, compile_file, compile_folder, compile_text
    from .failures import MachineFailed

__all__ = [
    "Block",
    "BlockChange",
    "CompileError",
    "Found",
    "MachineFailed",
    "Message",
    "Quilt",
    "TemplateChange",
    "Work",
    "compare_works",
    "compile_file",
    "compile_folder",
    "compile_text",
    "find_blocks",
    "format_text",
    "lint_text",
    "resize_text",
]

_HOMES = {
    "CompileError": ".door.messages",
    "MachineFailed": ".failures",
    "Message": ".door.messages",
    **dict.fromkeys(
        ("Block", "Quilt", "Work", "compile_file", "compile_folder", "compile_text"), ".door.work"
    ),
}


def __getattr__(name: str) -> Any:
    """What stands in __all__, loaded when it is first asked for: `import piecewright` alone loads nothing."""
    if name not in __all__:
        raise AttributeError(name)
    from importlib import import_module

    return getattr(import_module(_HOMES.get(name, ".door.tools"), __name__), name)

"""Grammar file to the tables that the parser runs on: `python -m piecewright.language.regenerate`.

In: grammar/piecewright.lark, read by lark as LALR(1). Out: `_tables.py` beside this module, plain tuples, so
that compiling a block needs neither lark nor the 110 ms of building. States are numbered in the order a walk
from the start meets them, so the same grammar always makes the same bytes. A test compares them.
"""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Any, Final

TABLES_FILE: Final = Path(__file__).with_name("_tables.py")

HEADER: Final = '''# ruff: noqa: E501
"""Parser tables made from grammar/piecewright.lark. Do not edit: run

    python -m piecewright.language.regenerate

ACTIONS: a row a state of symbol, number pairs: a state to go to, or -1 - the rule to reduce by.
RULES: name, number of symbols, which of them are kept.
"""

from __future__ import annotations

'''


def grammar_text() -> str:
    """The grammar of edition 1."""
    return files("piecewright.grammar").joinpath("piecewright.lark").read_text(encoding="utf-8")


def build_lark(start: list[str], *, strict: bool = False) -> Any:
    """Lark's own parser for the grammar, with the given start rules."""
    from lark import Lark

    return Lark(
        grammar_text(),
        parser="lalr",
        lexer="contextual",
        start=start,
        strict=strict,
        maybe_placeholders=False,
        propagate_positions=True,
    )


def tables_text() -> str:
    """The text of `_tables.py` for the grammar as it stands."""
    lark = build_lark(["file"])
    table = lark.parser.parser._parse_table
    order = _walk(table)
    rules = list(
        dict.fromkeys(
            arg
            for state in order
            for _, (action, arg) in sorted(table.states[state].items())
            if str(action) == "Reduce"
        )
    )
    number = {state: index for index, state in enumerate(order)}
    rows = [
        tuple(
            part
            for symbol, (action, arg) in sorted(table.states[state].items())
            for part in (symbol, -1 - rules.index(arg) if str(action) == "Reduce" else number[arg])
        )
        for state in order
    ]
    terminals = sorted((each.name, each.pattern.type, each.pattern.value) for each in lark.terminals)
    return (
        HEADER
        + "\n".join(
            (
                f"START = {number[table.start_states['file']]}",
                f"END = {number[table.end_states['file']]}",
                _constant("TERMINALS", terminals),
                _constant("RULES", [_rule(each) for each in rules]),
                _constant("ACTIONS", rows),
            )
        )
        + "\n"
    )


def _walk(table: Any) -> list[int]:
    """Every state, in the order a walk from the start first meets it."""
    order = {table.start_states["file"]: None}
    queue = list(order)
    while queue:
        moves = sorted(table.states[queue.pop(0)].items())
        fresh = [arg for _, (action, arg) in moves if str(action) == "Shift" and arg not in order]
        order.update(dict.fromkeys(fresh))
        queue.extend(dict.fromkeys(fresh))
    return list(order)


def _rule(rule: Any) -> tuple[str, str, int, tuple[int, ...]]:
    """Origin, name for the builder, length and kept places."""
    origin = str(rule.origin.name)
    kept = tuple(at for at, symbol in enumerate(rule.expansion) if not (symbol.is_term and symbol.filter_out))
    return origin, rule.alias or origin, len(rule.expansion), kept


def _constant(name: str, rows: Any) -> str:
    """One tuple, a row a line."""
    return "\n".join((f"{name} = (", *(f"    {row!r}," for row in rows), ")"))


if __name__ == "__main__":
    TABLES_FILE.write_text(tables_text(), encoding="utf-8")

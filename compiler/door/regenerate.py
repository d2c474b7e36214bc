"""A maintainer's command: writes the page of reference, `grammar/API.md`, from what stands in the door.

python -m piecewright.door.regenerate
"""

from __future__ import annotations

import inspect
import sys
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import Any, Final

PAGE: Final = Path(__file__).parents[2] / "grammar" / "API.md"
HEAD: Final = """\
# Piecewright from other programs

Written by `python -m piecewright.door.regenerate` from the docstrings; do not edit it here.

A block to its templates, in three lines:

```python
import piecewright

work = piecewright.compile_file("vane.block")
work.write("vane.pdf")
```

A quilt to its cutting chart:

```python
import piecewright

work = piecewright.compile_file("breakwater.quilt", ruler="1/8in", buy="metres")
for cut in work.quilts[0].cuts:
    print(cut.key, cut.fabric, cut.cuts, cut.kind, cut.width, cut.height)
```

How much of each fabric to buy, the rows in the order of sewing, and the chart alone as a PDF:

```python
import piecewright

quilt = piecewright.compile_file("breakwater.quilt").quilts[0]
for cloth in quilt.cloths:
    print(cloth.title, cloth.buy_text)
for stage in quilt.steps:
    print(stage.title, [row.name for row in stage.rows])
quilt.write("chart.pdf", parts=["chart"])
```

What is wrong with a text, place by place; nothing is made of it:

```python
import piecewright

work = piecewright.compile_text('edition 1\\nblock "Gate" { finished 4in\\n seam center -- gaet\\n}')
for each in work.diagnostics:
    print(each.line, each.column, each.severity, each.code, each.message, each.help)
try:
    work.write("gate.pdf")
except piecewright.CompileError as wrong:
    print(wrong)
```

Blocks of a folder, each as a booklet for a class, one of them sewn on foundations:

```python
import piecewright

work = piecewright.compile_folder("blocks", paper="a4", sewing={"Tidewater Vane": "foundation"})
for block in work.blocks:
    print(block.title, len(block.pieces), "pieces, sharpest corner", block.difficulty.smallest_angle)
work.write_all("booklets", booklet=True, formats=["pdf", "html"])
```

Lengths are inches: a `Fraction` where the drafting is exact, a `float` elsewhere, both of which `Number`
stands for. Places are pairs of them, x right and y down from the top left. Records cannot be changed. What
`piecewright explain --format json` prints is made from these records, under the same names but where a field
says otherwise.
"""


def page() -> str:
    """The whole page."""
    return "\n".join([HEAD, *_of_package(), *_of_records()]).rstrip() + "\n"


def _of_package() -> Iterator[str]:
    """What `piecewright` itself offers."""
    package = import_module(__package__.partition(".")[0])
    yield "## The package\n"
    names = sorted(package.__all__, key=lambda name: (inspect.isclass(getattr(package, name)), name))
    for name in names:
        found = getattr(package, name)
        yield from _of_class(found) if inspect.isclass(found) else _of_function(f"piecewright.{name}", found)
    yield from _of_class(import_module(".choices", __package__).Choices)
    yield from _of_class(import_module(".tools", __package__).Conditions)
    yield from _of_class(import_module(".searching.block_facts", __package__.partition(".")[0]).BlockFacts)
    yield from _of_class(import_module(".messages", __package__).Mend)


def _of_records() -> Iterator[str]:
    """The records that blocks and quilts are told in."""
    records = f"{__package__}.records"
    for name in ("shapes", "block", "sewing", "quilt", "quilt_sewing"):
        module = import_module(f"{records}.{name}")
        yield f"## {(module.__doc__ or '').strip().splitlines()[0].rstrip('.')}\n"
        for each in _own_classes(module):
            yield from _of_class(each)
    yield from _of_class(import_module(".sewing.difficulty", __package__.partition(".")[0]).Difficulty)


def _own_classes(module: ModuleType) -> list[type]:
    classes = [each for _, each in inspect.getmembers(module, inspect.isclass)]
    own = [each for each in classes if each.__module__ == module.__name__]
    return sorted(own, key=lambda each: inspect.getsourcelines(each)[1])


def _of_class(kind: type) -> Iterator[str]:
    """A class: what it is, its fields, and its methods that are its own."""
    bases = [base for base in kind.__mro__[1:-1] if is_dataclass(base) or issubclass(base, Exception)]
    after = f"({', '.join(base.__name__ for base in bases[:1])})" if bases else ""
    yield f"### {kind.__name__}{after}\n\n{inspect.getdoc(kind)}\n"
    told = list(_fields_of(kind))
    if told:
        yield "\n".join(told) + "\n"
    for name, member in vars(kind).items():
        if name.startswith("_"):
            continue
        if inspect.isfunction(member):
            yield from _of_function(f"{kind.__name__}.{name}", member)
        elif isinstance(member, property) or hasattr(member, "attrname"):
            made: Callable[..., Any] = getattr(member, "fget", None) or member.func
            gives = made.__annotations__.get("return", "")
            yield f"- `{name}: {gives}`. {inspect.getdoc(made)}\n"


def _fields_of(kind: type) -> Iterator[str]:
    keys = getattr(kind, "KEYS", {})
    if not is_dataclass(kind):
        return
    inherited = {name for base in kind.__mro__[1:] for name in getattr(base, "__dataclass_fields__", {})}
    for each in fields(kind):
        if not each.name.startswith("_") and each.name not in inherited:
            key = f" (in JSON `{keys[each.name]}`)" if each.name in keys else ""
            yield f"- `{each.name}: {each.type}`{key}"


def _of_function(name: str, function: Callable[..., Any]) -> Iterator[str]:
    """A function: how it is called, and what it does."""
    called = f"{name.rpartition('.')[2]}({_arguments(function)})"
    gives = function.__annotations__.get("return", "None")
    yield f"### {name}\n\n    {called} -> {gives}\n\n{inspect.getdoc(function)}\n"


def _arguments(function: Callable[..., Any]) -> str:
    told, starred = [], False
    for each in inspect.signature(function).parameters.values():
        if each.name == "self":
            continue
        if each.kind is each.KEYWORD_ONLY and not starred:
            told.append("*")
            starred = True
        stars = "**" if each.kind is each.VAR_KEYWORD else ""
        default = "" if each.default is each.empty else f" = {each.default!r}"
        told.append(f"{stars}{each.name}: {each.annotation}{default}")
    return ", ".join(told)


def main() -> int:
    """Writes the page."""
    PAGE.write_text(page())
    print(f"Wrote {PAGE}.")
    return 0


if __name__ == "__main__":
    sys.exit(main())

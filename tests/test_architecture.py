"""The shape of the program, held: which folder may import which, how long a module may be, who touches
what."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest

COMPILER = Path(__file__).parent.parent / "compiler"
MODULES = sorted(COMPILER.rglob("*.py"))

ORDER = (
    "measure", "geometry", "words", "looks", "diagnostics", "words.messages", "words.catalogue", "failures",
    "language", "drafting", "cutting", "sewing", "quilt", "planning", "lint", "searching",
    "words.work", "words.pages", "sheets", "pipeline", "words.commands", "shelves", "door",
    "command_line",
)  # fmt: skip
"""Each folder (or module of the top folder) imports only from those before it. Folders of words stand where
they are read first."""

SMALL = 0.005
"""What is less is no size of anything: neither inches, points nor shares of a page go so low."""

TRADE = (0.0031308, 0.003882, 0.004733)
"""Small numbers of open standards and published tables: the foot of the curve of light in sRGB (IEC
61966-2-1), entries of the matrices of Machado, Oliveira and Fernandes (2009)."""

LINES_MOST = 400
LONG = {
    "language/_tables.py": "generated from the grammar",
    "language/tree.py": "a catalogue: one small class a statement",
}

READERS = ("shelves", "door")
"""Folders that read files."""

WRITERS = {
    "door/writing.py": "files made whole, or not at all",
    "door/blocks.py": "makes the folder they go to",
    "shelves/kept.py": "what was found out of shelves, in a folder of the user's for such",
    "shelves/repository.py": "a git folder of our own, in a place of the system's for such",
}
"""Modules below the command line that write files, and what."""

WORLDLY = {
    "shelves/repository.py": ("subprocess", "tempfile", "os.environ"),
    "door/writing.py": ("time", "tempfile"),
    "shelves/kept.py": ("os.environ", "tempfile"),
}
"""Modules below the command line that look at the clock, the machine or what is around the process. Nothing
that is made follows from it: git's place, whose hidden files are dead, where things are kept."""

OPEN_DOORS = {
    "sheets/drawing/typeface.py": "reads the faces of the font package",
    "words/catalogue/codes.py": "reads the texts of the catalogue, which lie beside it in the package",
    "language/regenerate.py": "a maintainer's command, never imported: reads the grammar, writes the tables",
    "door/regenerate.py": "a maintainer's command, never imported: writes the page of reference",
}
"""Modules below the command line that touch files, and why."""

ENDERS = ("language/regenerate.py", "door/regenerate.py", "shelves/index_work.py")
"""Modules below the command line that print or end a process: maintainers' commands, and workers, which end
with the process that started them."""

DOOR = ("door", "failures", "words", "words.messages", "words.catalogue", "words.commands", "diagnostics")
"""What the command line is made of, beside click: the door, and how things are said."""

CAIRO = ("sheets/drawing/cairo_library.py", "sheets/drawing/draw_png.py")
"""The modules that know cairo: one that loads it and hands on what it has, one that turns SVG into PNG."""

WORLD = (
    "time",
    "datetime",
    "random",
    "secrets",
    "uuid",
    "socket",
    "logging",
    "subprocess",
    "tempfile",
    "getpass",
)


READS = ("open", "fdopen", "read_text", "read_bytes", "scandir", "listdir", "glob", "rglob", "iterdir")
WRITES = ("write_text", "write_bytes", "mkdir", "makedirs", "unlink", "rename", "rmdir", "rmtree")
OS_WRITES = ("os.replace", "os.write", "os.link", "os.remove", "os.symlink", "os.truncate")


def name_of(path: Path) -> str:
    return path.relative_to(COMPILER).as_posix()


def folder_of(path: Path) -> str:
    parts = path.relative_to(COMPILER).parts
    return place_in_order(parts[:-1]) if len(parts) > 1 else path.stem


def place_in_order(parts: Sequence[str]) -> str:
    """The folder's name; of words, whose folders stand at several places, with the folder within."""
    whole = ".".join(parts[:2])
    return whole if whole in ORDER else parts[0]


def imported(path: Path) -> Iterator[tuple[str, int]]:
    """Every folder of the program that a module imports from, with the line."""
    inside = path.relative_to(COMPILER).parts[:-1]
    tree = ast.parse(path.read_text())
    described = {id(each) for node in tree.body if describes(node, path) for each in ast.walk(node)}
    for node in ast.walk(tree):
        if id(node) in described:
            continue
        if isinstance(node, ast.ImportFrom) and node.level:
            up = inside[: len(inside) - (node.level - 1)]
            into = [*up, *(node.module or "").split(".")] if node.module else list(up)
            names = [into] if into else [[alias.name] for alias in node.names if alias.name != "__version__"]
            for each in names:
                yield place_in_order(each), node.lineno
        elif isinstance(node, ast.ImportFrom | ast.Import):
            for each in [node.module] if isinstance(node, ast.ImportFrom) else [a.name for a in node.names]:
                outside = not (each or "").startswith("piecewright")
                assert outside, f"{name_of(path)}:{node.lineno}: import relatively"


def describes(node: ast.stmt, path: Path) -> bool:
    """Whether a module of words names there what it describes: as types, or while a sentence is made."""
    types = isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING"
    return folder_of(path).startswith("words") and (types or isinstance(node, ast.FunctionDef))


def libraries(path: Path) -> Iterator[tuple[str, int]]:
    """Every other package that a module imports, with the line."""
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield alias.name.split(".")[0], node.lineno
        elif isinstance(node, ast.ImportFrom) and not node.level:
            yield (node.module or "").split(".")[0], node.lineno


def below_command_line() -> list[Path]:
    return [path for path in MODULES if folder_of(path) not in ("command_line", "__init__", "__main__")]


def test_there_are_modules_to_look_at() -> None:
    assert len(MODULES) > 50 and {folder_of(path) for path in MODULES} - {"__init__", "__main__"} <= set(
        ORDER
    )


@pytest.mark.parametrize("path", below_command_line(), ids=name_of)
def test_a_folder_imports_only_from_those_before_it(path: Path) -> None:
    own = folder_of(path)
    for folder, line in imported(path):
        assert folder in ORDER, f"{name_of(path)}:{line}: {folder} has no place in the order"
        assert ORDER.index(folder) <= ORDER.index(own), f"{name_of(path)}:{line}: {own} imports {folder}"


@pytest.mark.parametrize("path", [each for each in MODULES if folder_of(each) == "command_line"], ids=name_of)
def test_the_command_line_uses_only_the_door(path: Path) -> None:
    for folder, line in imported(path):
        assert folder in ("command_line", *DOOR), f"{name_of(path)}:{line}: {folder}"


@pytest.mark.parametrize("path", below_command_line(), ids=name_of)
def test_nothing_below_the_command_line_knows_click(path: Path) -> None:
    assert all(library != "click" for library, _ in libraries(path))


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_no_module_is_longer_than_the_ceiling(path: Path) -> None:
    lines = len(path.read_text().splitlines())
    if name_of(path) in LONG:
        assert lines > LINES_MOST, f"{name_of(path)} needs no exemption"
    else:
        assert lines <= LINES_MOST


def calls(path: Path) -> Iterator[tuple[str, int]]:
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Call):
            yield ast.unparse(node.func), node.lineno


@pytest.mark.parametrize("path", below_command_line(), ids=name_of)
def test_nothing_prints_exits_or_touches_files_below_the_command_line(path: Path) -> None:
    for called, line in calls(path):
        where = f"{name_of(path)}:{line}"
        if name_of(path) not in ENDERS:
            assert called not in ("print", "input", "exit", "quit", "sys.exit", "os._exit"), (
                f"{where} {called}"
            )
        if name_of(path) in OPEN_DOORS:
            continue
        if folder_of(path) not in READERS:
            assert called.rpartition(".")[2] not in READS, f"{where} {called}"
        if name_of(path) not in WRITERS:
            assert called.rpartition(".")[2] not in WRITES and called not in OS_WRITES, f"{where} {called}"


@pytest.mark.parametrize("path", below_command_line(), ids=name_of)
def test_nothing_reads_the_clock_chance_or_the_environment_below_the_command_line(path: Path) -> None:
    for library, line in libraries(path):
        known = library not in WORLD or library in WORLDLY.get(name_of(path), ())
        assert known, f"{name_of(path)}:{line}: {library}"
    text = path.read_text()
    for word in ("os.environ", "getenv", "getcwd", "expanduser"):
        known = word not in text or word in WORLDLY.get(name_of(path), ())
        assert known, f"{name_of(path)}: {word}"


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_only_two_modules_know_cairo(path: Path) -> None:
    known = [line for library, line in libraries(path) if library in ("cairocffi", "cairosvg", "cffi")]
    assert not known or name_of(path) in CAIRO, f"{name_of(path)}:{known}"


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_every_module_says_what_it_is_for(path: Path) -> None:
    assert ast.get_docstring(ast.parse(path.read_text())), name_of(path)


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_functions_fit_a_screen(path: Path) -> None:
    """Under 60 lines, docstrings counted (EXEMPLARS, house style)."""
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            length = (node.end_lineno or node.lineno) - node.lineno + 1
            assert length <= 60, f"{name_of(path)}:{node.lineno}: {node.name} has {length} lines"


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_every_tolerance_stands_among_the_tolerances(path: Path) -> None:
    """A number so small is a tolerance: it has a name and a reason in measure/tolerance.py."""
    if name_of(path) in ("measure/tolerance.py", "language/_tables.py"):
        return
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Constant) and isinstance(node.value, float) and node.value not in TRADE:
            assert node.value == 0 or abs(node.value) >= SMALL, f"{name_of(path)}:{node.lineno}: {node.value}"

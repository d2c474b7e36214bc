"""A block's statements, one after another, into a sketch: in every copy of every turn and mirror."""

from __future__ import annotations

from collections.abc import Mapping

from ..diagnostics.source import Span
from ..geometry.curves import along
from ..geometry.edge import Edge
from ..geometry.motion import mirror_in
from ..language import tree
from ..measure.angle import heading_of
from ..words.messages import pieces as complain_pieces
from ..words.messages import points as complain_points
from ..words.messages import seams as complain
from .context import Bench, Context
from .copies import copies_of
from .ground import once
from .placing import alternate_cells, place_in_regions, place_rounds, place_row
from .points import defined_place, line_of, place_of
from .seams import DrawnLine, SeamStatement, path_edges, seam_edges
from .sketch import AllowanceWish, Claim, GrainWish, Placed, Sketch, Unit


def sketch_body(block: tree.Block, bench: Bench, units: Mapping[str, Unit | None]) -> Sketch:
    """Everything that the block puts down."""
    sketch = Sketch()
    here = Context(bench, block.body)
    check_names(block.body, bench, {})
    _draw(block.body, here, units, sketch)
    alternate = once(block.body, tree.Alternate, "alternate", bench)
    if alternate is not None:
        alternate_cells(alternate, here, units, sketch)
    for number, placed in enumerate(sketch.placed):
        _draw_placed(number, placed, sketch)
    for definition in _definitions(block.body):
        if definition.name.span not in bench.used_points and not bench.failed:
            bench.say(complain_points.point_unused(definition.name))
    return sketch


def check_names(body: tuple[tree.Statement, ...], bench: Bench, outer: dict[str, Span]) -> None:
    """Complains of points named twice in one body, and of points that hide a predefined or an outer one."""
    own: dict[str, Span] = {}
    for each in body:
        if not isinstance(each, tree.PointDef):
            continue
        name = each.name
        if name.text in own:
            bench.say(complain_points.point_twice(name, own[name.text]))
        elif name.text in bench.frame.predefined or name.text == "start":
            bench.say(complain_points.point_hides(name, None))
        elif name.text in outer:
            bench.say(complain_points.point_hides(name, outer[name.text]))
        own.setdefault(name.text, name.span)
    for each in body:
        if isinstance(each, tree.Copying):
            check_names(each.body, bench, outer | own)


def _definitions(body: tuple[tree.Statement, ...]) -> list[tree.PointDef]:
    definitions: list[tree.PointDef] = []
    for each in body:
        if isinstance(each, tree.PointDef):
            definitions.append(each)
        elif isinstance(each, tree.Copying):
            definitions += _definitions(each.body)
    return definitions


def _draw(
    body: tuple[tree.Statement, ...], here: Context, units: Mapping[str, Unit | None], sketch: Sketch
) -> None:
    """One copy of a body."""
    for each in body:
        match each:
            case tree.Seam() | tree.SeamThrough() | tree.SeamCircle() | tree.SeamSmooth():
                _draw_seam(each, here, sketch)
            case tree.PieceDef():
                _claim(each, here, sketch)
            case tree.Turn() | tree.Repeat():
                for copy in copies_of(each, here):
                    _draw(each.body, copy, units, sketch)
            case tree.MirrorIn():
                ray = line_of(each.line, here)
                if ray is not None:
                    for copy in here.images(each, mirror_in(ray[0], along(*ray, 1))):
                        _draw(each.body, copy, units, sketch)
            case tree.Row() if here.parent is None:
                place_row(each, here, units, sketch)
            case tree.Alternate() if here.parent is None:
                pass  # fills what is left, when all else lies
            case tree.Row() | tree.Alternate():
                word = "row" if isinstance(each, tree.Row) else "alternate"
                assert here.statement is not None
                here.bench.say(complain.row_in_turn(each.span, word, words_of(here.statement)))
            case tree.Place():
                place_in_regions(each, here, units, sketch)
            case tree.Rounds():
                place_rounds(each, here, sketch)
            case tree.Grain():
                _grain(each, here, sketch)
            case tree.Allowance():
                _allowance(each, here, sketch)
            case tree.PointDef():
                place = defined_place(here.definitions[each.name.text], here)
                if place is not None:
                    sketch.named.append(here.to_block(place))
                    if not any(each.copy for each in here.chain()):
                        sketch.called.append((each, here.to_block(place)))
            case _:  # statements about the block as a whole are read elsewhere
                pass


def words_of(statement: tree.Copying) -> str:
    """How a symmetry statement opens."""
    if isinstance(statement, tree.MirrorIn):
        return "mirror"
    word = "turn" if isinstance(statement, tree.Turn) else "repeat"
    return f"{word} {statement.count.value}"


def _draw_seam(seam: SeamStatement, here: Context, sketch: Sketch) -> None:
    turn = here.statement.span if here.statement else None
    for edge, span in seam_edges(seam, here):
        sketch.lines.append(DrawnLine(here.to_block.edge(edge), span, -1, here.copy, turn))


def _claim(piece: tree.PieceDef, here: Context, sketch: Sketch) -> None:
    if len(piece.roles) > 1 and here.statement is None:
        here.bench.say(complain_pieces.roles_without_turn(piece))
    fabric = piece.roles[here.copy % len(piece.roles)].text
    for phrase in piece.places:
        place = place_of(phrase, here)
        if place is not None:
            sketch.claims.append(Claim(piece, phrase, here.to_block(place), fabric, here))


def _grain(grain: tree.Grain, here: Context, sketch: Sketch) -> None:
    if grain.line is None:
        sketch.grains.append(GrainWish(grain, "free", here))
        return
    ray = line_of(grain.line, here)
    if ray is not None:
        heading = heading_of(*here.to_block.step(*ray[1])) % 180
        sketch.grains.append(GrainWish(grain, heading, here))


def _allowance(allowance: tree.Allowance, here: Context, sketch: Sketch) -> None:
    if allowance.path is None:
        return
    edges = tuple(here.to_block.edge(edge) for edge, _ in path_edges(allowance.path, here))
    if edges:
        sketch.allowances.append(AllowanceWish(allowance, allowance.width.inches, edges))


def _draw_placed(number: int, placed: Placed, sketch: Sketch) -> None:
    """The lines of a unit: its outline and the seams between its pieces."""

    def line(edge: Edge) -> None:
        sketch.lines.append(DrawnLine(edge, placed.origin, number, placed.copy, placed.turn))

    for edge in placed.outline:
        line(edge)
    if placed.unit is None:
        return
    for edge, _, _ in placed.unit.draft.graph.between():
        line(placed.transform.edge(edge))

"""Random quilts of the library's blocks, of cloths whose print has a direction or none: straight and on
point, sashed, bordered, their blocks turned and mirrored."""

from __future__ import annotations

from random import Random

BLOCKS = (
    "Ohio Star",
    "Shoo Fly",
    "Churn Dash",
    "Friendship Star",
    "Pinwheel Square",
    "Nine Patch",
    "Rail Fence",
    "Evening Star",
    "Spools",
    "Maple Leaf",
    "Half-Square Triangle",
    "Broken Dish",
    "Economy",
    "Bear's Paws",
    "Snowball",
    "Log Cabin",
    "Eight-pointed Star",
    "Puss-in-the-Corner",
)
"""Of the library: squares, rectangles, triangles of both kinds, diamonds, templates of both hands."""

ROLES = ("dark", "light", "medium", "background", "hearth")
CLOTHS = ("ink", "chalk", "fern", "rust")
POSES = ("", "", " turned 90deg", " turned 180deg", " turned 270deg", " mirrored")


def random_quilt(seed: int, prints: bool = True) -> str:
    """A quilt's text. Without `prints` no cloth has a direction."""
    chance = Random(seed)
    size = chance.choice([4, 6, 6, 8, 9])
    count = chance.randint(1, 2)
    titles = chance.sample(BLOCKS, count)
    words = [f"unit{number}" for number in range(count)]
    uses = "".join(f'  use "{title}" as {word}\n' for title, word in zip(titles, words, strict=True))
    ways = [chance.choice([" one way", " one way", " striped", ""]) if prints else "" for _ in CLOTHS]
    shrinks = [chance.choice(["", "", " shrinks 3%"]) for _ in CLOTHS]
    fabrics = "".join(
        f"  fabric {cloth}{way}{loss}\n" for cloth, way, loss in zip(CLOTHS, ways, shrinks, strict=True)
    )
    given = chance.sample(CLOTHS, len(CLOTHS))
    roles = ", ".join(f"{role} = {cloth}" for role, cloth in zip(ROLES, (*given, given[0]), strict=True))
    cell = lambda: f"{chance.choice(words)}{chance.choice(POSES)}"  # noqa: E731
    body = _setting(chance, size, cell)
    return (
        f'edition 1\nquilt "Print Trial {seed}" {{\n{uses}{fabrics}  roles {roles}\n{body}'
        f"{_borders(chance)}  binding 2 1/4in in {chance.choice(CLOTHS)}"
        f"{chance.choice(['', '', ' bias'])}\n  backing in {chance.choice(CLOTHS)}\n  batting\n}}\n"
    )


def _setting(chance: Random, size: int, cell) -> str:
    across, down = chance.randint(1, 4), chance.randint(1, 4)
    plain = f"plain {chance.choice(CLOTHS)}"
    second = chance.choice([cell(), cell(), plain])
    cells = f"alternate {cell()}, {second}"
    if across * down == 1:
        cells = f"alternate {cell()}"
    sashed = chance.random() < 0.4
    wide = chance.choice(["1in", "1 1/2in", "2in"])
    posts = f" posts in {chance.choice(CLOTHS)}"
    if chance.random() < 0.45:
        across, down = max(2, across), max(2, down)
        sashing = f"  sashing {wide} in {chance.choice(CLOTHS)}{posts}\n" if sashed else ""
        return (
            f"  set on point {across} across {down} down of {size}in with triangles in "
            f"{chance.choice(CLOTHS)} {{ alternate {cell()}, {second} }}\n{sashing}"
        )
    more = chance.choice([posts, "", posts + " around"])
    sashing = f"  sashing {wide} in {chance.choice(CLOTHS)}{more}\n" if sashed else ""
    return f"  set straight {across} across {down} down of {size}in {{ {cells} }}\n{sashing}"


def _borders(chance: Random) -> str:
    return "".join(
        f"  border {chance.choice(['1in', '2in', '3 1/2in', '5in'])} in {chance.choice(CLOTHS)}"
        f"{chance.choice(['', '', ' mitred', ' unjoined'])}\n"
        for _ in range(chance.randint(0, 2))
    )

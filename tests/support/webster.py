"""Names of pieced blocks printed in Marie D. Webster, "Quilts: Their Story and How to Make Them", Doubleday,
Page & Company, 1915, "List of Quilt Names" (Project Gutenberg 24682), spelt as printed there."""

from __future__ import annotations

import re
from typing import Final

_PRINTED: Final = """
Album; Arkansas Traveller; Aunt Sukey's Patch; Bachelor's Puzzle; Barrister's Blocks; Basket Quilt; Bear's
Foot; Bear's Paws; Blazing Star; Brickwork Quilt; Broken Dish; Cake Stand; Carpenter's Square; Cherry Basket;
Churn Dash; Corn and Beans; Crazy Ann; Cross and Crown; Crosses and Losses; Devil's Puzzle; Domino; Double
Irish Chain; Double Squares; Double Wrench; Double Z; Dove in the Window; Drunkard's Path; Ducks and
Ducklings; Dutchman's Puzzle; Economy; Eight-pointed Star; Evening Star; Fanny's Fan; Feather Star; Flower
Pot; Flutter Wheel; Flying Bat; Fool's Puzzle; Fruit Basket; Gentleman's Fancy; Golden Gates; Goose in the
Pond; Goose Tracks; Grandmother's Choice; Grape Basket; Greek Cross; Handy Andy; Hen and Chickens; Hexagonal;
Honeycomb; Hour Glass; House That Jack Built; Irish Puzzle; Jack's House; Jacob's Ladder; Joseph's Coat;
Joseph's Necktie; Kansas Troubles; King's Crown; Ladies' Delight; Lady of the Lake; Lincoln's Platform; Log
Cabin; London Roads; Maple Leaf; Memory Blocks; Morning Star; Necktie; New Four Patch; Nine Patch; Ocean
Waves; Octagon; Odd Fellows' Chain; Old Maid's Puzzle; Old Tippecanoe; Orange Peel; Pickle Dish; Pine Tree;
Pineapple Patterns; Pinwheel Square; Puss-in-the-Corner; Railroad, The; Red Cross; Ribbon Star; Right and
Left; Rising Sun; Road to California; Robbing Peter to Pay Paul; Rocky Road to California; Rocky Road to
Kansas; Rolling Pinwheel; Rolling Star; Rolling Stone; Roman Cross; Roman Stripe; Sashed Star; Sawtooth
Patchwork; Shoo Fly; Sister's Choice; Snowball; Spider's Web; Spools; Square and a Half; Square Log Cabin;
Star of Bethlehem; Star of the East; Steps to the Altar; Storm at Sea; Swing in the Centre; Tick-Tack-Toe;
Toad in the Puddle; Tree of Paradise; Tumbler, The; Union; Variegated Diamonds; Variegated Hexagons; Wheel of
Fortune; Wild Goose Chase; Wind Mill; Yankee Puzzle
"""
WEBSTER: Final = frozenset(" ".join(name.split()) for name in _PRINTED.split(";"))

AS_PRINTED: Final = {"Pineapple": "Pineapple Patterns", "The Tumbler": "Tumbler, The"}


def is_in_webster(name: str) -> bool:
    """Whether the name, without a number of ours, is on the list."""
    plain = re.sub(r", No\. \d+$", "", name)
    return AS_PRINTED.get(plain, plain) in WEBSTER

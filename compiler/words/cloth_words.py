"""Common words for the colour of cloth that the standard lacks or means otherwise; the tints are ours."""

from __future__ import annotations

from typing import Final, Literal

Texture = Literal["plain", "dotted", "striped", "checked", "floral", "twill"]

_LISTED: Final = """
    apple 7fae3f apricot f3b07c aqua 7fcfcf ash b5b5ae aubergine 4a2840 berry 8e2a55 blackberry 45264a
    blue 3f66a8 bluebell 7f86c8 blush f0cfc8 bone e6dfcd bottle 1d4a38 brick a1432f bronze 8c6a3a
    brown 7a5238 burgundy 6b1f2e butter f4e3a1 buttercup f2cf3d calico ece2cb camel bd945f
    candlelight f4dda0 caramel b5793c charcoal 3d4045 cherry a81c35 chestnut 7d4530 cinnamon a55f35
    claret 6d1c33 clay b8735a cobalt 2a4c9b cocoa 6f4c3c copper b06a3b cranberry 94213b cream f6edd2
    dawn f0c9b4 denim 3f5f87 dove b9b6b2 duck 2f6c78 dusk 8d86b0 ecru e4d8ba emerald 1f8a5b fawn c9a77f
    fern 5c8a4a fig 5a3a4f flax d9c48f forest 2c5a36 forestgreen 2c5a36 fuchsia c23b8c garnet 74202f
    ginger b3692f gold d3a72f grape 5a3768 graphite 4c4f54 grass 5f9440 green 4f8a4c gull a9b0b5
    harbour 4a6a80 hazel 8d7048 heather 9583a3 holly 2a5540 honey dba545 indigo 2d3566 ink 1c2540
    iris 6a5aa8 ivy 355a3c jade 3f9275 juniper 3f5c58 lamplight f3dc94 lantern f0cf76 leaf 6a9a4a
    lemon f5e052 lichen a3b096 lilac b9a2cc lime a4c639 linen e9dfc9 loden 4a5a45 madder a63a35
    marigold eda52f mauve b795b3 merlot 5f1f33 midnight 171f3d mint b4dcc0 mist cfd8da mocha 7b5c49
    moonlight dfe4ee moss 6d7a3f mulberry 6d2a4f mushroom b3a592 muslin efe5cf mustard c9982b natural ebe1c9
    navy 1f2c54 night 1a2344 nutmeg 8a5a3a oat dfcda6 oatmeal d9c9a8 ocean 2b6482 ochre c48a32 olive 6f6f3a
    onyx 17171a orange e08a35 paprika b5432a parchment eee3c6 peach f5c09a peacock 1f6a7a pearl ece8e0
    petrol 1f4f5f pewter 83888c pine 24503f pink eaa9b5 pistachio b5c98a pitch 141416 plum 5f2f52
    poppy d23a2a primrose f2e49b prune 4c2b40 pumpkin d9752b purple 68468a quince d8c24a raspberry b02a55
    raven 17191f red b3282d rose d98a94 ruby 96203a rust b7410e rye a58a5c saffron e3a02a sage 9aab86
    sand dcc7a0 sapphire 27408b scarlet c6281f sea 4f8f92 seaweed 48603f sepia 6d5138 shadow 4a4b57
    shell f0dfd3 sky a3c9e6 slate 586472 slateblue 5b7390 smoke 8d9296 snow fafafa spruce 2f5450
    steel 6c7f90 stone bcb29e storm 55606c straw e3cd83 strawberry d5414f sunflower f0bb2a sunset e58a5c
    tangerine ef8a33 taupe 8f8072 tawny b4733a teal 2a7f7f terracotta bf6444 thyme 7d8c66 tide 5f93a3
    toffee a0673a twilight 565a92 umber 6a4a33 vanilla f3e6c0 vermilion d8432b walnut 5e4331 wheat e5cf9c
    willow 9aa86a wine 6a1f35 wisteria a493c9 yellow f2d23f
"""

_WORDS: Final = _LISTED.split()

CLOTH: Final[dict[str, str]] = dict(zip(_WORDS[::2], _WORDS[1::2], strict=True))
"""Name to six hexadecimal digits."""

MODIFIERS: Final[dict[str, str]] = {
    **dict.fromkeys(("dark", "deep", "darkest", "deepest"), "darker"),
    **dict.fromkeys(("light", "lighter", "pale", "palest", "soft", "lightest"), "lighter"),
    **dict.fromkeys(("dusty", "muted", "faded", "antique", "dull", "smoky"), "duller"),
    **dict.fromkeys(("bright", "vivid", "strong"), "brighter"),
}
"""What a word beside a colour does to it."""

TEXTURES: Final[dict[str, Texture]] = {
    **dict.fromkeys(("plain", "solid", "solids"), "plain"),
    **dict.fromkeys(("dot", "dots", "dotted", "spot", "spots", "spotted", "pindot", "speckled"), "dotted"),
    **dict.fromkeys(("stripe", "stripes", "striped", "ticking", "pinstripe", "seersucker"), "striped"),
    **dict.fromkeys(("check", "checks", "checked", "gingham", "plaid", "tartan", "homespun"), "checked"),
    **dict.fromkeys(("floral", "flower", "flowers", "flowered", "sprig", "sprigs", "leaves"), "floral"),
    **dict.fromkeys(("twill", "herringbone"), "twill"),
}
"""Words for the texture of cloth."""

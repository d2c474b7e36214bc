"""Catalogue entries for the fabrics of a quilt and what is cut from them."""

from __future__ import annotations

from typing import Final

from .entry import Entry
from .quilts import (
    CLOTH,
    SET,
    USE,
    in_quilt,
)

FABRICS: Final = (
    # ---- fabrics
    in_quilt(
        "fabric-unknown",
        "A fabric that was never brought in",
        "`fabric NAME` brings a cloth in, with its width where it is not the usual one.",
        (USE, *CLOTH[:2], "roles dark = idigo, pale = sand", SET),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "fabric-twice",
        "Two fabrics of one name",
        "Each cloth is brought in once.",
        (USE, *CLOTH, "fabric sand", SET),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "fabric-unused",
        "A fabric that nothing is cut from",
        "It may be left over. Nothing is wrong with the quilt.",
        (USE, *CLOTH, "fabric rose", SET),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "fact-twice",
        "A fact of a fabric told twice",
        "A fabric has one width and one shrinkage.",
        (USE, "fabric indigo width 42in width 40in", *CLOTH[1:], SET),
        (USE, "fabric indigo width 42in", *CLOTH[1:], SET),
    ),
    in_quilt(
        "width-of-pieces",
        "A width for cloth that comes in pieces",
        "`width` is that of cloth off the bolt. Fat quarters and scraps have their own sizes.",
        (USE, "fabric indigo width 42in fat quarter 3", *CLOTH[1:], SET),
        (USE, "fabric indigo fat quarter 3", *CLOTH[1:], SET),
    ),
    Entry(
        "fabric-no-width",
        "A fabric without a usable width",
        "What the fabric shrinks by and what is cut away leave nothing to use.",
    ),
    in_quilt(
        "percent-missing",
        "A shrinkage without its sign",
        "Shrinkage is a share in a hundred: `shrinks 3%`.",
        (USE, "fabric indigo shrinks 3", *CLOTH[1:], SET),
        (USE, "fabric indigo shrinks 3%", *CLOTH[1:], SET),
    ),
    in_quilt(
        "percent-bounds",
        "A share that no cloth can shrink by",
        "A share in a hundred is not below nothing and not many times the whole.",
        (USE, "fabric indigo shrinks 5000%", *CLOTH[1:], SET),
        (USE, "fabric indigo shrinks 3%", *CLOTH[1:], SET),
    ),
    in_quilt(
        "shrinkage-too-large",
        "A fabric that shrinks to nothing",
        "Cotton shrinks by a few in a hundred.",
        (USE, "fabric indigo shrinks 100%", *CLOTH[1:], SET),
        (USE, "fabric indigo shrinks 3%", *CLOTH[1:], SET),
    ),
    in_quilt(
        "batting-of-cloth",
        "Batting in a fabric",
        "Batting is no cloth of the quilt's. Say how far it reaches over: `batting 4in over`.",
        (USE, *CLOTH, SET, "batting in sand 4in over"),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "role-without-fabric",
        "A role without a fabric",
        "The blocks name roles such as `dark`; a quilt says which fabric each is, in `roles`, or has a"
        " fabric of that name.",
        (USE, "fabric indigo", "fabric sand", "roles dark = indigo", SET),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "role-unused",
        "A role that no block has",
        "The word on the left of `roles` is a block's. It may be misspelt.",
        (USE, *CLOTH[:2], "roles dark = indigo, pale = sand, drak = sand", SET),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "role-twice",
        "One role given two fabrics",
        "Within one colourway each role has one fabric. Several titled `roles` lines are several colourways.",
        (USE, *CLOTH[:2], "roles dark = indigo, pale = sand, dark = sand", SET),
        (USE, *CLOTH, SET),
    ),
    in_quilt(
        "colourway-untitled",
        "Several colourways without titles",
        "Each of several `roles` lines is a colourway, and they are told apart by their titles.",
        (USE, *CLOTH, "roles dark = sand, pale = indigo", SET),
        (
            USE,
            *CLOTH[:2],
            'roles "Sea" dark = indigo, pale = sand',
            'roles "Shore" dark = sand, pale = indigo',
            SET,
        ),
    ),
    in_quilt(
        "colourway-twice",
        "Two colourways of one title",
        "Colourways are told apart by their titles.",
        (
            USE,
            *CLOTH[:2],
            'roles "Sea" dark = indigo, pale = sand',
            'roles "Sea" dark = sand, pale = indigo',
            SET,
        ),
        (
            USE,
            *CLOTH[:2],
            'roles "Sea" dark = indigo, pale = sand',
            'roles "Shore" dark = sand, pale = indigo',
            SET,
        ),
    ),
    # ---- what is cut from the cloth
    Entry(
        "cloth-short",
        "Not enough of a fabric",
        "The pieces that the writer has of this fabric do not hold everything that is to be cut from it. "
        "The message names what finds no room.",
    ),
    Entry(
        "scrap-too-small",
        "A scrap that nothing can be cut from",
        "Every piece to be cut from this fabric is larger than the scrap, so it is left over.",
    ),
    Entry(
        "piece-too-wide",
        "A piece wider than the cloth",
        "The cloth is too narrow for this piece whichever way it is laid. Divide the piece by a seam, or "
        "use wider cloth.",
    ),
    Entry(
        "backing-from-scraps",
        "A backing from cloth in pieces",
        "The back is joined from panels off the bolt, and this fabric comes in scraps or fat quarters.",
    ),
)

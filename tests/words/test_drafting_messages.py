"""What re-sewing can find wrong is worded for its reader, whatever it is."""

from __future__ import annotations

import re
from typing import get_args

import pytest
from piecewright.diagnostics.source import NOWHERE
from piecewright.drafting.model import DefaultKind
from piecewright.sewing.proof.misfit import Flaw, FlawKind
from piecewright.words.messages.sewing import REASONS, does_not_sew
from piecewright.words.say import CENTIMETRES
from piecewright.words.work.defaults import WHAT


@pytest.mark.parametrize("kind", get_args(FlawKind))
def test_every_flaw_is_told(kind: FlawKind) -> None:
    said = does_not_sew(NOWHERE, "Vane", 3, Flaw(kind, (5, "u2", "sail", 7), (4.0, 4.5)))
    metric = said.said(CENTIMETRES).message
    assert said.message.startswith("At step 3, ") and said.message.endswith(".")
    assert not re.search(r"[{}]", said.message) and not re.search(r"\din\b", metric)


def test_every_default_and_flaw_has_words() -> None:
    assert list(WHAT) == list(get_args(DefaultKind))
    assert set(REASONS) == set(get_args(FlawKind))

"""The steps of a booklet, of a block and of a quilt: a card and a picture each."""

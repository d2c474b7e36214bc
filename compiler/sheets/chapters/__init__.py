"""One module a chapter: what it says of a planned quilt, or of a block, which is a quilt of one."""

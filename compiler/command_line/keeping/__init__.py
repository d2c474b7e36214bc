"""What earlier builds made, kept by content so that only what changed is made again."""

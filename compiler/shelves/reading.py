"""Files of others read with care: plain files only, up to a bound, and through no link where that is asked.

A folder that somebody sent may hold a pipe where a file is looked for, which would make us wait for ever, a
device that never ends, or a link to a file of the reader's own, of which a diagnostic would print a line.
"""

from __future__ import annotations

import errno
import os
import stat

from ..words.commands.files import a_link, not_plain, of_another_user

# A pipe opened so gives its handle at once; none of these is known on every system.
CAREFUL = getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0) | getattr(os, "O_BINARY", 0)
NO_LINK = getattr(os, "O_NOFOLLOW", 0)


class NotPlain(OSError):
    """What bears the name is a pipe, a device, a folder, or a link where none is followed."""


def plain_bytes(
    path: str | os.PathLike[str], most: int, *, links: bool = False, owned: bool = False
) -> bytes:
    """Up to `most` bytes of a plain file, and one more where it has more. OSError where it cannot be had.

    A link is followed only with `links`. With `owned`, a file that another user wrote is not read.
    """
    if not links and os.path.islink(path):
        raise NotPlain(errno.ELOOP, a_link(), os.fspath(path))
    handle = os.open(path, os.O_RDONLY | CAREFUL | (0 if links else NO_LINK))
    with os.fdopen(handle, "rb") as stream:
        facts = os.fstat(handle)
        if not stat.S_ISREG(facts.st_mode):
            raise NotPlain(errno.EINVAL, not_plain(), os.fspath(path))
        if owned and hasattr(os, "geteuid") and facts.st_uid != os.geteuid():
            raise NotPlain(errno.EACCES, of_another_user(), os.fspath(path))
        return stream.read(most + 1)

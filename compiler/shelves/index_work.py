"""The work of indexing: files to facts, in this process or spread over the machine's cores."""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from functools import lru_cache
from pathlib import Path
from types import FrameType
from typing import Any, Final, NamedTuple, TypeVar

from ..diagnostics.diagnostic import Severity
from ..diagnostics.source import Source
from ..drafting.model import Draft
from ..failures import MachineFailed, mistake_text
from ..pipeline import draft_source
from ..searching.block_facts import facts_of, record_of
from ..words.messages import machine
from .folders import Folder, FolderShelf

ALONE: Final = 40  # files that one process works out sooner than others can be started
SLOWEST: Final = 20.0  # seconds of a processor's time for one file; most take a hundredth of one
AGAIN: Final = 1.0  # seconds after which it is stopped once more, should something have caught the first
BATCH: Final = 40  # files handed to a process at a time: it parses what they use in common once

Record = dict[str, Any]  # `blocks`: line and facts of each; `fault`: place and words of an error, or None


Made = TypeVar("Made")
Work = Callable[[FolderShelf, "Task"], Made]


class TookTooLong(BaseException):
    """The time for one file is over. No `except Exception` may take it for a mistake."""


class Fault(NamedTuple):
    """A file on a shelf that has a mistake: the line, and what is wrong there."""

    file: str
    line: int
    message: str


class Task(NamedTuple):
    """A file to be indexed."""

    shelf: Folder
    path: str


def index_records(shelves: Sequence[Folder], tasks: Sequence[Task]) -> Iterator[Record]:
    """The record of each file, in order."""
    return _spread(_record, shelves, tasks)


def drafts_of(shelves: Sequence[Folder], tasks: Sequence[Task]) -> Iterator[tuple[Draft, ...]]:
    """The blocks of each file, in order; none of a file that has a mistake by now."""
    return _spread(_drafts, shelves, tasks)


def _spread(work: Work[Made], shelves: Sequence[Folder], tasks: Sequence[Task]) -> Iterator[Made]:
    """What comes of each file, in order, on as many cores as there are."""
    batches = [tasks[at : at + BATCH] for at in range(0, len(tasks), BATCH)]
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    if len(tasks) <= ALONE or cores < 2:
        shelf = FolderShelf.searched(shelves)
        for batch in batches:
            yield from _batch(work, shelf, batch)
        return
    way = "fork" if "fork" in multiprocessing.get_all_start_methods() else "spawn"
    with ProcessPoolExecutor(cores, multiprocessing.get_context(way), _begin_worker) as pool:
        count = len(batches)
        try:
            for made in pool.map(_batch_elsewhere, [work] * count, [tuple(shelves)] * count, batches):
                yield from made
        except BrokenProcessPool as problem:
            raise MachineFailed(machine.worker_ended()) from problem
        except BaseException:  # we are to end: nobody waits for what the others are at
            for worker in multiprocessing.active_children():
                worker.kill()
            raise


def _begin_worker() -> None:
    """In a process of its own: it ends with its parent, however that ends, and leaves signals to it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    for name in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), signal.SIG_DFL)
    threading.Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


@contextmanager
def bounded() -> Iterator[None]:
    """Raises TookTooLong within, after SLOWEST seconds of a processor's time, where the system can tell."""
    if not hasattr(signal, "setitimer") or threading.current_thread() is not threading.main_thread():
        yield
        return

    def stop(_number: int, _frame: FrameType | None) -> None:
        raise TookTooLong

    before = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, SLOWEST, AGAIN)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def _batch_elsewhere(work: Work[Made], shelves: tuple[Folder, ...], tasks: Sequence[Task]) -> list[Made]:
    """A few files in a process of its own, which opens the shelves once."""
    return _batch(work, _opened(shelves), tasks)


def _batch(work: Work[Made], shelf: FolderShelf, tasks: Sequence[Task]) -> list[Made]:
    """A few files; what they use in common is parsed once."""
    shelf.forget()
    return [work(shelf, task) for task in tasks]


@lru_cache(maxsize=1)
def _opened(shelves: tuple[Folder, ...]) -> FolderShelf:
    return FolderShelf.searched(shelves)


def _record(shelf: FolderShelf, task: Task) -> Record:
    """One file's facts, or its first error."""
    try:
        with bounded():
            return _worked_out(shelf, task)
    except TookTooLong:
        shelf.forget()
        return _failed(1, machine.too_slow(SLOWEST))


def _worked_out(shelf: FolderShelf, task: Task) -> Record:
    parsed = shelf.own_file(Path(task.path), task.shelf)
    if parsed is None:
        return _failed(1, machine.not_read())
    errors = [each for each in parsed.diagnostics if each.severity is Severity.ERROR]
    if errors:
        return _failed(parsed.source.place(errors[0].primary.span.start)[0], errors[0].message)
    try:
        return _drafted(parsed.source, shelf)
    except Exception as problem:  # one file's trouble is not the shelf's
        return _failed(1, mistake_text(parsed.source.name, problem))


def _drafts(shelf: FolderShelf, task: Task) -> tuple[Draft, ...]:
    try:
        with bounded():
            parsed = shelf.own_file(Path(task.path), task.shelf)
            return draft_source(parsed.source, shelf).value or () if parsed else ()
    except TookTooLong:
        shelf.forget()
        return ()


def _drafted(source: Source, shelf: FolderShelf) -> Record:
    drafted = draft_source(source, shelf)
    said, blocks = list(drafted.diagnostics), []
    for draft in drafted.value or ():
        made = facts_of(draft)
        said += made.diagnostics
        if made.value is not None:
            line = source.place(draft.origin.start)[0] if draft.origin else 1
            blocks.append([line, record_of(made.value)])
    wrong = next((each for each in said if each.severity is Severity.ERROR), None)
    if wrong is None:
        return {"blocks": blocks, "fault": None}
    at = wrong.primary.span
    line = source.place(at.start)[0] if at.source == source.name else 1
    return {"blocks": blocks, "fault": [line, wrong.message]}


def _failed(line: int, message: str) -> Record:
    return {"blocks": [], "fault": [line, message]}

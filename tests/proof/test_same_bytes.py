"""A few of the builds of `same_bytes.py`: one process makes what a process of its own makes."""

from __future__ import annotations

from proof.same_bytes import compared, jobs, made_alone

COUNT, ROUNDS = 4, 2


def test_many_builds_in_one_process_make_the_same_bytes_as_each_alone():
    wanted = {job: made_alone(job) for job in jobs(COUNT, 6)}
    assert sum(len(made) - 1 for made in wanted.values()) >= COUNT, "most jobs make files"
    builds, wrong = compared(wanted, ROUNDS, 5)
    assert builds >= COUNT * ROUNDS and wrong == []

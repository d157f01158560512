"""A supervised pool of worker processes: one that dies loses only the task in its hands.

The executors of the standard library give up the whole batch when one worker is killed (measured: 16 of 20 tasks
lost). Here the parent holds one pipe to each worker, knows which task each has, starts another worker in
the place of a dead one and tries that task once more.
"""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
import time
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from multiprocessing.connection import Connection, wait
from typing import Any, Final, Generic, TypeVar

from adminer.errors import AdminerError

Task = TypeVar("Task")
Result = TypeVar("Result")

TRIES: Final = 2
TASKS_A_WORKER: Final = 400  # then a fresh process, so that memory lost by libraries comes back
_ONE_THREAD: Final = ("OMP_THREAD_LIMIT", "OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS")


@dataclass(frozen=True, slots=True)
class Outcome(Generic[Task, Result]):
    """Hold what became of one task: a result, or the fault that ended it."""

    task: Task
    result: Result | None
    fault: AdminerError | None = None
    crash: str | None = None  # how the worker died, or a fault of the program itself


@dataclass(slots=True)
class _Worker(Generic[Task]):
    process: Any
    pipe: Connection
    task: Task | None = None
    since: float = 0.0
    done: int = 0


@dataclass(slots=True)
class Pool(Generic[Task, Result]):
    """Run one function over many tasks in worker processes, in any order.

    `run` and `start` must be importable by name (or partials of such); `start` runs once in each worker, before
    its first task, and may load models. A task that takes longer than `limit_seconds` is ended with its worker.
    """

    run: Callable[[Task], Result]
    start: Callable[[], object] | None = None
    workers: int = 1
    limit_seconds: float = 1800.0
    _alive: list[_Worker[Task]] = field(default_factory=list)

    def results(self, tasks: Iterable[Task]) -> Iterator[Outcome[Task, Result]]:
        """Yield the outcome of every task as it comes; closing the iterator stops the workers."""
        waiting: deque[tuple[Task, int]] = deque((task, 1) for task in tasks)
        tries: dict[int, int] = {}
        try:
            while waiting or any(worker.task is not None for worker in self._alive):
                self._hand_out(waiting, tries)
                yield from self._collect(waiting, tries)
        finally:
            self.stop()

    def stop(self) -> None:
        """End all workers; a page in their hands is read again next time."""
        for worker in self._alive:
            worker.pipe.close()
            if worker.task is not None:
                worker.process.terminate()
        for worker in self._alive:
            worker.process.join(2)
            if worker.process.is_alive():
                worker.process.kill()
                worker.process.join()
        self._alive.clear()

    def _hand_out(self, waiting: deque[tuple[Task, int]], tries: dict[int, int]) -> None:
        for worker in [w for w in self._alive if w.task is None and w.done >= TASKS_A_WORKER]:
            self._dismiss(worker)
        idle = [worker for worker in self._alive if worker.task is None]
        while waiting and (idle or len(self._alive) < self.workers):
            worker = idle.pop() if idle else self._engage()
            task, attempt = waiting.popleft()
            worker.task, worker.since = task, time.monotonic()
            tries[id(worker)] = attempt
            with suppress(OSError):  # a worker dead before its first task is found by its sentinel
                worker.pipe.send(task)

    def _collect(self, waiting: deque[tuple[Task, int]], tries: dict[int, int]) -> Iterator[Outcome[Task, Result]]:
        busy = [worker for worker in self._alive if worker.task is not None]
        ready = set(wait([w.pipe for w in busy] + [w.process.sentinel for w in busy], timeout=1.0))
        for worker in busy:
            task = worker.task
            assert task is not None  # noqa: S101 - busy workers have one
            answer = None
            if worker.pipe in ready:
                with suppress(EOFError, OSError):
                    answer = worker.pipe.recv()
            if answer is not None:
                worker.task, worker.done = None, worker.done + 1
                yield Outcome(task, *answer)
                continue
            late = time.monotonic() - worker.since > self.limit_seconds
            if not late and worker.pipe not in ready and worker.process.sentinel not in ready:
                continue
            if late:
                worker.process.kill()
            worker.process.join()
            how = "took too long and was stopped" if late else _cause(worker.process.exitcode)
            self._dismiss(worker)
            if tries[id(worker)] < TRIES and not late:
                waiting.append((task, tries[id(worker)] + 1))
            else:
                yield Outcome(task, None, None, how)

    def _engage(self) -> _Worker[Task]:
        context = multiprocessing.get_context("spawn")  # a fork would copy the locks of threads that are gone
        mine, theirs = context.Pipe()
        process = context.Process(target=_work, args=(theirs, self.run, self.start), daemon=True)
        with _deaf_to_ctrl_c():
            process.start()
        theirs.close()
        worker: _Worker[Task] = _Worker(process, mine)
        self._alive.append(worker)
        return worker

    def _dismiss(self, worker: _Worker[Task]) -> None:
        worker.pipe.close()
        worker.process.join(5)
        self._alive.remove(worker)


@contextmanager
def _deaf_to_ctrl_c() -> Iterator[None]:
    """Let a child be born ignoring SIGINT: the terminal sends it to all, but stopping is the parent's business."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def default_workers() -> int:
    """Return how many workers suit this machine: one a core that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _cause(exit_code: int | None) -> str:
    if exit_code == -signal.SIGKILL:
        return "its reader was killed twice, most likely because memory ran out"
    return f"its reader ended twice without an answer (exit code {exit_code})"


def _work(pipe: Connection, run: Callable[[Any], Any], start: Callable[[], object] | None) -> None:
    """Serve tasks until the parent closes the pipe; a stop by Ctrl-C is the parent's business."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    for name in _ONE_THREAD:  # before any library of numbers is loaded, or threads fight for the cores
        os.environ[name] = "1"
    try:
        if start is not None:
            start()
        while True:
            task = pipe.recv()
            pipe.send(_attempt(run, task))
    except (EOFError, BrokenPipeError, ConnectionResetError):
        return


def _attempt(run: Callable[[Any], Any], task: Any) -> tuple[Any, AdminerError | None, str | None]:
    try:
        return run(task), None, None
    except AdminerError as fault:
        return None, fault, None
    # the boundary between one page and all others: whatever went wrong with it stops only itself
    except Exception as fault:  # noqa: BLE001
        return None, None, f"{type(fault).__name__}: {fault}"

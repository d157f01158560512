"""The networks run without a trace in the process that asks them."""

from __future__ import annotations

import multiprocessing
import subprocess
import sys

import numpy as np

from adminer.reading.models import answers_of

PROGRAM = """
import sys
import numpy as np
from adminer.reading.models import answers_of
answers_of("det", np.zeros((1, 3, 32, 32), np.float32))
print(sys.float_info.min / 2 > 0)
"""


def test_small_numbers_stay_numbers_outside_the_networks() -> None:
    done = subprocess.run([sys.executable, "-c", PROGRAM], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "True"


def test_a_forked_process_runs_the_networks_anew() -> None:
    plane = np.zeros((1, 3, 32, 32), np.float32)
    mine = answers_of("det", plane)
    with multiprocessing.get_context("fork").Pool(1) as pool:
        theirs = pool.apply_async(answers_of, ("det", plane)).get(timeout=60)
    assert np.array_equal(mine, theirs)

"""Work goes on in a process that was forked after work, where no thread of the first one lives."""

import os
import signal
import subprocess
import sys

SCRIPT = """
import multiprocessing, os, tussock

PLAN = tussock.invent_garden("convex", seed=1)
TRACE = tussock.simulate(PLAN, hours=0.2, seed=1).trace

def told(seed):
    return tussock.analyse(TRACE, plan=PLAN, cut_width_m=0.22, suggestions=False, seed=seed).to_json()

def forked_again(seed):
    first = told(seed)
    child = os.fork()
    if child == 0:
        os._exit(0 if told(seed) == first else 1)
    return os.waitpid(child, 0)[1], first

if __name__ == "__main__":
    here = [told(seed) for seed in (1, 2)]
    with multiprocessing.get_context("fork").Pool(2) as pool:
        assert pool.map(told, (1, 2)) == here
        assert pool.map(forked_again, (1, 2)) == [(0, one) for one in here]
    assert told(1) == here[0]
    print("all alike")
"""
#: It takes some seconds; a process that waits for threads that are gone would never end.
LONGEST_S = 240


def test_a_forked_process_finds_what_its_parent_found():
    work = subprocess.Popen(
        [sys.executable, "-c", SCRIPT], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, start_new_session=True
    )
    try:
        said, complaint = work.communicate(timeout=LONGEST_S)
    finally:
        # Its children too, which would wait for ever.
        try:
            os.killpg(work.pid, signal.SIGKILL)
        except ProcessLookupError:
            pass
    assert (work.returncode, said) == (0, "all alike\n"), complaint

# SPDX-License-Identifier: GPL-3.0-or-later
"""jitter: holds the processes of a journey up for moments that nobody can foresee.

A journey that hopes instead of waiting passes on a quiet computer and fails on a busy one now and then.  With
TM_JITTER=NUMBER in the environment each process that the desktop started is stopped and set going again, in an
order that the number decides, so that such a failure comes at once.
"""

import random
import signal
import threading


class Jitter(threading.Thread):
    """Runs until `end`; `processes` may grow meanwhile."""

    PAUSE, HOLD = 0.3, 0.5  # at most, in seconds

    def __init__(self, processes, seed):
        super().__init__(daemon=True)
        self.processes = processes
        self.random = random.Random(seed)
        self.ending = threading.Event()

    def run(self):
        while not self.ending.wait(self.random.uniform(0, self.PAUSE)):
            process = self.random.choice(self.processes)
            # One that has ended is told nothing.
            process.send_signal(signal.SIGSTOP)
            self.ending.wait(self.random.uniform(0, self.HOLD) * self.random.random())
            process.send_signal(signal.SIGCONT)

    def end(self):
        self.ending.set()
        self.join()

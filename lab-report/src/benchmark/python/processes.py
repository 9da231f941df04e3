"""Runs whole processes and says what they took."""

import os
import re
import subprocess
import sys
import tempfile
import time
from statistics import median
from typing import NamedTuple


class Run(NamedTuple):
    """What one process took: seconds by the clock, seconds of all its threads, most memory at once in megabytes."""

    wall: float
    processor: float
    peak: float
    errors: str

    def parts(self):
        """What the process told of itself, lines "time: PART 1.23 s" on standard error: part, seconds, remark.

        A part with a remark lies within others.
        """
        lines = re.findall(r"^time: (.+?) ([0-9.]+) s(?:, (.*))?$", self.errors, re.MULTILINE)
        return [(part, float(seconds), remark) for part, seconds, remark in lines]


def run(command, folder):
    """Runs a command to its end; ends the program if it fails. The children it waits for are counted with it."""
    with tempfile.TemporaryFile() as errors:
        began = time.perf_counter()
        process = subprocess.Popen(command, cwd=folder, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=errors)
        try:
            _, status, used = os.wait4(process.pid, 0)
        except BaseException:
            process.kill()
            raise
        wall = time.perf_counter() - began
        process.returncode = os.waitstatus_to_exitcode(status)
        errors.seek(0)
        text = errors.read().decode(errors="replace")
    if process.returncode != 0:
        sys.exit(f"{' '.join(map(str, command))} ended with {process.returncode}:\n{text}")
    kilobytes = used.ru_maxrss / (1024 if sys.platform == "darwin" else 1)
    return Run(wall, used.ru_utime + used.ru_stime, kilobytes / 1024, text)


def told(values, form="{:.2f}".format):
    """A median with the lowest and the highest."""
    values = list(values)
    if len(values) == 1:
        return form(values[0])
    return f"{form(median(values))} ({form(min(values))}–{form(max(values))})"


def short(value):
    """A number above zero with three digits that count, or all before its point."""
    return f"{value:.0f}" if value >= 100 else f"{value:.3g}"

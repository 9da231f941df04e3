"""Offtape's measure and the plain numpy script on the same return, whole processes in turns."""

import shutil
import subprocess
import sys

import sounds
from page import table
from processes import run, told

MISSING = "Left out: no Python with numpy and scipy was found (Debian: python3-numpy, python3-scipy; PYTHON names another)."
COMMANDS = ("offtape measure return.wav --programme programme --out session --mode reference-tape --quiet",
            "plain_measure.py return.wav programme curves")


def python_with_numpy(wanted):
    """The first Python that has numpy and scipy, or nothing."""
    for python in (wanted, "/usr/bin/python3", sys.executable):
        if python and shutil.which(python):
            if subprocess.run([python, "-c", "import numpy, scipy"], capture_output=True, check=False).returncode == 0:
                return python
    return None


def section(bench):
    python = python_with_numpy(bench.python)
    if python is None:
        print(MISSING, file=sys.stderr)
        return "## Beside a plain script\n\n" + MISSING + "\n"
    programme = sounds.programme(bench, bench.work / "programme")
    recording = sounds.returned(bench, programme, "return.wav")
    session, curves = bench.work / "session", bench.work / "curves"
    ours = [bench.offtape, "measure", recording, "--programme", programme, "--out", session, "--mode", "reference-tape"]
    theirs = [python, bench.sources / "python" / "plain_measure.py", recording, programme, curves]
    pairs = []
    for pair in range(bench.pairs + 1):
        bench.say("side by side", f"pair {pair}" if pair else "warm-up")
        shutil.rmtree(session, ignore_errors=True)
        measured = run([*ours, "--quiet"], bench.work)
        shutil.rmtree(curves, ignore_errors=True)
        pairs.append((measured, run(theirs, bench.work)))
    shutil.rmtree(session)
    told_of_itself = run([*ours, "--verbose"], bench.work)
    sounds.forget(session, curves, recording, programme)
    return words(pairs[1:], versions(python)) + "\n" + division(told_of_itself)


def versions(python):
    ask = ("import platform, numpy, scipy; "
           "print('Python', platform.python_version(), 'numpy', numpy.__version__, 'scipy', scipy.__version__)")
    return subprocess.run([python, "-c", ask], capture_output=True, text=True, check=True).stdout.strip()


def words(pairs, python):
    rows = []
    for what, of, unit in (("time by the clock", lambda r: r.wall, "s"), ("processor time", lambda r: r.processor, "s"),
                           ("most memory", lambda r: r.peak, "MB")):
        form = ("{:.2f}" if unit == "s" else "{:.0f}").format
        rows.append((what, told(of(a) / of(b) for a, b in pairs), told((of(a) for a, _ in pairs), form) + " " + unit,
                     told((of(b) for _, b in pairs), form) + " " + unit))
    heading = ("", "Offtape over script", "Offtape", "script")
    return f"""## Beside a plain script

`{COMMANDS[0]}`
against `{COMMANDS[1]}` ({python}): the full programme, 48 kHz,
24 bit, stereo. Whole processes in turns after a warm-up, pairs: {len(pairs)}; median (lowest–highest). The script gives
response, wow and flutter, K3 and noise; Offtape all its figures with their uncertainties, the charts and the report.

{table(heading, rows)}
"""


def division(measured):
    """How the process says that it divided its time, and what it did not tell of."""
    parts = measured.parts()
    if not parts:
        return "How `measure` divides its time: it did not tell (`--verbose` printed no lines `time: PART 1.23 s`).\n"
    parts.append(("not told", max(0.0, measured.wall - sum(seconds for _, seconds, remark in parts if not remark)), ""))
    rows = [(f"{part}, {remark}" if remark else part, f"{seconds / measured.wall:.0%}", f"{seconds:.2f} s")
            for part, seconds, remark in parts]
    return "How `measure --verbose` says it divides its time, once:\n\n" + table(("part", "share", "time"), rows) + "\n"

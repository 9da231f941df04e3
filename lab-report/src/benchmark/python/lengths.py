"""How time and memory grow with the length of a recording."""

import shutil
from statistics import median

import sounds
from page import table
from processes import run, told

TIMES = 3
HOUR = 60


def section(bench):
    minutes = (1, 10, HOUR) if bench.hour else (1, 10)
    taken = {"speed": [], "measure": []}
    short = sounds.programme(bench, bench.work / "short", short=True)
    for length in minutes:
        bench.say("lengths", f"{length} min")
        times = 1 if length == HOUR else TIMES
        tone = sounds.tone(bench.work / "tone.wav", length)
        taken["speed"].append((length, [run([bench.offtape, "speed", tone, "--quiet"], bench.work) for _ in range(times)]))
        sounds.forget(tone)
        programme = sounds.lengthened(short, bench.work / "long", length)
        recording = sounds.returned(bench, programme, "long-return.wav", sounds.at_speed(bench))
        taken["measure"].append((length, [measured(bench, recording, programme) for _ in range(times)]))
        sounds.forget(recording, programme)
    rows = [row(command, made, at) for command, made in taken.items() for at in range(len(made))]
    note = "" if bench.hour else " An hour is taken on request (`--hour`)."
    return f"""## Length

Tones, and the short programme with its long tone going on; 48 kHz, 24 bit, stereo; {TIMES} runs each, an hour once.{note}
"A minute more" is the processor time that each further minute took beyond the length before: where it stays, time is linear.

{table(("", "a minute more", "processor", "by the clock", "most memory"), rows)}
"""


def measured(bench, recording, programme):
    session = bench.work / "session"
    shutil.rmtree(session, ignore_errors=True)
    return run([bench.offtape, "measure", recording, "--programme", programme, "--out", session, "--mode", "reference-tape",
                "--quiet"], bench.work)


def row(command, made, at):
    length, runs = made[at]
    more = ""
    if at > 0:
        before, shorter = made[at - 1]
        more = f"{(middle(runs) - middle(shorter)) / (length - before):.2f} s"
    return (f"`{command}`, {length} min", more, told(r.processor for r in runs) + " s", told(r.wall for r in runs) + " s",
            told((r.peak for r in runs), "{:.0f}".format) + " MB")


def middle(runs):
    return median(r.processor for r in runs)

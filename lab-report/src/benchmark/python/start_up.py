"""How long short commands take, against a Java machine that does nothing."""

import sounds
from page import table
from processes import run, told

TIMES = 10


def section(bench):
    tone = sounds.tone(bench.work / "tone.wav", 1)
    nothing = [bench.java, "-Xshare:auto", "-version"]
    commands = (("offtape --version", [bench.offtape, "--version"]), ("offtape --help", [bench.offtape, "--help"]),
                ("offtape speed tone.wav", [bench.offtape, "speed", tone, "--quiet"]))
    taken = {name: [] for name, _ in commands}
    floor = []
    for turn in range(TIMES + 1):
        bench.say("start-up", f"turn {turn}" if turn else "warm-up")
        begun = run(nothing, bench.work)
        runs = [(name, run(command, bench.work)) for name, command in commands]
        if turn:
            floor.append(begun)
            for name, one in runs:
                taken[name].append(one)
    rows = [(f"`{name}`", told(r.wall / f.wall for r, f in zip(runs, floor)), told(r.wall for r in runs) + " s",
             told(r.processor for r in runs) + " s") for name, runs in taken.items()]
    rows.append(("`java -version`", "1", told(f.wall for f in floor) + " s", told(f.processor for f in floor) + " s"))
    sounds.forget(tone)
    return f"""## Start-up

{TIMES} times in turns after a warm-up, over `java -version` of the same turn; the tone lasts 60 s, 24 bit stereo.

{table(("", "over a bare Java", "by the clock", "processor"), rows)}
"""

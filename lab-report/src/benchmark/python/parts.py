"""The benchmarks of parts, run by JMH, against what cannot be avoided."""

import json
import os
import subprocess
import sys
from statistics import median

from page import table
from processes import short, told

PACKAGE = "offtape.report.benchmark."
UNAVOIDABLE = "Unavoidable decodedAndTransformed"
WHOLE = "WholeMeasurement fromFile"
OPTIONS = ("-f", "1", "-wi", "2", "-w", "1", "-i", "3", "-r", "1", "-foe", "true", "-prof", PACKAGE + "ProcessorTime")
JAVA = ("-Djava.awt.headless=true", "-XX:+UseSerialGC", "-Xmx1500m")


def section(bench):
    results = bench.work / "parts.json"
    target = bench.root / "lab-report" / "target"
    classes = [target / "classes", target / "test-classes", (target / "benchmark.classpath").read_text().strip()]
    bench.say("parts", "some minutes")
    command = [bench.java, *JAVA, "-cp", os.pathsep.join(map(str, classes)), "org.openjdk.jmh.Main", *OPTIONS]
    # Their files belong into the folder that is removed whatever happens.
    command += ["-jvmArgsAppend", f"-Djava.io.tmpdir={bench.work}"]
    command += ["-rf", "json", "-rff", results, *([bench.parts] if bench.parts else [])]
    done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False)
    if done.returncode != 0:
        sys.exit(done.stdout + "\nThe benchmarks of parts failed.")
    return words({name(one): times(one) for one in json.loads(results.read_text())})


def name(one):
    subject = one["benchmark"].removeprefix(PACKAGE).replace("Benchmark.", " ")
    return " ".join((subject, *(f"{int(value):_}".replace("_", " ") for value in one.get("params", {}).values())))


def times(one):
    """Processor time and time by the clock of each iteration, milliseconds."""
    processor = one["secondaryMetrics"]["processor"]["rawData"][0]
    return processor, one["primaryMetric"]["rawData"][0]


def words(results):
    floor = median(results[UNAVOIDABLE][0]) if UNAVOIDABLE in results else None
    rows = [(subject, short(median(processor) / floor) if floor else "", told(processor, short) + " ms",
             told(wall, short) + " ms") for subject, (processor, wall) in results.items()]
    ratio = ""
    if floor and WHOLE in results:
        ratio = (f"\nThe whole measurement from its file takes **{median(results[WHOLE][0]) / floor:.1f} times** the processor "
                 "time of the unavoidable.\n")
    return f"""## Parts

`org.openjdk.jmh.Main {" ".join(OPTIONS)}`
on warm code; median (lowest–highest) of the iterations. "Unavoidable" is the file decoded once and each transform that no
way of measuring gets around done once (`Unavoidable.java` says which); the column of ratios is processor time over that.
{ratio}
{table(("", "over the unavoidable", "processor", "by the clock"), rows)}
"""

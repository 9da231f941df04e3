"""Gathers Offtape's figures of speed on this machine; run by the script "run" beside this folder."""

import argparse
import os
import shutil
import signal
import sys
import tempfile
from pathlib import Path

import lengths
import page
import parts
import side_by_side
import start_up

SECTIONS = {"side-by-side": side_by_side, "parts": parts, "start-up": start_up, "lengths": lengths}


class Bench:
    """What every section needs: the commands, the folder to work in, what was asked."""

    def __init__(self, arguments, work):
        self.root = Path(__file__).resolve().parents[4]
        self.sources = self.root / "lab-report" / "src" / "benchmark"
        self.machine = self.sources / "resources" / "offtape" / "report" / "benchmark" / "machine.json"
        self.offtape = self.root / "offtape"
        home = os.environ.get("JAVA_HOME")
        self.java = str(Path(home) / "bin" / "java") if home else shutil.which("java")
        self.python = os.environ.get("PYTHON")
        self.work = work
        self.pairs = arguments.pairs
        self.hour = arguments.hour
        self.parts = arguments.parts

    @staticmethod
    def say(section, what):
        print(f"{section}: {what}", file=sys.stderr, flush=True)


def arguments():
    parser = argparse.ArgumentParser(prog="run", description="How fast Offtape is, as a page of figures. Nothing is asserted.")
    parser.add_argument("--only", choices=SECTIONS, action="append", help="this section alone; may be given again")
    parser.add_argument("--pairs", type=int, default=5, help="pairs of runs side by side (default: 5)")
    parser.add_argument("--parts", metavar="PATTERN", help="benchmarks of parts whose name fits")
    parser.add_argument("--hour", action="store_true", help="measure an hour of recording too: some minutes, 3 GB of disk")
    parser.add_argument("--page", type=Path, metavar="FILE", help="write the page there, not to standard output")
    return parser.parse_args()


def main():
    asked = arguments()
    if asked.pairs < 1:
        sys.exit("--pairs must be 1 or more.")
    # Told to end, it still removes what it wrote.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
    with tempfile.TemporaryDirectory(prefix="offtape-figures.") as work:
        bench = Bench(asked, Path(work))
        head = f"""# Figures of speed

Written by `{" ".join(["lab-report/src/benchmark/run", *sys.argv[1:]])}`, not by hand. Ratios first, since they hold beyond
this machine; processor time is that of all threads together. Nothing here is asserted by any test.

{page.machine(bench.java)}
"""
        sections = [SECTIONS[name].section(bench) for name in asked.only or SECTIONS]
    text = "\n".join([head, *sections])
    if asked.page:
        asked.page.write_text(text, encoding="utf-8")
    else:
        print(text, end="")


if __name__ == "__main__":
    main()

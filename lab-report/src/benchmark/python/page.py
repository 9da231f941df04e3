"""The page of figures, in Markdown."""

import os
import platform
import re
import subprocess


def table(heading, rows):
    """A table whose first column is words and whose others are figures."""
    lines = ["| " + " | ".join(heading) + " |", "| --- |" + " ---: |" * (len(heading) - 1)]
    return "\n".join(lines + ["| " + " | ".join(row) + " |" for row in rows])


def machine(java):
    """What the figures were taken on."""
    text = subprocess.run([java, "-version"], capture_output=True, text=True, check=True).stderr
    load = os.getloadavg()[0]
    return (f"{model()}, {os.cpu_count()} cores, {platform.system()} {platform.release()}; {text.splitlines()[-1].strip()}, "
            f"{version(text)}; load when it began: {load:.1f}.")


def version(text):
    found = re.search(r'version "([^"]+)"', text)
    return "Java " + (found.group(1) if found else "of unknown version")


def model():
    try:
        with open("/proc/cpuinfo", encoding="utf-8") as lines:
            for line in lines:
                if line.startswith("model name"):
                    return line.split(":", 1)[1].strip()
    except OSError:
        pass
    return platform.processor() or platform.machine()

"""Recordings to measure: a programme and its return, also lengthened, and bare tones."""

import array
import json
import math
import random
import shutil
import struct
import wave

from processes import run

RATE_HZ = 48000
TONE_HZ = 3150
FRAME_BYTES = 6


def programme(bench, folder, short=False):
    """A programme as Offtape writes it."""
    run([bench.offtape, "prepare", "--quiet", "--out", folder, *(["--short"] if short else [])], bench.work)
    return folder


def returned(bench, programme_folder, name, machine=None):
    """The return of a programme from the benchmarks' simulated machine, or from another."""
    out = bench.work / name
    run([bench.offtape, "simulate", "--quiet", "--programme", programme_folder, "--machine", machine or bench.machine,
         "--out", out], bench.work)
    return out


def at_speed(bench):
    """The benchmarks' machine without its error of speed: over minutes of nothing but tone that would hide the place."""
    description = json.loads(bench.machine.read_text(encoding="utf-8"))
    description["transport"].update(speedDeviationPercent=0, driftPercentPerMinute=0)
    path = bench.work / "at-speed.json"
    path.write_text(json.dumps(description), encoding="utf-8")
    return path


def lengthened(source, target, minutes):
    """A programme whose long tone goes on until the whole lasts so many minutes; all other parts stay."""
    target.mkdir()
    sheet = json.loads((source / "programme.json").read_text(encoding="utf-8"))
    more = max(0, int(minutes * 60 * RATE_HZ) - sheet["frames"])
    period = RATE_HZ // math.gcd(RATE_HZ, TONE_HZ)
    more -= more % period
    tone = next(cue for cue in sheet["cues"] if cue["id"] == "speed")
    split = tone["startFrame"] + tone["frames"] // 2
    tone["frames"] += more
    for cue in sheet["cues"]:
        if cue["startFrame"] > tone["startFrame"]:
            cue["startFrame"] += more
    sheet["frames"] += more
    (target / "programme.json").write_text(json.dumps(sheet), encoding="utf-8")
    with wave.open(str(source / "programme.wav")) as sent, wave.open(str(target / "programme.wav"), "wb") as out:
        out.setparams(sent.getparams())
        out.writeframes(sent.readframes(split))
        turn = sent.readframes(period)
        sent.setpos(split)
        repeat(out, turn, more // period)
        out.writeframes(sent.readframes(sent.getnframes()))
    return target


def tone(path, minutes):
    """A steady tone with 0.1 % of wow at 1 Hz and faint noise, 24 bit stereo; goes on by repeating its first ten seconds."""
    seconds = 10
    draw = random.Random(3150)
    samples = array.array("i")
    for frame in range(seconds * RATE_HZ):
        at = frame / RATE_HZ
        phase = 2 * math.pi * TONE_HZ * (at - 0.001 / (2 * math.pi) * math.cos(2 * math.pi * at))
        samples.append(round((0.125 * math.sin(phase) + 1e-4 * draw.gauss(0, 1)) * (2**23 - 1)))
    frames = b"".join(2 * struct.pack("<i", sample)[:3] for sample in samples)
    with wave.open(str(path), "wb") as out:
        out.setnchannels(2)
        out.setsampwidth(FRAME_BYTES // 2)
        out.setframerate(RATE_HZ)
        repeat(out, frames, round(minutes * 60 / seconds))
    return path


def repeat(out, frames, times):
    """Writes the same frames many times, some megabytes at once."""
    at_once = max(1, (1 << 22) // len(frames))
    for done in range(0, times, at_once):
        out.writeframesraw(frames * min(at_once, times - done))


def forget(*paths):
    """Removes what is not needed any more: an hour of sound is a gigabyte."""
    for path in paths:
        if path.is_dir():
            shutil.rmtree(path)
        else:
            for file in path.parent.glob(path.stem + ".*"):
                file.unlink()

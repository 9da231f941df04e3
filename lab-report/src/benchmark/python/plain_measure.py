#!/usr/bin/env python3
"""What somebody at home in numpy and scipy would write to measure a return of the test programme.

    plain_measure.py RETURN.wav PROGRAMME_FOLDER OUT_FOLDER

Finds the programme in the return by its first and last marker, and works out for both channels the response (swept
deconvolution, smoothed over a twelfth of an octave), speed with wow and flutter, K3 against level, and the noise. Prints
the figures and writes one CSV a curve. No uncertainties, no checks, no charts: it is the yardstick that Offtape's own
time is held against, written straightforwardly, neither wasteful nor driven to the utmost.

The return has the programme's sample rate, begins within 20 s of it, and runs within 1 % of its speed.
"""

import json
import os
import sys

import numpy as np
from scipy import fft, interpolate, io, signal

CHANNELS = ("left", "right")
LONGEST_START_S = 20
LARGEST_SPEED_ERROR = 0.012
FULL_SCALE = 2.0**31  # scipy gives 24-bit samples in the upper bits of 32

# IEC 60386, weighting of speed deviation: Hz, dB re 4 Hz.
FLUTTER_HZ = (0.1, 0.2, 0.315, 0.4, 0.63, 0.8, 1, 1.6, 2, 4, 6.3, 10, 20, 40, 63, 100, 200)
FLUTTER_DB = (-48, -30.6, -19.7, -15, -8.4, -6, -4.2, -1.8, -0.9, 0, -0.9, -2.1, -5.9, -10.4, -14.2, -17.3, -23)

# Rec. ITU-R BS.468-4, weighting of noise: Hz, dB re 1 kHz.
BS468_HZ = (31.5, 63, 100, 200, 400, 800, 1000, 2000, 3150, 4000, 5000, 6300, 7100, 8000, 9000, 10000, 12500, 14000, 16000,
            20000, 31500)
BS468_DB = (-29.9, -23.9, -19.8, -13.8, -7.8, -1.9, 0, 5.6, 9, 10.5, 11.7, 12.2, 12, 11.4, 10.1, 8.1, 0, -5.3, -11.7,
            -22.2, -42.7)


class Return:
    """A return with the map from programme frames to its own: begin + frame / speed."""

    def __init__(self, path, folder):
        self.rate, self.samples = io.wavfile.read(path)
        _, self.programme = io.wavfile.read(os.path.join(folder, "programme.wav"))
        with open(os.path.join(folder, "programme.json"), encoding="utf-8") as sheet:
            self.sheet = json.load(sheet)
        self.cues = {cue["id"]: cue for cue in self.sheet["cues"]}
        self.begin, self.speed = self.locate()

    def locate(self):
        first, last = self.cues["start"], self.cues["end"]
        distance = last["startFrame"] - first["startFrame"]
        slack = int(distance * LARGEST_SPEED_ERROR)
        begin = self.find(first, 1, 0, LONGEST_START_S * self.rate)
        end = self.find(last, 1, begin + distance - slack, begin + distance + slack)
        speed = distance / (end - begin)
        # A marker at the wrong speed is not quite like itself: once more with one at the right speed.
        near = self.rate // 50
        begin = self.find(first, speed, int(begin) - near, int(begin) + near)
        end = self.find(last, speed, int(end) - near, int(end) + near)
        speed = distance / (end - begin)
        return begin - first["startFrame"] / speed, speed

    def find(self, marker, speed, low, high):
        """The frame from low to high at which a marker begins, between frames by a parabola through the peak."""
        wanted = self.original(marker, speed)
        low = max(0, int(low))
        heard = self.samples[low:int(high) + len(wanted)].astype(float).sum(axis=1)
        likeness = np.abs(signal.correlate(heard, wanted, mode="valid", method="fft"))
        peak = min(max(1, int(np.argmax(likeness))), len(likeness) - 2)
        before, at, after = likeness[peak - 1:peak + 2]
        return low + peak + 0.5 * (before - after) / (before - 2 * at + after)

    def original(self, cue, speed):
        """A cue's own sound, left channel, as it sounds at a speed."""
        start = cue["startFrame"]
        sound = self.programme[start:start + cue["frames"], 0] / FULL_SCALE
        return sound if speed == 1 else signal.resample(sound, round(len(sound) / speed))

    def cut(self, cue, before_s=0.0, after_s=0.0):
        """A cue as it returned, one row a channel, longer or (below 0) shorter at both ends."""
        low = self.begin + cue["startFrame"] / self.speed - before_s * self.rate
        high = self.begin + (cue["startFrame"] + cue["frames"]) / self.speed + after_s * self.rate
        return self.samples[max(0, round(low)):round(high)].T / FULL_SCALE


def decibels(power):
    return 10 * np.log10(np.maximum(power, 1e-30))


def band_means(power, step_hz, low_hz, high_hz):
    """Mean of an evenly spaced power spectrum over each band, bins at the edges counted in part."""
    total = np.concatenate(([0], np.cumsum(power)))
    edges = np.arange(len(total)) - 0.5
    low, high = low_hz / step_hz, high_hz / step_hz
    return (np.interp(high, edges, total) - np.interp(low, edges, total)) / (high - low)


def response(take, cue):
    """Frequencies and, a row a channel, dB re 1 kHz."""
    rate = take.rate
    heard = take.cut(cue, 0.5, 1.0)
    sweep = take.original(cue, take.speed)
    size = fft.next_fast_len(heard.shape[1] + len(sweep), real=True)
    reference = fft.rfft(sweep, size)
    energy = np.abs(reference) ** 2
    transfer = fft.rfft(heard, size) * np.conj(reference) / (energy + 1e-6 * energy.max())
    impulses = fft.irfft(transfer, size)
    # The harmonics' own impulses lie a second and more ahead.
    before, after = int(0.3 * rate), int(0.6 * rate)
    middle = np.argmax(np.abs(impulses[:, :2 * rate]).sum(axis=0))
    impulses = np.take(impulses, np.arange(middle - before, middle + after), axis=1, mode="wrap")
    impulses *= signal.windows.tukey(before + after, 0.3)
    size = fft.next_fast_len(before + after, real=True)
    power = np.abs(fft.rfft(impulses, size)) ** 2
    # Centres that include 1 kHz, each with a twelfth of an octave about it.
    hertz = 1000 * 2 ** (np.arange(-142, 106) / 24)
    hertz = hertz[(hertz > cue["startHz"] * 1.05) & (hertz < min(cue["endHz"], rate / 2) / 1.05)]
    half = 2 ** (1 / 24)
    smooth = np.array([band_means(p, rate / size, hertz / half, hertz * half) for p in power])
    levels = decibels(smooth)
    return hertz, levels - levels[:, [np.argmin(np.abs(hertz - 1000))]]


def speed_course(take, cue, band_hz=500.0):
    """Speed re nominal over time and its rate: phase of the analytic signal, which is made of the bins about the tone."""
    heard = take.cut(cue, -0.1, -0.1)
    length = next(n for n in range(heard.shape[1], 0, -1) if fft.next_fast_len(n, real=True) == n)
    heard = heard[:, :length]
    step = take.rate / length
    centre, half = round(cue["frequencyHz"] / step), round(band_hz / step)
    bins = fft.rfft(heard, axis=1)[:, centre - half:centre + half]
    analytic = fft.ifft(fft.ifftshift(bins, axes=1), axis=1)
    rate = 2 * half * step
    turns = np.diff(np.unwrap(np.angle(analytic), axis=1), axis=1) / (2 * np.pi)
    hertz = centre * step + turns * rate
    edge = int(0.1 * rate)  # the block's ends do not meet
    return hertz[:, edge:-edge] / cue["frequencyHz"], rate


def flutter(course, rate):
    """Mean speed in percent of error, deviation, weighted deviation, and the peak spectrum with its frequencies."""
    mean = course.mean(axis=1, keepdims=True)
    deviation = 100 * signal.detrend(course / mean - 1, axis=1)
    length = deviation.shape[1]
    size = fft.next_fast_len(length, real=True)
    hertz = fft.rfftfreq(size, 1 / rate)
    curve = interpolate.PchipInterpolator(np.log(FLUTTER_HZ), FLUTTER_DB, extrapolate=False)
    gain = np.zeros_like(hertz)
    inside = (hertz >= FLUTTER_HZ[0]) & (hertz <= FLUTTER_HZ[-1])
    gain[inside] = 10 ** (curve(np.log(hertz[inside])) / 20)
    weighted = fft.irfft(fft.rfft(deviation, size) * gain, size)[:, int(3 * rate):length - int(1.5 * rate)]
    window = signal.windows.hann(length, sym=False)
    spectrum = np.abs(fft.rfft(deviation * window, size)) * 2 / window.sum()
    return 100 * (mean[:, 0] - 1), deviation, weighted, hertz, spectrum


def ladder(take, cue):
    """Record levels, and a row a channel: replay level re full scale in dB, K3 in percent."""
    trim = 0.1 * take.rate
    length = int(min(step["frames"] for step in cue["steps"]) / take.speed - 2 * trim)
    starts = [round(take.begin + step["startFrame"] / take.speed + trim) for step in cue["steps"]]
    steps = np.stack([take.samples[start:start + length].T for start in starts], axis=1) / FULL_SCALE
    window = signal.windows.blackmanharris(length, sym=False)
    size = fft.next_fast_len(length, real=True)
    power = np.abs(fft.rfft(steps * window, size)) ** 2 * 2 / (size * np.sum(window**2))
    step_hz = take.rate / size
    tone = cue["frequencyHz"] * take.speed

    def about(order, half_hz=30):
        centre, half, gap = round(order * tone / step_hz), round(half_hz / step_hz), round(4 * half_hz / step_hz)
        near = power[..., centre - gap:centre + gap]
        noise = np.median(near, axis=-1) / np.log(2) if order > 1 else 0
        return np.maximum(power[..., centre - half:centre + half + 1].sum(axis=-1) - noise * (2 * half + 1), 0)

    first, third = about(1), about(3)
    return np.array([step["levelDb"] for step in cue["steps"]]), decibels(2 * first), 100 * np.sqrt(third / first)


def a_weighting(hertz):
    f = np.square(hertz)
    top = 12194.217**2 * f**2
    bottom = (f + 20.598997**2) * np.sqrt((f + 107.65265**2) * (f + 737.86223**2)) * (f + 12194.217**2)
    return (top / bottom) ** 2 * 10**0.2


def noise(take, cue):
    """Powers re full-scale squared, a row a channel: unweighted, A, BS.468 (rms); third octaves with their centres."""
    heard = take.cut(cue, -0.3, -0.3)
    hertz, density = signal.welch(heard, take.rate, nperseg=1 << 16, scaling="density")
    step = hertz[1]
    audible = (hertz >= 22.4) & (hertz <= 22400)
    bs468 = interpolate.PchipInterpolator(np.log(BS468_HZ), BS468_DB, extrapolate=True)(np.log(np.maximum(hertz, 1)))
    weightings = np.stack((audible, a_weighting(hertz), 10 ** (bs468 / 10) * (hertz > 0)))
    centres = 1000 * 10 ** (np.arange(-16, 13) / 10)
    low, high = centres * 10**-0.05, centres * 10**0.05
    bands = np.array([band_means(d, step, low, high) * (high - low) for d in density])
    return density @ weightings.T * step, centres, bands


def level_of(take, cue):
    """Power of a steady tone as a sine of that peak squared, one a channel."""
    return 2 * np.mean(take.cut(cue, -0.1, -0.1) ** 2, axis=1)


def write(folder, name, heading, *columns):
    np.savetxt(os.path.join(folder, name), np.column_stack(columns), "%.6g", ",", header=heading, comments="")


def main(path, folder, out):
    take = Return(path, folder)
    cues = take.cues
    os.makedirs(out, exist_ok=True)
    reference = level_of(take, cues["reference"])

    hertz, levels = response(take, cues["sweep-low"])
    write(out, "response.csv", "frequency (Hz),left (dB re 1 kHz),right (dB re 1 kHz)", hertz, *levels)

    course, rate = speed_course(take, cues["speed"])
    error, deviation, weighted, rates, peaks = flutter(course, rate)
    two_sigma = np.percentile(np.abs(weighted), 95.45, axis=1)
    seconds = np.arange(deviation.shape[1]) / rate
    write(out, "speed.csv", "time (s),left (%),right (%)", seconds, *deviation)
    shown = (rates >= 0.2) & (rates <= 300)
    write(out, "flutter.csv", "rate (Hz),left peak (%),right peak (%)", rates[shown], *peaks[:, shown])

    record, replay, k3 = ladder(take, cues["ladder-mid"])
    replay -= decibels(reference)[:, None]
    heading = "record level (dB),left level (dB),right level (dB),left K3 (%),right K3 (%)"
    write(out, "ladder.csv", heading, record, *replay, *k3)

    totals, centres, bands = noise(take, cues["silence"])
    quiet = decibels(2 * totals / reference[:, None])
    write(out, "noise.csv", "third octave (Hz),left (dB),right (dB)", centres, *decibels(2 * bands / reference[:, None]))

    print(f"programme begins at {take.begin / take.rate:.4f} s, speed {100 * (take.speed - 1):+.4f} %")
    for c, channel in enumerate(CHANNELS):
        upper = hertz[(hertz > 1000) & (levels[c] < -3)]
        clear = k3[c] > 0.1
        three = np.interp(np.log(3), np.log(k3[c][clear]), record[clear])
        print(f"{channel}: −3 dB at {upper[0] if len(upper) else np.nan:.0f} Hz; speed {error[c]:+.4f} %, "
              f"W&F weighted 2 sigma {two_sigma[c]:.4f} %, rms {np.sqrt(np.mean(weighted[c] ** 2)):.4f} %, "
              f"unweighted rms {np.std(deviation[c]):.4f} %; K3 3 % at {three:+.2f} dB; "
              f"noise {quiet[c, 0]:.2f} dB, A {quiet[c, 1]:.2f} dB, BS.468 rms {quiet[c, 2]:.2f} dB")


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    main(*sys.argv[1:])

"""Figures that NumericalPackageTest holds the measures against, by numpy and scipy.

Signals are given by formulas and made again in the test; what is kept are the figures. Run with
Python 3: python3 numerical-package.py > numerical-package.json
"""

import json

import numpy as np
import scipy
from scipy import integrate, optimize, signal

RATE = 48000
REFERENCE = 10 ** (-18 / 20)
NOISE = 0.0004


def noise(seed, count):
    """Uniform in -1 to 1 by the congruential generator of Knuth's MMIX."""
    s, out = seed, np.empty(count)
    for i in range(count):
        s = (s * 6364136223846793005 + 1442695040888963407) % 2**64
        out[i] = (s >> 11) / 2**52 - 1
    return out


# A path with two filters: high-pass of second, low-pass of third order, both Butterworth.
sos = np.vstack(
    [
        signal.butter(2, 35, "highpass", fs=RATE, output="sos"),
        signal.butter(3, 14000, "lowpass", fs=RATE, output="sos"),
    ]
)


def gain_db(hz):
    _, h = signal.sosfreqz(sos, worN=np.atleast_1d(hz), fs=RATE)
    return 20 * np.log10(np.abs(h))


def edge(low, high):
    at_1k = gain_db(1000)[0]
    return optimize.brentq(lambda f: gain_db(f)[0] - at_1k + 3, low, high)


twelfths = [1000 * 2 ** (n / 12) for n in range(-55, 49)]
response = {
    "frequencyHz": twelfths,
    "magnitudeDb": list(gain_db(np.array(twelfths)) - gain_db(1000)[0]),
    "lowerEdgeHz": edge(20, 100),
    "upperEdgeHz": edge(8000, 20000),
}

# A path that bends: y = tanh(2.6 x) / 2.6 + 0.004 x^2.
BEND, SQUARE = 2.6, 0.004


def harmonic(order, level_db):
    a = REFERENCE * 10 ** (level_db / 20)

    def part(p):
        x = a * np.cos(p)
        return (np.tanh(BEND * x) / BEND + SQUARE * x * x) * np.cos(order * p)

    return 2 / np.pi * integrate.quad(part, 0, np.pi, epsabs=1e-15, limit=200)[0]


def ratio(order, level_db):
    return 100 * abs(harmonic(order, level_db) / harmonic(1, level_db))


levels = list(range(-10, 15, 3))
distortion = {
    "recordLevelDb": levels,
    "k2Percent": [ratio(2, x) for x in levels],
    "k3Percent": [ratio(3, x) for x in levels],
    "compressionDb": [
        20 * np.log10(REFERENCE * 10 ** (x / 20) / harmonic(1, x)) for x in levels
    ],
    "levelAtK3OnePercent": optimize.brentq(lambda x: ratio(3, x) - 1, -10, 14),
    "levelAtK3ThreePercent": optimize.brentq(lambda x: ratio(3, x) - 3, -10, 14),
}
distortion["maximumOutputLevel"] = 20 * np.log10(
    harmonic(1, distortion["levelAtK3ThreePercent"]) / harmonic(1, 0)
)


# Noise: the generator's values through one pole, added behind the filtered path.
def a_gain(f):
    f2 = f * f
    r = 12194.217**2 * f2 * f2 / (
        (f2 + 20.598997**2)
        * np.sqrt((f2 + 107.65265**2) * (f2 + 737.86223**2))
        * (f2 + 12194.217**2)
    )
    return r * 10 ** (2.0 / 20)


x = NOISE * signal.lfilter([1], [1, -0.6], noise(2026, 60 * RATE))
f, density = signal.welch(x, RATE, window="hann", nperseg=1 << 15)
band = (f >= 22.4) & (f <= 22400)
reference_power = (REFERENCE * 10 ** (gain_db(1000)[0] / 20)) ** 2 / 2
step = f[1]
noise_figures = {
    "unweighted": 10 * np.log10(np.sum(density[band]) * step / reference_power),
    "aWeighted": 10
    * np.log10(np.sum(density[band] * a_gain(f[band]) ** 2) * step / reference_power),
}

# A speed tone: deviation of three lines about a mean, level swinging by a fifth, noise.
SECONDS = 40
t = np.arange(SECONDS * RATE) / RATE
LINES = [(0.8, 0.15, 0.0), (20.0, 0.08, 1.0), (40.0, 0.05, 2.0)]
phase = 2 * np.pi * 3150 * 1.004 * t
for hz, percent, start in LINES:
    phase -= 3150 * percent / 100 / hz * np.cos(2 * np.pi * hz * t + start)
tone = 0.1 * (1 + 0.2 * np.sin(2 * np.pi * 3.3 * t)) * np.sin(phase)
tone += 0.0003 * noise(7, len(t))
narrow = signal.sosfiltfilt(
    signal.butter(4, [2400, 4000], "bandpass", fs=RATE, output="sos"), tone
)
rate = np.diff(np.unwrap(np.angle(signal.hilbert(narrow)))) * RATE / (2 * np.pi)
deviation = 100 * (rate / 3150 - 1)
middle = deviation[5 * RATE : 35 * RATE]
tm = np.arange(len(middle)) / RATE
columns = [np.ones_like(tm)]
for hz, _, _ in LINES:
    columns += [np.sin(2 * np.pi * hz * tm), np.cos(2 * np.pi * hz * tm)]
fit = np.linalg.lstsq(np.column_stack(columns), middle, rcond=None)[0]
peaks = [float(np.hypot(fit[1 + 2 * i], fit[2 + 2 * i])) for i in range(3)]
# IEC 60386 at 0.8, 20 and 40 Hz: -6, -5.9 and -10.4 dB.
weights = [10 ** (-6 / 20), 10 ** (-5.9 / 20), 10 ** (-10.4 / 20)]
spectrum = np.abs(np.fft.rfft(middle - np.mean(middle))) / len(middle)
hz = np.fft.rfftfreq(len(middle), 1 / RATE)


def rms(low, high):
    inside = (hz >= low) & (hz < high)
    return float(np.sqrt(2 * np.sum(spectrum[inside] ** 2)))


speed = {
    "deviation": float(fit[0]),
    "peakPercent": peaks,
    "weightedRms": float(np.sqrt(sum((p * w) ** 2 / 2 for p, w in zip(peaks, weights)))),
    "unweightedRms": rms(0.2, 200),
    "wowRms": rms(0.2, 6),
    "flutterRms": rms(6, 200),
}

print(
    json.dumps(
        {
            "source": "numpy %s, scipy %s; formulas in numerical-package.py"
            % (np.__version__, scipy.__version__),
            "seen": "derived",
            "sections": sos.tolist(),
            "response": response,
            "distortion": distortion,
            "noise": noise_figures,
            "speed": speed,
        },
        indent=1,
        default=float,
    )
)

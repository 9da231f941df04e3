package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;

/**
 * Invented calibration tapes, written down as functions of the place on the tape and heard through
 * a transport whose motion is a formula, so that nothing is interpolated: x(t) = s(p(t)), p(t) =
 * v·t − Σ d/(2πh)·cos 2πht.
 */
final class TapeBench {

    static final int RATE = 48_000;

    /** Peak of a tone at reference level. */
    static final double REFERENCE = 0.1259;

    /** What lies on the tape from a second on for so long. */
    private record Piece(double from, double seconds, double hz, double peak) {}

    /** A tone as it should be found. */
    record Truth(double from, double to, double hz, double levelDb) {}

    private final List<Piece> pieces = new ArrayList<>();
    private final List<double[]> wow = new ArrayList<>();
    private double length;
    private double speed = 1;
    private double delayS;
    private double rightGain = 1;
    private double noisePeak;
    private double humPeak;
    private boolean holes;
    private int rate = RATE;

    TapeBench tone(double hz, double levelDb, double seconds) {
        return piece(seconds, hz, REFERENCE * Math.pow(10, levelDb / 20));
    }

    TapeBench gap(double seconds) {
        return piece(seconds, 0, 0);
    }

    /** Something like a voice: a pitch that glides, with formants, in syllables. */
    TapeBench speech(double seconds) {
        return piece(seconds, -1, 0.4 * REFERENCE);
    }

    /** Tones of a level with gaps between. */
    TapeBench series(double levelDb, double seconds, double... hz) {
        for (double f : hz) {
            tone(f, levelDb, seconds).gap(0.4);
        }
        return this;
    }

    private TapeBench piece(double seconds, double hz, double peak) {
        pieces.add(new Piece(length, seconds, hz, peak));
        length += seconds;
        return this;
    }

    TapeBench at(double ratio) {
        speed = ratio;
        return this;
    }

    TapeBench wow(double percent, double hz) {
        wow.add(new double[] {percent / 100, hz});
        return this;
    }

    TapeBench right(double delayUs, double levelDb) {
        delayS = 1e-6 * delayUs;
        rightGain = Math.pow(10, levelDb / 20);
        return this;
    }

    /** White noise, its level so many dB re reference (both as root mean square). */
    TapeBench noise(double levelDb) {
        noisePeak = REFERENCE / Math.sqrt(2) * Math.pow(10, levelDb / 20);
        return this;
    }

    TapeBench hum(double levelDb) {
        humPeak = REFERENCE * Math.pow(10, levelDb / 20);
        return this;
    }

    /** Every 2 s a dropout of 80 ms, 20 dB deep. */
    TapeBench holes() {
        holes = true;
        return this;
    }

    TapeBench rate(int hz) {
        rate = hz;
        return this;
    }

    /** The tones in the order in which they are heard. */
    List<Truth> truth() {
        return pieces.stream()
                .filter(p -> p.hz > 0)
                .map(
                        p ->
                                new Truth(
                                        p.from / speed,
                                        (p.from + p.seconds) / speed,
                                        p.hz * speed,
                                        20 * Math.log10(p.peak)))
                .toList();
    }

    MemoryAudio play() {
        return play(1);
    }

    MemoryAudio play(long seed) {
        Random random = new Random(seed);
        int n = (int) (length / speed * rate) - 1;
        double[][] x = new double[2][n];
        for (int i = 0; i < n; i++) {
            double t = (double) i / rate;
            double hum = humPeak * Math.sin(2 * Math.PI * 50 * t);
            double hole = holes && t % 2 > 1.5 && t % 2 < 1.58 ? 0.1 : 1;
            x[0][i] = hole * sound(place(t)) + hum + noisePeak * random.nextGaussian();
            x[1][i] =
                    hole * rightGain * sound(place(t - delayS))
                            + hum
                            + noisePeak * random.nextGaussian();
        }
        return new MemoryAudio("tape.wav", rate, x);
    }

    /** The sound with its programme on the left channel only. */
    static MemoryAudio mono(MemoryAudio pair) {
        return new MemoryAudio(
                "mono.wav", pair.sampleRateHz(), pair.read(0, (int) pair.frames())[0]);
    }

    private double place(double t) {
        double place = speed * t;
        for (double[] w : wow) {
            place -= w[0] / (2 * Math.PI * w[1]) * Math.cos(2 * Math.PI * w[1] * t);
        }
        return place;
    }

    private double sound(double place) {
        for (Piece p : pieces) {
            double into = place - p.from;
            if (into >= 0 && into < p.seconds) {
                double fade = Math.min(1, Math.min(into, p.seconds - into) / 0.005);
                return p.peak
                        * fade
                        * (p.hz < 0 ? voice(place) : Math.sin(2 * Math.PI * p.hz * into));
            }
        }
        return 0;
    }

    private static double voice(double t) {
        double syllable = Math.sqrt(Math.max(0, Math.sin(2 * Math.PI * 2.1 * t)));
        // 120 Hz, gliding by 30 Hz up and down 1.3 times a second.
        double phase = 2 * Math.PI * 120 * t - 30 / 1.3 * Math.cos(2 * Math.PI * 1.3 * t);
        double sum = 0;
        for (int k = 1; syllable > 0 && k <= 20; k++) {
            double formant = (120 * k - 600) / 250.0;
            sum += (1 + 2 * Math.exp(-formant * formant)) / k * Math.sin(k * phase);
        }
        return syllable * sum / 3;
    }
}

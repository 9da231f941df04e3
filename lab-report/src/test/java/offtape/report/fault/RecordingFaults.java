package offtape.report.fault;

import static offtape.report.fault.FaultForms.at;
import static offtape.report.fault.FaultForms.size;

import java.util.List;

/** Faults of recording: bias, equalisation, amplifiers, erasing. */
final class RecordingFaults {

    static final List<FaultForm> ALL =
            List.of(
                    FaultForm.both(
                                    "bias-low",
                                    "both channels",
                                    (w, s, d) -> w.with("bias.overDb", -under(w, s)))
                            .upTo(200),
                    FaultForm.right(
                                    "bias-low",
                                    "one channel",
                                    (w, s, d) -> w.with("bias.rightDb", -under(w, s)))
                            .upTo(200),
                    FaultForm.both(
                                    "bias-high",
                                    "both channels",
                                    (w, s, d) -> w.with("bias.overDb", over(w, s)))
                            .upTo(200),
                    FaultForm.right(
                                    "bias-high",
                                    "one channel",
                                    (w, s, d) -> w.with("bias.rightDb", over(w, s)))
                            .upTo(200),
                    FaultForm.both(
                            "wrong-equalisation",
                            "too bright",
                            (w, s, d) -> equalisation(w, size(s, 1.4, 3.4), true, d)),
                    FaultForm.both(
                            "wrong-equalisation",
                            "too dull",
                            (w, s, d) -> equalisation(w, size(s, 1.4, 3.4), false, d)),
                    FaultForm.right(
                            "record-electronics",
                            "even harmonics",
                            (w, s, d) ->
                                    w.with(
                                            "electronics.right.secondHarmonicPercent",
                                            size(s, 0.8, 6))),
                    FaultForm.right(
                            "record-electronics",
                            "odd harmonics",
                            (w, s, d) ->
                                    w.with(
                                            "electronics.right.thirdHarmonicPercent",
                                            size(s, 1.5, 6))),
                    FaultForm.both("erasure", "earlier recording", RecordingFaults::residue));

    /** Wavelength at which a decibel of bias moves the highs by a decibel (common practice), µm. */
    private static final double BIAS_UM = 19.05;

    private RecordingFaults() {}

    /**
     * Too little bias that lifts 10 kHz by so much if it went on evenly; short waves feel it first.
     */
    private static double under(Workshop w, double s) {
        return Math.min(4, size(s, 2, 7) * w.waveUm() / BIAS_UM);
    }

    /** Too much bias that takes so much of 10 kHz. */
    private static double over(Workshop w, double s) {
        return Math.min(6, size(s, 2.5, 14) * w.waveUm() / BIAS_UM);
    }

    /** Two time constants of a ratio, as of 50 µs against 90 µs or 70 µs against 120 µs. */
    private static Workshop equalisation(Workshop w, double ratio, boolean bright, Draws d) {
        double shortUs = w.isCassette() ? d.between(50, 80) : d.between(20, 50);
        double longUs = shortUs * ratio;
        return w.with(
                "electronics.equalisation",
                Draws.json(
                        "{\"tapeMicroseconds\": %.2f, \"replayMicroseconds\": %.2f}",
                        bright ? shortUs : longUs, bright ? longUs : shortUs));
    }

    private static Workshop residue(Workshop w, double s, Draws d) {
        double shift = (d.chance(0.5) ? 1 : -1) * d.between(8, 40);
        return w.with(
                "residue",
                Draws.json("{\"levelDb\": %.2f, \"shiftSeconds\": %.2f}", at(s, -46, -22), shift));
    }
}

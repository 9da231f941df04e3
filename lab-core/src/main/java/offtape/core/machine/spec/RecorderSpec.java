package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;
import static offtape.core.machine.spec.Limits.withinIfGiven;

import offtape.core.text.Sentences;

/**
 * The interface that plays the programme and records the return.
 *
 * @param startSeconds how much is recorded ahead of the programme, −600 to 600 s; negative: the
 *     recording starts too late and misses that much
 * @param tailSeconds how much is recorded after it, −600 to 600 s; negative: it is cut short;
 *     default 0.5
 * @param leadIn what sounds before the programme, or null for silence
 * @param delaySamples delay of the interface's own loop, 0 to 1 000 000, in samples of the return
 * @param clockErrorPpm by how much the recording clock is fast, −1000 to 1000 ppm
 * @param noiseDbfs rms of the interface's white noise over its whole band, −200 to −20 dB re a
 *     full-scale sine, or null for none
 * @param lowerEdgeHz −3 dB of the interface's first-order high-pass, 0.5 to 100 Hz, or null
 * @param upperEdgeHz −3 dB of its second-order low-pass, 5000 to 90 000 Hz, or null
 * @param clipDbfs level of a sine at which the input clips, −60 to 40 dBFS; default 0
 * @param bits word length, 8 to 24, with triangular dither of two steps' width, or null for samples
 *     that are not rounded
 * @param secondHarmonicPercent second harmonic that the input adds to a sine at reference level, 0
 *     to 1 % of it; it rises by 1 dB a dB. Default 0
 * @param thirdHarmonicPercent the same of the third, which rises by 2 dB a dB. Default 0
 */
public record RecorderSpec(
        double startSeconds,
        Double tailSeconds,
        LeadInSpec leadIn,
        double delaySamples,
        double clockErrorPpm,
        Double noiseDbfs,
        Double lowerEdgeHz,
        Double upperEdgeHz,
        Double clipDbfs,
        Integer bits,
        double secondHarmonicPercent,
        double thirdHarmonicPercent) {

    private static final Sentences SAID = Sentences.near(RecorderSpec.class);

    /** A perfect interface. */
    public static final RecorderSpec PERFECT =
            new RecorderSpec(0, null, null, 0, 0, null, null, null, null, null, 0, 0);

    /** Checks the limits and fills in defaults. */
    public RecorderSpec {
        within("startSeconds", startSeconds, -600, 600, "s");
        tailSeconds = within("tailSeconds", orElse(tailSeconds, 0.5), -600, 600, "s");
        within("delaySamples", delaySamples, 0, 1_000_000, SAID.say("unit.samples"));
        within("clockErrorPpm", clockErrorPpm, -1000, 1000, "ppm");
        withinIfGiven("noiseDbfs", noiseDbfs, -200, -20, "dBFS");
        withinIfGiven("lowerEdgeHz", lowerEdgeHz, 0.5, 100, "Hz");
        withinIfGiven("upperEdgeHz", upperEdgeHz, 5000, 90_000, "Hz");
        clipDbfs = within("clipDbfs", orElse(clipDbfs, 0.0), -60, 40, "dBFS");
        if (bits != null) {
            within("bits", bits, 8, 24, "");
        }
        within("secondHarmonicPercent", secondHarmonicPercent, 0, 1, "%");
        within("thirdHarmonicPercent", thirdHarmonicPercent, 0, 1, "%");
    }
}

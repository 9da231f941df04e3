package offtape.report.measure.tape;

import offtape.core.standard.SampleClock;
import offtape.core.tape.ListedTone;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/**
 * A tone and what it was taken for.
 *
 * @param number counted from 1
 * @param nominalHz the frequency it was recorded with, or null if it fits none
 * @param listed its entry in the list of the tape, or null
 */
record NamedTone(int number, HeardTone heard, Double nominalHz, ListedTone listed) {

    private static final Sentences SAID = Sentences.near(NamedTone.class);

    /** People round the frequency of a tone. */
    private static final double SAME = 1e-3;

    /** The nominal frequency, or that heard if there is none. */
    double aboutHz() {
        return nominalHz == null ? heard.hz() : nominalHz;
    }

    /** The level it was recorded at by the list, or null. */
    Double recordedDb() {
        return listed == null ? null : listed.levelDb();
    }

    /** Whether the list gives it this purpose. */
    boolean isFor(ListedTone.Purpose purpose) {
        return listed != null && listed.purpose() == purpose;
    }

    /** Whether it was recorded with a frequency, within a thousandth. */
    boolean isOf(double hz) {
        return nominalHz != null && isSame(nominalHz, hz);
    }

    /** Whether two nominal frequencies are one, within a thousandth. */
    static boolean isSame(double nominalHz, double hz) {
        return Math.abs(nominalHz / hz - 1) < SAME;
    }

    /** The frequency heard, by the recorder's clock. */
    Quantity frequency() {
        return Quantity.known(
                heard.hz(),
                "Hz",
                Math.hypot(heard.hzUncertainty(), SampleClock.UNCERTAINTY * heard.hz()));
    }

    /** How far its frequency is off, %, by the recorder's clock. */
    Quantity deviation() {
        return nominalHz == null
                ? Quantity.unknown(SAID.say("frequency-unknown"))
                : Quantity.known(
                        100 * (heard.hz() / nominalHz - 1),
                        "%",
                        100 * frequency().uncertainty() / nominalHz);
    }

    /** Expanded uncertainty of that but for the clock, which is the same for all tones, %. */
    double ownUncertainty() {
        return 100 * heard.hzUncertainty() / nominalHz;
    }
}

package offtape.report.fault.symptom;

/**
 * Something that results show and faults move.
 *
 * @param key short stable name
 * @param words the figure in words
 * @param unit of its value
 * @param scale on which it is compared
 * @param joining of several faults
 * @param mirrored whether it changes its sign when the channels are exchanged
 * @param grain standard deviation on the scale below which no difference is believed, whatever the
 *     figures say: simulated machines are simpler than real ones
 */
public record Symptom(
        String key,
        String words,
        String unit,
        Scale scale,
        Joining joining,
        boolean mirrored,
        double grain) {

    /** One of decibels that add up. */
    static Symptom decibels(String key, String words, boolean mirrored, double grain) {
        return new Symptom(key, words, "dB", Scale.LINEAR, Joining.SUM, mirrored, grain);
    }

    /** One of decibels of which the largest counts. */
    static Symptom level(String key, String words, double grain) {
        return new Symptom(key, words, "dB", Scale.LINEAR, Joining.LARGEST, false, grain);
    }

    /** A positive size of which the largest counts. */
    static Symptom size(String key, String words, String unit, double grain) {
        return new Symptom(key, words, unit, Scale.DECADES, Joining.LARGEST, false, grain);
    }

    /** Something that is there (1) or not (0). */
    static Symptom sign(String key, String words, boolean mirrored) {
        return new Symptom(key, words, "", Scale.LINEAR, Joining.SUM, mirrored, 0.15);
    }
}

package offtape.report.apply.model;

import java.util.Locale;

/** Parts of a machine's model, each of which can be left out. */
public enum ModelPart {
    /** Linear response, balance and delay of the channels. */
    RESPONSE,
    /** What each channel hears of the other. */
    CROSSTALK,
    /** The curve of tape and amplifiers. */
    SATURATION,
    /** Hiss and hum. */
    NOISE,
    /** Wow and flutter. */
    MOTION;

    /** The name in files and on the command line. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}

package offtape.core.unit;

/** Conversions between ratios and decibels. A ratio of 0 gives negative infinity. */
public final class Decibels {

    private Decibels() {}

    /** 20·lg of an amplitude ratio (0 or more), in dB. */
    public static double ofAmplitude(double ratio) {
        return 20 * Math.log10(ratio);
    }

    /** 10·lg of a power ratio (0 or more), in dB. */
    public static double ofPower(double ratio) {
        return 10 * Math.log10(ratio);
    }

    /** The amplitude ratio of a level in dB. */
    public static double toAmplitude(double levelDb) {
        return Math.pow(10, levelDb / 20);
    }

    /** The power ratio of a level in dB. */
    public static double toPower(double levelDb) {
        return Math.pow(10, levelDb / 10);
    }
}

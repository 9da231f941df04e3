package offtape.cli.lineup;

import offtape.cli.sound.LevelCeiling;
import offtape.core.programme.ChannelSet;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;

/**
 * What a user has set: the view, and the sound that goes with it.
 *
 * @param limits what may be set at all
 * @param view what is looked at
 * @param frequencyHz of the tone in the view of gains
 * @param gainsDb peak of the tone in the view of gains, dB re the reference tone
 * @param trimDb what keys have added in this view, dB
 * @param channels on which it is sent
 * @param note what the last key could not do, a sentence, or empty
 */
public record Desk(
        Limits limits,
        View view,
        double frequencyHz,
        double gainsDb,
        double trimDb,
        ChannelSet channels,
        String note) {

    private static final Sentences SAID = Sentences.near(Desk.class);

    private static final double BIAS_HZ = 10_000;
    private static final double LEAST_DB = -60;

    /**
     * What may be set at all.
     *
     * @param referenceDbfs level of the reference tone, dB re a full-scale sine
     * @param ceiling what no peak may exceed
     * @param targetDbfs level a calibration tape's tone is to have, dB re a full-scale sine
     * @param listening nothing is sent: a tape is replayed
     */
    public record Limits(
            double referenceDbfs, LevelCeiling ceiling, double targetDbfs, boolean listening) {}

    /**
     * As a session begins.
     *
     * @throws offtape.cli.sound.TooLoudException if the tone is above the ceiling
     */
    public static Desk begin(
            Limits limits, View view, double frequencyHz, double levelDb, ChannelSet channels) {
        limits.ceiling()
                .check(
                        Decibels.toAmplitude(limits.referenceDbfs() + levelDb),
                        SAID.say("the-tone"),
                        SAID.say("lower-level"));
        return new Desk(limits, view, frequencyHz, levelDb, 0, channels, "");
    }

    /** Whether anything is sent in this view. */
    public boolean sends() {
        return !limits.listening() && view != View.TAPE;
    }

    /** Frequency of the tone that is sent, hertz; 0 if it is none. */
    public double sentHz() {
        return switch (view) {
            case GAINS -> frequencyHz;
            case BIAS -> BIAS_HZ;
            default -> 0;
        };
    }

    /** Peak of what is sent, dB re the reference tone, never above the ceiling. */
    public double levelDb() {
        double base = view == View.GAINS ? gainsDb : view.levelDb();
        return Math.min(base + trimDb, limits.ceiling().dbfs() - limits.referenceDbfs());
    }

    /** The same, dB re full scale. */
    public double levelDbfs() {
        return levelDb() + limits.referenceDbfs();
    }

    /** What to send, with the samples of the many tones at hand. */
    Sent sent(long number, double[] manyTones) {
        if (!sends()) {
            return Sent.nothing(number);
        }
        double peak = Decibels.toAmplitude(levelDbfs());
        double left = channels == ChannelSet.RIGHT ? 0 : peak;
        double right = channels == ChannelSet.LEFT ? 0 : peak;
        return view == View.AZIMUTH
                ? Sent.loop(number, manyTones, left, right)
                : Sent.tone(number, sentHz(), left, right);
    }

    /** What a key that sets something leads to. */
    Desk press(Key key) {
        return switch (key) {
            case LOW -> tone(1000);
            case HIGH -> tone(10_000);
            case SPEED -> tone(3150);
            case LOUDER -> louder(1);
            case SOFTER -> louder(-1);
            case LEFT -> on(ChannelSet.LEFT);
            case RIGHT -> on(ChannelSet.RIGHT);
            case BOTH -> on(ChannelSet.BOTH);
            case GAINS -> look(View.GAINS);
            case AZIMUTH -> look(View.AZIMUTH);
            case BIAS -> look(View.BIAS);
            case TAPE -> look(View.TAPE);
            case NOISE, MARK -> sends() ? noted("") : noted(nothingSent());
            default -> noted("");
        };
    }

    private String nothingSent() {
        return SAID.say("nothing-sent");
    }

    private Desk noted(String text) {
        return new Desk(limits, view, frequencyHz, gainsDb, trimDb, channels, text);
    }

    private Desk tone(double hz) {
        if (!sends() || view != View.GAINS) {
            return noted(sends() ? SAID.say("own-sound") : nothingSent());
        }
        return new Desk(limits, view, hz, gainsDb, trimDb, channels, "");
    }

    private Desk louder(double db) {
        if (!sends()) {
            return noted(nothingSent());
        }
        // from what really sounds, so that the first step down from the ceiling is heard
        double trim = levelDb() - (view == View.GAINS ? gainsDb : view.levelDb()) + db;
        Desk next = new Desk(limits, view, frequencyHz, gainsDb, trim, channels, "");
        if (db > 0 && next.levelDb() <= levelDb() + 1e-9) {
            return noted(SAID.say("highest-allowed", limits.ceiling().dbfs()));
        }
        return next.levelDb() < LEAST_DB ? noted(SAID.say("no-quieter")) : next;
    }

    private Desk on(ChannelSet set) {
        if (!sends()) {
            return noted(nothingSent());
        }
        if (view == View.AZIMUTH && set != ChannelSet.BOTH) {
            return noted(SAID.say("both-channels"));
        }
        return new Desk(limits, view, frequencyHz, gainsDb, trimDb, set, "");
    }

    private Desk look(View next) {
        if (limits.listening() && (next == View.GAINS || next == View.BIAS)) {
            return noted(SAID.say("listening"));
        }
        if (next == view) {
            return noted("");
        }
        return new Desk(
                limits,
                next,
                frequencyHz,
                next == View.GAINS || view != View.GAINS ? gainsDb : gainsDb + trimDb,
                0,
                next == View.GAINS ? channels : ChannelSet.BOTH,
                "");
    }
}

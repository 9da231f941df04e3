package offtape.report.judge;

import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;

/**
 * Something that a session does not tell.
 *
 * @param figure that it is, or belongs to
 * @param what in words
 * @param why a plain sentence
 * @param remedy what to measure to know it, a plain sentence
 */
record Gap(Judged figure, String what, String why, String remedy) {

    private static final Sentences SAID = Sentences.near(Gap.class);

    /** A figure that is not known in a session of a capture mode, or of an unknown one (null). */
    static Gap of(Judged figure, String mode, String what, String why) {
        return new Gap(figure, what, why, remedy(figure, mode));
    }

    private static String remedy(Judged figure, String mode) {
        return switch (figure) {
            case SPEED_DEVIATION -> speed(mode);
            case WOW_AND_FLUTTER -> SAID.say("remedy.long-tone-unbroken");
            case RESPONSE -> SAID.say("remedy.response");
            case LEVEL_AT_3_PERCENT, WEIGHTED_NOISE_DISTANCE, NOISE_DISTANCE ->
                    SAID.say("remedy.level");
            case BALANCE, INTERCHANNEL_DELAY, CROSSTALK -> SAID.say("remedy.channels");
        };
    }

    private static String speed(String mode) {
        if (mode == null) {
            return SAID.say("remedy.mode");
        }
        return SAID.say(
                mode.equals(CaptureMode.REFERENCE_TAPE.key())
                        ? "remedy.long-tone"
                        : "remedy.mean-speed");
    }
}

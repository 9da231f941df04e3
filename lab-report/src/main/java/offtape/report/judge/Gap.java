package offtape.report.judge;

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

    /** A figure that is not known in a session of a capture mode, or of an unknown one (null). */
    static Gap of(Judged figure, String mode, String what, String why) {
        return new Gap(figure, what, why, remedy(figure, mode));
    }

    private static String remedy(Judged figure, String mode) {
        return switch (figure) {
            case SPEED_DEVIATION -> speed(mode);
            case WOW_AND_FLUTTER ->
                    "Play the programme's long tone to its end without a break, and measure again.";
            case RESPONSE ->
                    "Record the return at 48 kHz or more with both sweeps whole and as loud as they"
                            + " were sent, and measure again; or end the limit where the programme ends.";
            case LEVEL_AT_3_PERCENT, WEIGHTED_NOISE_DISTANCE, NOISE_DISTANCE ->
                    "Play the whole programme with its rising tones and its silence; if even the"
                            + " loudest tone stays clean, raise the record level. Then measure again.";
            case BALANCE, INTERCHANNEL_DELAY, CROSSTALK ->
                    "Record both channels, left and right, and measure again.";
        };
    }

    private static String speed(String mode) {
        if (mode == null) {
            return "Say with --mode how the recording was made, and measure it again.";
        }
        return mode.equals(CaptureMode.REFERENCE_TAPE.key())
                ? "Play the programme's long tone to its end, and measure again."
                : "To know the mean speed, replay a tape that was recorded on a machine you trust:"
                        + " offtape measure RETURN --programme DIR --out SESSION --mode"
                        + " reference-tape.";
    }
}

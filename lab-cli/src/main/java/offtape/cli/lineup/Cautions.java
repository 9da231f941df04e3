package offtape.cli.lineup;

/** What can hurt, and what to do about it. */
public final class Cautions {

    private static final String OPENED =
            "Inside an opened machine there is mains voltage. Use an insulated, non-magnetic tool,"
                    + " keep clear of reels and pinch roller, keep to the rules of your place, and"
                    + " leave it to a licensed technician if you are unsure.";

    private Cautions() {}

    /** Before anything sounds or is replayed. */
    public static String ofSound(boolean sends) {
        return (sends
                        ? "A steady tone is about to sound, quiet first and then louder. "
                        : "A calibration tape may hold loud tones. ")
                + "Turn loudspeakers down and take headphones off. Keep hair, sleeves and fingers"
                + " away from moving reels.";
    }

    /** While somebody turns a screw; empty in the view that needs none. */
    static String ofView(View view) {
        return view == View.GAINS ? "" : OPENED;
    }
}

package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/** What to turn when both channels come back. */
final class BalanceWords {

    /** As near as a trimmer is set by hand; common practice, no source. */
    static final double CLOSE_DB = 0.3;

    /** The loudest tones of the programme lie this far above the reference tone. */
    private static final double PROGRAMME_DB = 14;

    private static final List<String> NAMES = List.of("left", "right");

    private BalanceWords() {}

    /**
     * Sentences; at least one.
     *
     * @param left what comes back less what is sent, dB
     * @param right the same
     * @param referenceDbfs level of the reference tone
     */
    static List<String> of(double left, double right, double referenceDbfs) {
        double difference = right - left;
        List<String> words = new ArrayList<>();
        boolean match = Math.abs(difference) <= CLOSE_DB;
        if (!match) {
            words.add(balance(left, right));
        }
        double mean = (left + right) / 2;
        boolean sameSide = Math.min(Math.abs(left), Math.abs(right)) > CLOSE_DB && left * right > 0;
        if (match && Math.abs(mean) <= CLOSE_DB) {
            words.add("Channels match, at the level at which they are sent. Nothing to turn.");
        } else if (match || sameSide) {
            double all = match ? mean : Math.abs(left) < Math.abs(right) ? left : right;
            words.add(
                    (match ? "Channels match. Both come back " : "Both come back ")
                            + (match ? "" : "at least ")
                            + amount(all)
                            + ": "
                            + turn(all)
                            + " both record gains, or the interface's input gains if the tape gets"
                            + " the level it should.");
        }
        addHeadroom(referenceDbfs + Math.max(left, right), words);
        return words;
    }

    /** The channel that is further from where it should be is the one to turn. */
    private static String balance(double left, double right) {
        int worse = Math.abs(right) >= Math.abs(left) ? 1 : 0;
        double off = worse == 1 ? right - left : left - right;
        boolean alone =
                Math.min(Math.abs(left), Math.abs(right)) <= CLOSE_DB
                        && Math.max(Math.abs(left), Math.abs(right)) > CLOSE_DB;
        double shown = alone ? worse == 1 ? right : left : off;
        return LevelWords.capital(worse)
                + " comes back "
                + amount(shown)
                + (alone ? "" : " against " + NAMES.get(1 - worse))
                + ": "
                + turn(shown)
                + " the "
                + NAMES.get(worse)
                + " record gain.";
    }

    private static void addHeadroom(double loudestDbfs, List<String> words) {
        double room = -loudestDbfs;
        if (room < PROGRAMME_DB) {
            words.add(
                    "Too hot: the reference tone would come back "
                            + Decimals.of(room, 1)
                            + " dB below full scale, and the programme goes "
                            + Decimals.of(PROGRAMME_DB, 0)
                            + " dB above it. Lower the interface's input gains.");
        }
    }

    /** How far off, such as 1.3 dB low. */
    static String amount(double off) {
        return Decimals.of(Math.abs(off), 1) + (off < 0 ? " dB low" : " dB high");
    }

    /** Which way to turn. */
    static String turn(double off) {
        return off < 0 ? "raise" : "lower";
    }
}

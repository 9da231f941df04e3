package offtape.cli.manual;

/** A description in a few words. */
final class Summary {

    /** What stands before a colon says enough if it is longer than this. */
    private static final int WORDS = 12;

    private Summary() {}

    /** The first sentence, up to a colon behind which it goes into detail. */
    static String of(String... description) {
        String sentence = String.join(" ", description).split("\\.( |$)", 2)[0];
        int colon = sentence.indexOf(": ");
        return colon > WORDS ? sentence.substring(0, colon) : sentence;
    }
}

package offtape.report.render;

/** What figures of one channel or of the whole machine are called where sessions are compared. */
final class FigureNames {

    private FigureNames() {}

    /**
     * A headline figure with its channel.
     *
     * @param name as results have it
     * @param channel {@code left} or {@code right}, or null of a figure of the whole machine
     */
    static String of(Wording words, String name, String channel) {
        String told = words.told(name);
        return channel == null
                ? told
                : words.say("pair.figure-of-channel", told, words.channel(channel));
    }
}

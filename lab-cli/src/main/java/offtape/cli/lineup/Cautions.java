package offtape.cli.lineup;

/**
 * What can hurt, and what to do about it.
 *
 * @param wording how it is said
 */
public record Cautions(Wording wording) {

    /** Before anything sounds or is replayed, a line of its own. */
    public String before(boolean sends) {
        return wording.say("lineup.caution", ofSound(sends));
    }

    String ofSound(boolean sends) {
        return wording.say(sends ? "lineup.caution-sound" : "lineup.caution-tape");
    }

    /** While somebody turns a screw; empty in the view that needs none. */
    String ofView(View view) {
        return view == View.GAINS ? "" : wording.say("lineup.caution-opened");
    }
}

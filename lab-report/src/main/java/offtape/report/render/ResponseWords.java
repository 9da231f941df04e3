package offtape.report.render;

import offtape.report.result.Response;

/**
 * What curves of sweeps are called.
 *
 * @param words of the reader's language
 */
record ResponseWords(Wording words) {

    /** The direct label of a curve: {@code Left at −20 dB}. */
    String label(Response r) {
        return words.say("response.curve", channel(r), level(r.levelDb()));
    }

    /** The head of a row: {@code Left, −20 dB}. */
    String who(Response r) {
        return channel(r) + ", " + level(r.levelDb());
    }

    /** A channel with a capital letter. */
    String channel(Response r) {
        return words.sentence(words.channel(r.channel()));
    }

    /** The letter that stands for a channel where there is no room for its name. */
    String initial(Response r) {
        return channel(r).substring(0, 1);
    }

    /** A programme level in dB: {@code −20 dB}, {@code 0 dB}. */
    String level(double levelDb) {
        return Numbers.withUnit(words.significant(levelDb, 3), "dB");
    }
}

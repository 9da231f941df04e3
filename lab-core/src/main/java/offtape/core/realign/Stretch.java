package offtape.core.realign;

/**
 * Windows one after another.
 *
 * @param from number of the first
 * @param to number of the one behind the last
 */
record Stretch(int from, int to) {

    int count() {
        return to - from;
    }
}

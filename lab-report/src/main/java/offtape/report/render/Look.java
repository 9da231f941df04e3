package offtape.report.render;

/** How a curve is drawn; the style sheet gives each its colour, dash and width. */
enum Look {
    /** Left channel. */
    LEFT("left"),
    /** Right channel. */
    RIGHT("right"),
    /** Left channel in a second reading. */
    LEFT_SECOND("left second"),
    /** Right channel in a second reading. */
    RIGHT_SECOND("right second"),
    /** Both channels together. */
    WHOLE("whole"),
    /** The filled stretch between two extremes. */
    EXTREMES("extremes");

    private final String cssClass;

    Look(String cssClass) {
        this.cssClass = cssClass;
    }

    /** Class names in the style sheet. */
    String cssClass() {
        return cssClass;
    }

    /** The look of a channel, in its first or a second reading. */
    static Look of(String channel, boolean second) {
        if ("right".equals(channel)) {
            return second ? RIGHT_SECOND : RIGHT;
        }
        return second ? LEFT_SECOND : LEFT;
    }
}

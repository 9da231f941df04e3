package offtape.report.cost;

/** How long work takes where the owner says nothing of it: common practice, no source. */
final class TypicalWork {

    private TypicalWork() {}

    /** Hours for an effort as faults name it. */
    static Span hours(String effort) {
        return switch (effort) {
            case "outside" -> Span.ZERO;
            case "clean" -> new Span(0.25, 0.5);
            case "adjust" -> new Span(0.5, 2.0);
            default -> new Span(1, 4.0);
        };
    }

    /** Parts: none where nothing is replaced, of unknown price where something is. */
    static Span parts(String effort) {
        return "replace".equals(effort) ? Span.ZERO.orMore() : Span.ZERO;
    }
}

package offtape.report.result;

/**
 * Something about the recording that the reader of its figures should know.
 *
 * @param severity {@code note}, {@code warning} or {@code blocking}
 * @param code short stable name, such as {@code clipping}
 * @param message plain sentences with the place and the remedy
 */
public record HealthNote(String severity, String code, String message) {}

package offtape.report.batch;

import com.fasterxml.jackson.annotation.JsonValue;

/** How things stand with a return. */
public enum BatchState {
    /** Its turn has not come, or the run was ended before it was done. */
    WAITING("not measured yet"),
    /** Measured in this run. */
    MEASURED("measured"),
    /** Measured in an earlier run, from the same recording in the same way. */
    UNCHANGED("unchanged"),
    /** It could not be measured, or its session could not be written. */
    REFUSED("refused");

    private final String words;

    BatchState(String words) {
        this.words = words;
    }

    /** As it is told. */
    @JsonValue
    public String words() {
        return words;
    }
}

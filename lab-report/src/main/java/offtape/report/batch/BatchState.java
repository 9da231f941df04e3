package offtape.report.batch;

import com.fasterxml.jackson.annotation.JsonValue;
import offtape.core.text.Sentences;

/** How things stand with a return. */
public enum BatchState {
    /** Its turn has not come, or the run was ended before it was done. */
    WAITING("state-waiting"),
    /** Measured in this run. */
    MEASURED("state-measured"),
    /** Measured in an earlier run, from the same recording in the same way. */
    UNCHANGED("state-unchanged"),
    /** It could not be measured, or its session could not be written. */
    REFUSED("state-refused");

    private static final Sentences SAID = Sentences.near(BatchState.class);

    private final String key;

    BatchState(String key) {
        this.key = key;
    }

    /** As it is told. */
    @JsonValue
    public String words() {
        return SAID.say(key);
    }
}

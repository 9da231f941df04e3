package offtape.core.transport;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** Which motion wrote the tape and which read it. */
public enum CaptureMode {
    /** Written perfectly elsewhere, read by this machine. */
    REFERENCE_TAPE,
    /** Written by this machine, rewound, read in a second pass. */
    TWO_PASS,
    /** Written and read at the same moment by heads some way apart. */
    OFF_TAPE,
    /** No machine: the interface hears itself. */
    LOOPBACK;

    private static final Sentences SAID = Sentences.near(CaptureMode.class);

    /** The name in files and at the command line, such as {@code off-tape}. */
    @JsonValue
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The mode of a name.
     *
     * @throws UnusableInputException if there is none of that name
     */
    @JsonCreator
    public static CaptureMode ofKey(String key) {
        for (CaptureMode mode : values()) {
            if (mode.key().equals(key)) {
                return mode;
            }
        }
        throw new UnusableInputException(
                SAID.say(
                        "mode",
                        Arrays.stream(values())
                                .map(CaptureMode::key)
                                .collect(Collectors.joining(", "))));
    }
}

package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.within;

import offtape.core.programme.ChannelSet;

/**
 * A short loss of level where the tape is damaged.
 *
 * @param channel where it is heard: {@code both}, {@code left} or {@code right}
 * @param atSeconds where it starts on the tape, seconds of the programme
 * @param milliseconds length between its 3 dB points (half-depth points if it is no deeper than 3
 *     dB), 0.5 to 5000 ms
 * @param depthDb greatest loss, 0.5 to 100 dB
 */
public record DropoutSpec(
        ChannelSet channel, Double atSeconds, Double milliseconds, Double depthDb) {

    /** Checks the limits. */
    public DropoutSpec {
        given("channel", channel);
        given("atSeconds", atSeconds);
        given("milliseconds", milliseconds);
        given("depthDb", depthDb);
        within("atSeconds", atSeconds, 0, 100_000, "s");
        within("milliseconds", milliseconds, 0.5, 5000, "ms");
        within("depthDb", depthDb, 0.5, 100, "dB");
    }
}

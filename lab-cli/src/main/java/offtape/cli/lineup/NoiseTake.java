package offtape.cli.lineup;

import java.util.Arrays;
import java.util.List;

/** Waits until nothing sent can be on its way any more, and then takes the noise. */
final class NoiseTake {

    private final Flow flow;
    private List<NoiseReading> result;

    /** The silence has been asked for. */
    NoiseTake(Flow flow) {
        this.flow = flow;
    }

    /** Takes the noise once there is enough of it. */
    boolean isDone(History history, int sampleRateHz) {
        int length = (int) (NoiseReading.SECONDS * sampleRateHz);
        if (result == null && flow.isHeard(history.frames(), NoiseReading.SECONDS)) {
            result =
                    Arrays.stream(history.latest(length))
                            .map(x -> NoiseReading.of(x, sampleRateHz))
                            .toList();
        }
        return result != null;
    }

    List<NoiseReading> result() {
        return result;
    }
}

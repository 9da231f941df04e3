package offtape.report.measure;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import offtape.core.machine.spec.MachineSpec;

/** A machine description that starts from an ordinary machine and is changed member by member. */
public final class MachineDraft {

    private static final String ORDINARY =
            """
            {"format": "offtape-machine", "version": 1, "seed": 1, "tapeSpeedMmPerS": 190.5,
             "transport": {"speedDeviationPercent": 0},
             "heads": {"spacingLossMicrometres": 0.6, "gapMicrometres": 2.2,
                       "azimuthArcMinutes": -3.5, "trackWidthMm": 2, "trackSpacingMm": 4,
                       "bumps": [{"frequencyHz": 70, "gainDb": 1.8, "q": 1.2}]},
             "saturation": {"kind": "tanh", "levelAtK3ThreePercentDb": 6.5,
                            "secondHarmonicPercent": 0.1, "emphasisMicroseconds": 35},
             "electronics": {"lowerEdgeHz": 28, "lowerOrder": 2, "upperEdgeHz": 18500,
                             "polarityInverted": false, "right": {"recordGainDb": -1.3}},
             "crosstalk": {"leftToRightDb": -46, "rightToLeftDb": -50},
             "hiss": {"levelDb": -58},
             "recorder": {"startSeconds": 1.7, "tailSeconds": 1, "bits": 24}}
            """;

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final ObjectNode root;

    private MachineDraft(ObjectNode root) {
        this.root = root;
    }

    public static MachineDraft ordinary() {
        try {
            return new MachineDraft((ObjectNode) MAPPER.readTree(ORDINARY));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The same with one member changed.
     *
     * @param path members from the outermost in, with dots between
     * @param json its new value as JSON text
     */
    public MachineDraft with(String path, String json) {
        ObjectNode copy = root.deepCopy();
        ObjectNode node = copy;
        String[] steps = path.split("\\.");
        for (int i = 0; i < steps.length - 1; i++) {
            node = node.withObjectProperty(steps[i]);
        }
        try {
            node.set(steps[steps.length - 1], MAPPER.readTree(json));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new MachineDraft(copy);
    }

    public MachineDraft with(String path, double value) {
        return with(path, Double.toString(value));
    }

    public MachineSpec spec() {
        return MachineSpec.fromJson(root.toString());
    }
}

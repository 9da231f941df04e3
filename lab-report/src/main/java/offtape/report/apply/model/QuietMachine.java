package offtape.report.apply.model;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Set;
import offtape.core.json.BoundedJson;
import offtape.core.machine.spec.MachineSpec;

/**
 * A simulated machine without what is drawn by chance: motion, noise, dropouts, and what the
 * recorder adds. What is left can be set against a model sample by sample.
 */
final class QuietMachine {

    private static final ObjectMapper MAPPER = BoundedJson.mapper(1 << 20).build();
    private static final List<String> BY_CHANCE =
            List.of("transport", "hiss", "hum", "dropouts", "modulationNoise", "residue");
    private static final List<String> RECORDER =
            List.of(
                    "startSeconds",
                    "tailSeconds",
                    "leadIn",
                    "delaySamples",
                    "clockErrorPpm",
                    "noiseDbfs",
                    "bits");
    private static final double NEVER_CLIPS_DBFS = 40;

    private QuietMachine() {}

    /** The machine with those of its steady parts that are wanted. */
    static MachineSpec of(MachineSpec spec, Set<ModelPart> parts) {
        ObjectNode root = (ObjectNode) parsed(spec.toJson());
        root.put("mode", "reference-tape");
        root.remove(BY_CHANCE);
        member(root, "heads").remove(List.of("azimuthWander", "magnetisation"));
        member(root, "recorder").remove(RECORDER).put("clipDbfs", NEVER_CLIPS_DBFS);
        if (!parts.contains(ModelPart.CROSSTALK)) {
            root.remove("crosstalk");
        }
        return MachineSpec.fromJson(root.toString());
    }

    private static ObjectNode member(ObjectNode parent, String name) {
        JsonNode there = parent.get(name);
        return there instanceof ObjectNode node ? node : parent.putObject(name);
    }

    private static JsonNode parsed(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a description could not be read back", e);
        }
    }
}

package offtape.core.programme;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import offtape.core.json.JsonLayout;

/** Writes a cue sheet as JSON. */
final class CueSheetText {

    private CueSheetText() {}

    static String of(CueSheet sheet, ObjectMapper mapper) {
        ObjectNode root = mapper.createObjectNode();
        root.put("format", "offtape-programme");
        root.put("version", 1);
        root.put("sampleRate", sheet.sampleRateHz());
        root.put("frames", sheet.frames());
        root.put("referenceDbfs", sheet.referenceDbfs());
        if (sheet.tapeSpeedMmPerS() != null) {
            root.put("tapeSpeedMmPerS", sheet.tapeSpeedMmPerS());
        }
        ArrayNode cues = root.putArray("cues");
        sheet.cues().forEach(c -> cue(c, cues.addObject()));
        try {
            return mapper.writer(JsonLayout.objectsAndLists()).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a cue sheet could not be written", e);
        }
    }

    private static void cue(Cue cue, ObjectNode out) {
        out.put("id", cue.id());
        out.put("kind", kind(cue));
        out.put("channels", cue.channels().key());
        out.put("startFrame", cue.startFrame());
        out.put("frames", cue.frames());
        if (cue instanceof Cue.Tone t) {
            out.put("frequencyHz", t.frequencyHz());
            out.put("levelDb", t.levelDb());
        } else if (cue instanceof Cue.Sweep s) {
            out.put("startHz", s.startHz());
            out.put("endHz", s.endHz());
            out.put("levelDb", s.levelDb());
        } else if (cue instanceof Cue.Ladder l) {
            out.put("frequencyHz", l.frequencyHz());
            ArrayNode steps = out.putArray("steps");
            for (Cue.Step step : l.steps()) {
                ObjectNode node = steps.addObject();
                node.put("startFrame", step.startFrame());
                node.put("frames", step.frames());
                node.put("levelDb", step.levelDb());
            }
        }
    }

    private static String kind(Cue cue) {
        if (cue instanceof Cue.Marker) {
            return "marker";
        }
        if (cue instanceof Cue.Tone) {
            return "tone";
        }
        if (cue instanceof Cue.Sweep) {
            return "sweep";
        }
        return cue instanceof Cue.Ladder ? "ladder" : "silence";
    }
}

package offtape.core.programme;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.BoundedJson;

/**
 * Reads cue sheets ({@code programme.json}). Unknown keys are passed over; whatever is needed and
 * missing, of the wrong type or out of range is refused in words that name the place.
 */
public final class CueSheetJson {

    private static final long LARGEST_FILE_BYTES = 4L << 20;
    private static final int MOST_CUES = 10_000;

    private static final ObjectMapper MAPPER = BoundedJson.mapper(LARGEST_FILE_BYTES).build();

    private CueSheetJson() {}

    /**
     * Reads a cue sheet from a file.
     *
     * @throws UnusableInputException if the file cannot be read or is no cue sheet
     */
    public static CueSheet read(Path file) {
        String text;
        try {
            if (Files.isRegularFile(file) && Files.size(file) > LARGEST_FILE_BYTES) {
                throw new UnusableInputException(
                        file
                                + " is too large for a cue sheet (over 4 MB). Give the folder that"
                                + " \"offtape prepare\" wrote.");
            }
            text = Files.readString(file);
        } catch (IOException e) {
            throw new UnusableInputException(
                    "The cue sheet "
                            + file
                            + " cannot be read. Give the folder that \"offtape prepare\" wrote, with"
                            + " programme.json and programme.wav in it.",
                    e);
        }
        // Some editors put a byte order mark first.
        return parse(text.startsWith("\uFEFF") ? text.substring(1) : text, file.toString());
    }

    /**
     * Reads a cue sheet from its text.
     *
     * @param place how to name the text in a message
     * @throws UnusableInputException if the text is no cue sheet
     */
    public static CueSheet parse(String text, String place) {
        JsonNode root;
        try {
            root = MAPPER.readTree(text);
        } catch (StreamConstraintsException e) {
            throw new UnusableInputException(
                    place
                            + " is nested more deeply, or holds a longer text or number, than any"
                            + " cue sheet. Write the programme again with \"offtape prepare\".",
                    e);
        } catch (JsonProcessingException e) {
            throw new UnusableInputException(
                    place
                            + " is not valid JSON"
                            + (e.getLocation() == null
                                    ? ""
                                    : " (line " + e.getLocation().getLineNr() + ")")
                            + ". Write the programme again with \"offtape prepare\".",
                    e);
        }
        Fields top = new Fields(root, place, "the cue sheet");
        top.requireText("format", "offtape-programme");
        long version = top.whole("version", 0, Integer.MAX_VALUE);
        if (version != 1) {
            throw top.refuse(
                    "version " + version + " is not known to this release; it reads version 1");
        }
        int rate = (int) top.whole("sampleRate", 8_000, 768_000);
        long frames = top.whole("frames", 1, 1L << 40);
        double referenceDbfs = top.number("referenceDbfs", -80, 0);
        List<Cue> cues = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (JsonNode node : top.list("cues", MOST_CUES)) {
            Cue cue = cue(new Fields(node, place, "cue " + (cues.size() + 1)), frames, rate);
            if (!ids.add(cue.id())) {
                throw top.refuse("two cues have the id \"" + cue.id() + "\"");
            }
            cues.add(cue);
        }
        cues.sort(Comparator.comparingLong(Cue::startFrame));
        return new CueSheet(
                rate, frames, referenceDbfs, top.optionalNumber("tapeSpeedMmPerS", 5, 2000), cues);
    }

    /** The text of a cue sheet, indented, ending with a line feed; reading it gives it back. */
    public static String write(CueSheet sheet) {
        return CueSheetText.of(sheet, MAPPER);
    }

    private static Cue cue(Fields f, long programmeFrames, int rate) {
        String id = f.text("id");
        f = f.named("cue \"" + id + "\"");
        String kind = f.text("kind");
        ChannelSet channels = f.channels();
        long start = f.whole("startFrame", 0, programmeFrames - 1);
        long frames = f.whole("frames", 1, programmeFrames - start);
        double nyquist = rate / 2.0;
        return switch (kind) {
            case "marker" -> new Cue.Marker(id, channels, start, frames);
            case "silence" -> new Cue.Silence(id, channels, start, frames);
            case "tone" ->
                    new Cue.Tone(
                            id,
                            channels,
                            start,
                            frames,
                            f.number("frequencyHz", 1, nyquist),
                            f.number("levelDb", -140, 80));
            case "sweep" -> {
                double from = f.number("startHz", 0.1, nyquist);
                double to = f.number("endHz", 0.1, nyquist);
                if (!(to > from)) {
                    throw f.refuse("endHz must be above startHz");
                }
                yield new Cue.Sweep(
                        id, channels, start, frames, from, to, f.number("levelDb", -140, 80));
            }
            case "ladder" ->
                    new Cue.Ladder(
                            id,
                            channels,
                            start,
                            frames,
                            f.number("frequencyHz", 1, nyquist),
                            steps(f, start, frames));
            default ->
                    throw f.refuse(
                            "kind \""
                                    + kind
                                    + "\" is not known; marker, tone, sweep, ladder and"
                                    + " silence are");
        };
    }

    private static List<Cue.Step> steps(Fields f, long cueStart, long cueFrames) {
        List<Cue.Step> steps = new ArrayList<>();
        for (JsonNode node : f.list("steps", 1000)) {
            Fields s = new Fields(node, f.place(), f.what() + ", step " + (steps.size() + 1));
            long start = s.whole("startFrame", cueStart, cueStart + cueFrames - 1);
            long frames = s.whole("frames", 1, cueStart + cueFrames - start);
            steps.add(new Cue.Step(start, frames, s.number("levelDb", -140, 80)));
        }
        if (steps.isEmpty()) {
            throw f.refuse("steps is empty");
        }
        return steps;
    }
}

package offtape.core.programme;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import offtape.core.fault.BoundedText;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.BoundedJson;
import offtape.core.text.Sentences;

/**
 * Reads cue sheets ({@code programme.json}). Unknown keys are passed over; whatever is needed and
 * missing, of the wrong type or out of range is refused in words that name the place.
 */
public final class CueSheetJson {

    private static final Sentences SAID = Sentences.near(CueSheetJson.class);

    private static final int LARGEST_FILE_BYTES = 4 << 20;
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
            text =
                    BoundedText.read(file, LARGEST_FILE_BYTES)
                            .orElseThrow(
                                    () ->
                                            new UnusableInputException(
                                                    SAID.say("sheet.too-large", file)));
        } catch (IOException e) {
            throw new UnusableInputException(SAID.say("sheet.unreadable", file), e);
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
            throw new UnusableInputException(SAID.say("sheet.too-deep", place), e);
        } catch (JsonProcessingException e) {
            throw new UnusableInputException(
                    e.getLocation() == null
                            ? SAID.say("not-json", place)
                            : SAID.say("not-json-at", place, e.getLocation().getLineNr()),
                    e);
        }
        Fields top = new Fields(root, place, SAID.say("what.sheet"));
        top.requireText("format", "offtape-programme");
        long version = top.whole("version", 0, Integer.MAX_VALUE);
        if (version != 1) {
            throw top.refuse(SAID.say("version-unknown", version));
        }
        int rate = (int) top.whole("sampleRate", 8_000, 768_000);
        long frames = top.whole("frames", 1, 1L << 40);
        double referenceDbfs = top.number("referenceDbfs", -80, 0);
        List<Cue> cues = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (JsonNode node : top.list("cues", MOST_CUES)) {
            Cue cue =
                    cue(
                            new Fields(node, place, SAID.say("what.cue-number", (cues.size() + 1))),
                            frames,
                            rate);
            if (!ids.add(cue.id())) {
                throw top.refuse(SAID.say("id-twice", cue.id()));
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
        f = f.named(SAID.say("what.cue", id));
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
                    throw f.refuse(SAID.say("end-below-start"));
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
            default -> throw f.refuse(SAID.say("kind-unknown", kind));
        };
    }

    private static List<Cue.Step> steps(Fields f, long cueStart, long cueFrames) {
        List<Cue.Step> steps = new ArrayList<>();
        for (JsonNode node : f.list("steps", 1000)) {
            Fields s =
                    new Fields(node, f.place(), SAID.say("step", f.text("id"), steps.size() + 1));
            long start = s.whole("startFrame", cueStart, cueStart + cueFrames - 1);
            long frames = s.whole("frames", 1, cueStart + cueFrames - start);
            steps.add(new Cue.Step(start, frames, s.number("levelDb", -140, 80)));
        }
        if (steps.isEmpty()) {
            throw f.refuse(SAID.say("steps-empty"));
        }
        return steps;
    }
}

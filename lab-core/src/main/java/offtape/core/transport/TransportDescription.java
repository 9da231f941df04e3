package offtape.core.transport;

import static offtape.core.json.Range.copy;
import static offtape.core.json.Range.require;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import offtape.core.json.Range;
import offtape.core.json.StrictJson;
import offtape.core.text.Sentences;

/**
 * The dimensions of a transport as its owner measured or read them. Every member but {@code format}
 * and {@code version} may be absent or null; what is absent names no line. Members that are not
 * known are refused.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param about remarks for people, not read
 * @param tapeSpeedMmPerS nominal tape speed, 10 to 1600 mm/s, or null
 * @param idlers guide rollers, counter pulleys and whatever else the tape turns; at most 32
 * @param tapeThicknessMicrometres 5 to 100 µm, or null
 * @param motors at most 32
 * @param mainsHz 45 to 65 Hz, or null
 * @param belts at most 32
 */
@JsonPropertyOrder({"format", "version", "about"})
public record TransportDescription(
        String format,
        Integer version,
        List<String> about,
        Double tapeSpeedMmPerS,
        Roller capstan,
        Roller pinchRoller,
        List<Roller> idlers,
        Reel supplyReel,
        Reel takeUpReel,
        Double tapeThicknessMicrometres,
        List<Motor> motors,
        Double mainsHz,
        List<Belt> belts) {

    private static final Sentences SAID = Sentences.near(TransportDescription.class);

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-transport";

    /** The only version there is. */
    public static final int VERSION = 1;

    private static final StrictJson<TransportDescription> JSON =
            new StrictJson<>(TransportDescription.class, SAID.say("a-description"));

    /** Checks the limits. */
    public TransportDescription {
        require(FORMAT.equals(format), SAID.say("not-a-transport", FORMAT));
        require(version != null && version == VERSION, SAID.say("version", VERSION));
        about = copy("about", about);
        Range.within("tapeSpeedMmPerS", tapeSpeedMmPerS, 10, 1600, "mm/s");
        idlers = copy("idlers", idlers);
        Range.within("tapeThicknessMicrometres", tapeThicknessMicrometres, 5, 100, "µm");
        motors = copy("motors", motors);
        Range.within("mainsHz", mainsHz, 45, 65, "Hz");
        belts = copy("belts", belts);
    }

    /**
     * Reads a description.
     *
     * @param text JSON
     * @throws offtape.core.fault.UnusableInputException if it is malformed, has a member that is
     *     not known, or a value out of its limits; the message names the place
     */
    public static TransportDescription fromJson(String text) {
        return JSON.read(text, SAID.say("the-description"));
    }

    /**
     * Reads a description from a file.
     *
     * @throws offtape.core.fault.UnusableInputException if it cannot be read or used
     */
    public static TransportDescription fromJson(Path file) {
        return JSON.read(file);
    }

    /** A description with nothing filled in, explained, for its owner to complete. */
    public static String template() {
        try (InputStream in = TransportDescription.class.getResourceAsStream("template.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

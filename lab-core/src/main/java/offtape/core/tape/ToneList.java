package offtape.core.tape;

import static offtape.core.json.Range.require;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.Range;
import offtape.core.json.StrictJson;
import offtape.core.standard.TimeConstants;
import offtape.core.text.Sentences;
import offtape.core.unit.TapeSpeed;

/**
 * The tones of a calibration tape in their order, as its owner wrote them down. Members that are
 * not known are refused.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param about remarks for people, not read
 * @param name what the tape is called, up to 40 letters, or null
 * @param tapeSpeed nominal speed such as {@code 19.05cm/s}, or null
 * @param equalisation time constants the tape was recorded to, such as {@code 3180,50}, or null
 * @param accuracyPercent how far the frequencies of the tones may be off, 0 to 5 %, or null if not
 *     stated
 * @param tones 1 to 64 of them
 */
@JsonPropertyOrder({"format", "version", "about"})
public record ToneList(
        String format,
        Integer version,
        List<String> about,
        String name,
        String tapeSpeed,
        String equalisation,
        Double accuracyPercent,
        List<ListedTone> tones) {

    private static final Sentences SAID = Sentences.near(ToneList.class);

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-tones";

    /** The only version there is. */
    public static final int VERSION = 1;

    private static final int MOST_TONES = 64;

    private static final StrictJson<ToneList> JSON =
            new StrictJson<>(ToneList.class, SAID.say("a-list"));

    /** Checks the limits. */
    public ToneList {
        require(FORMAT.equals(format), SAID.say("not-a-list", FORMAT));
        require(version != null && version == VERSION, SAID.say("version", VERSION));
        about = Range.copy("about", about);
        name = Range.name(name, null);
        understood("tapeSpeed", () -> TapeSpeed.parse(tapeSpeed), tapeSpeed);
        understood("equalisation", () -> TimeConstants.parse(equalisation), equalisation);
        Range.within("accuracyPercent", accuracyPercent, 0, 5, "%");
        require(tones != null && !tones.isEmpty(), SAID.say("no-tones"));
        tones = Range.copy("tones", tones, MOST_TONES);
        // Not by the tone itself: a mistyped name is to be told before what it leaves out.
        for (int i = 0; i < tones.size(); i++) {
            require(tones.get(i).frequencyHz() != null, SAID.say("no-frequency", i));
        }
        long references =
                tones.stream().filter(t -> t.purpose() == ListedTone.Purpose.REFERENCE).count();
        require(references <= 1, SAID.say("two-references"));
    }

    private static void understood(String member, Runnable parse, String text) {
        try {
            if (text != null) {
                parse.run();
            }
        } catch (IllegalArgumentException e) {
            throw new UnusableInputException("\"" + member + "\": " + e.getMessage(), e);
        }
    }

    /** The nominal speed, if it is stated. */
    public Optional<TapeSpeed> speed() {
        return Optional.ofNullable(tapeSpeed).map(TapeSpeed::parse);
    }

    /** The time constants the tape was recorded to, if they are stated. */
    public Optional<TimeConstants> constants() {
        return Optional.ofNullable(equalisation).map(TimeConstants::parse);
    }

    /**
     * Reads a list from a file.
     *
     * @throws UnusableInputException if it cannot be read or used, with the place
     */
    public static ToneList fromJson(Path file) {
        return JSON.read(file);
    }

    /**
     * Reads a list.
     *
     * @throws UnusableInputException as above
     */
    public static ToneList fromJson(String text) {
        return JSON.read(text, SAID.say("the-list"));
    }

    /** A list with invented tones, explained, for the owner of a tape to change. */
    public static String template() {
        try (InputStream in = ToneList.class.getResourceAsStream("template.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

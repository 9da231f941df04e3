package offtape.report.measure.pass;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.speed.SpeedTone;
import offtape.report.result.Pass;
import offtape.report.result.PassFigures;
import offtape.report.result.Speed;

/** What one replay of a recording tells: all that is kept of it once its file is closed. */
public final class PassReading {

    private static final Sentences SAID = Sentences.near(PassReading.class);

    private static final double SAME_LENGTH = 0.1;

    private static final Quantity NOT_WHOLE = Quantity.unknown(SAID.say("not-whole"));

    private final Pass pass;
    private final Double toneHz;
    private final Double seconds;
    private final TapeCourse course;
    private final List<String> notes;

    /**
     * What is kept of a replay.
     *
     * @param toneHz nominal frequency of its speed tone, or null if that was not heard
     * @param seconds how long that was read, or null
     * @param course or null
     */
    PassReading(Pass pass, Double toneHz, Double seconds, TapeCourse course, List<String> notes) {
        this.pass = pass;
        this.toneHz = toneHz;
        this.seconds = seconds;
        this.course = course;
        this.notes = List.copyOf(notes);
    }

    /**
     * Reads a replay.
     *
     * @param file name of the return
     * @param sha256 its digest
     * @param notes remarks on the file that the results do not have yet, as plain sentences
     */
    public static PassReading of(
            ProgrammeReturn ret, String file, String sha256, List<String> notes) {
        Speed heard = SpeedTone.measure(ret).speed();
        return new PassReading(
                new Pass(file, sha256, heard.deviation(), PassFigures.of(heard)),
                heard.toneFrequencyHz(),
                heard.seconds(),
                TapeCourse.of(ret).orElse(null),
                notes);
    }

    /** Seconds of tone that were read, 0 if there was none. */
    double seconds() {
        return seconds == null ? 0 : seconds;
    }

    /** The same, or without readings if they come from another tone, or part of it. */
    PassReading besides(PassReading longest) {
        boolean same =
                Objects.equals(toneHz, longest.toneHz)
                        && Math.abs(seconds() - longest.seconds())
                                <= SAME_LENGTH * longest.seconds();
        return same ? this : without();
    }

    private PassReading without() {
        Pass none =
                new Pass(
                        pass.file(),
                        pass.recordingSha256(),
                        pass.rate(),
                        PassFigures.of(List.of(pass.figures()), all -> NOT_WHOLE));
        return new PassReading(none, null, null, null, notes);
    }

    List<String> notes() {
        return notes;
    }

    Pass pass() {
        return pass;
    }

    /** Its course along the tape; empty if its tone was not heard. */
    Optional<TapeCourse> course() {
        return Optional.ofNullable(course);
    }
}

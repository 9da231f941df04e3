package offtape.report.measure.pass;

import java.util.List;
import java.util.Optional;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.speed.SpeedTone;
import offtape.report.result.Pass;
import offtape.report.result.PassFigures;
import offtape.report.result.Speed;

/** What one replay of a recording tells: all that is kept of it once its file is closed. */
public final class PassReading {

    private final Pass pass;
    private final TapeCourse course;
    private final List<String> notes;

    private PassReading(Pass pass, TapeCourse course, List<String> notes) {
        this.pass = pass;
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
        Speed heard = SpeedTone.measure(ret);
        return new PassReading(
                new Pass(file, sha256, heard.deviation(), PassFigures.of(heard)),
                TapeCourse.of(ret).orElse(null),
                notes);
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

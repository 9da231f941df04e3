package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.Programme;
import offtape.report.measure.Measurement;
import offtape.report.result.HealthNote;

/**
 * A look at a recording that was just made: the programme itself shows whether sound is missing,
 * also where no device said so.
 */
final class CaptureCheck {

    private CaptureCheck() {}

    /** What a user should know before the tape is put away. */
    static List<String> lines(Programme programme, Path recording, Terminal terminal) {
        Speech speech = Speech.of(terminal);
        List<String> lines = new ArrayList<>();
        try (AudioFile sound = AudioFiles.open(recording)) {
            for (HealthNote note : Measurement.of(programme, sound).jumps()) {
                lines.add(speech.say("capture.mind", speech.told(note.message())));
            }
            if (lines.isEmpty()) {
                lines.add(speech.say("capture.heard"));
            }
        } catch (UnusableInputException e) {
            lines.add(speech.say("capture.not-measurable", speech.told(e.getMessage())));
        }
        return lines;
    }
}

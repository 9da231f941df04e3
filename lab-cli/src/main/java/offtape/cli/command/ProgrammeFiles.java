package offtape.cli.command;

import java.nio.charset.StandardCharsets;
import java.util.List;
import offtape.core.output.OutputFolder;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.programme.ProgrammeWriter;
import offtape.report.render.SetUpSheet;

/** A programme as people get it: what is played, its cue sheet, and a page to have at hand. */
final class ProgrammeFiles {

    /** Names of all files. */
    static final List<String> NAMES =
            List.of(ProgrammeFolder.SHEET, ProgrammeFolder.SOUND, SetUpSheet.NAME);

    private ProgrammeFiles() {}

    /** Writes all into a folder, whose owner commits it. */
    static void write(CueSheet sheet, OutputFolder folder) {
        ProgrammeWriter.write(sheet, folder);
        folder.write(SetUpSheet.NAME, SetUpSheet.html(sheet).getBytes(StandardCharsets.UTF_8));
    }
}

package offtape.cli.command;

import java.nio.charset.StandardCharsets;
import java.util.List;
import offtape.core.output.OutputFolder;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.programme.ProgrammeWriter;
import offtape.core.text.Language;
import offtape.report.render.SetUpSheet;

/** A programme as people get it: what is played, its cue sheet, and a page to have at hand. */
final class ProgrammeFiles {

    /** Names of all files. */
    static final List<String> NAMES =
            List.of(ProgrammeFolder.SHEET, ProgrammeFolder.SOUND, SetUpSheet.NAME);

    private ProgrammeFiles() {}

    /**
     * Writes all into a folder, whose owner commits it.
     *
     * @param language of the page
     */
    static void write(CueSheet sheet, OutputFolder folder, Language language) {
        ProgrammeWriter.write(sheet, folder);
        String page = SetUpSheet.html(sheet, language);
        folder.write(SetUpSheet.NAME, page.getBytes(StandardCharsets.UTF_8));
    }
}

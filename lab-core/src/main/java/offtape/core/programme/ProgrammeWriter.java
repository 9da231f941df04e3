package offtape.core.programme;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import offtape.core.audio.BroadcastNote;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.output.OutputFolder;

/** Writes a programme's sound and cue sheet into a folder. */
public final class ProgrammeWriter {

    private static final int BLOCK = 1 << 15;

    private ProgrammeWriter() {}

    /** Writes both files; the folder's owner commits them. */
    public static void write(CueSheet sheet, OutputFolder folder) {
        ProgrammeSignal signal = new ProgrammeSignal(sheet);
        WavFormat format = new WavFormat(sheet.sampleRateHz(), 2, WavEncoding.PCM_24);
        try (WavWriter wav =
                WavWriter.create(folder.path(ProgrammeFolder.SOUND), format, note(sheet))) {
            for (long n = 0; n < sheet.frames(); n += BLOCK) {
                wav.write(signal.read(n, (int) Math.min(BLOCK, sheet.frames() - n)));
            }
        }
        folder.write(
                ProgrammeFolder.SHEET, CueSheetJson.write(sheet).getBytes(StandardCharsets.UTF_8));
    }

    // no date, so that the same programme has the same bytes
    private static BroadcastNote note(CueSheet sheet) {
        return BroadcastNote.of(
                String.format(
                        Locale.ROOT,
                        "Test programme for a tape machine, %.1f s, reference level %.1f dBFS. Not"
                                + " for loudspeakers.",
                        sheet.seconds(sheet.frames()),
                        sheet.referenceDbfs()));
    }
}

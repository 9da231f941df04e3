package offtape.core.programme;

import java.nio.charset.StandardCharsets;
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
        try (WavWriter wav = WavWriter.create(folder.path(ProgrammeFolder.SOUND), format)) {
            for (long n = 0; n < sheet.frames(); n += BLOCK) {
                wav.write(signal.read(n, (int) Math.min(BLOCK, sheet.frames() - n)));
            }
        }
        folder.write(
                ProgrammeFolder.SHEET, CueSheetJson.write(sheet).getBytes(StandardCharsets.UTF_8));
    }
}

package offtape.cli.batch;

import java.nio.file.Path;
import offtape.core.audio.ChannelChoice;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.TapeSpeed;

/**
 * One return of a list. What its line does not say is null and taken from the options that hold for
 * all.
 *
 * @param line where it stands in the list, from 1
 * @param written the return as the list names it
 * @param file the return
 * @param name of its session's folder; null until names are given out, if the list has none
 * @param programme folder of the programme that was played
 * @param mode how the return came about
 * @param machineName the machine, as the user calls it
 * @param tape the tape, as the user calls it
 * @param tapeSpeed nominal tape speed
 * @param channels which channels of the recording
 * @param note a remark of the user
 */
public record BatchEntry(
        int line,
        String written,
        Path file,
        String name,
        Path programme,
        CaptureMode mode,
        String machineName,
        String tape,
        TapeSpeed tapeSpeed,
        ChannelChoice channels,
        String note) {

    /** The same return under a name. */
    BatchEntry named(String given) {
        return new BatchEntry(
                line,
                written,
                file,
                given,
                programme,
                mode,
                machineName,
                tape,
                tapeSpeed,
                channels,
                note);
    }
}

package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import offtape.core.unit.Quantity;

/**
 * One of several replays of a recording.
 *
 * @param file name of the return
 * @param recordingSha256 its digest, lower-case hexadecimal
 * @param rate mean speed of the replay against that of the recording, percent, + is fast
 * @param figures its readings, in JSON beside the other members
 */
public record Pass(
        String file, String recordingSha256, Quantity rate, @JsonUnwrapped PassFigures figures) {}

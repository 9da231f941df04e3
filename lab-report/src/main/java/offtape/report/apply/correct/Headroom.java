package offtape.report.apply.correct;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.unit.Quantity;

/**
 * How much of the highs a channel takes, and what boosting them before the tape leaves of that.
 *
 * @param channel {@code left} or {@code right}
 * @param frequencyHz frequency of the ladder of the highs, or 10 kHz if there is none
 * @param boostDb gain of the filter there, dB
 * @param oneDbLevel record level at which it is compressed by 1 dB, dB re reference
 * @param highsBelow level under which the programme's highs must stay so that, boosted, they are
 *     compressed by less than 1 dB, dB re reference
 * @param highsBelowDbfs the same as the peak of a sine, dB re a full-scale sine
 * @param saturationOutputLevel highest replay level of the highs, dB
 * @param middleOneDbLevel record level at which the middle (1 kHz or so) is compressed by 1 dB
 * @param loudSweepLevelDb level of the loudest sweep, or null if there is no second one
 * @param lossAt10kHz by how much less of 10 kHz comes back of that sweep, without any boost, dB
 * @param oneDbLossFrom frequency from which that loss reaches 1 dB, Hz
 * @param rows compression over level and boost
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Headroom(
        String channel,
        double frequencyHz,
        double boostDb,
        Quantity oneDbLevel,
        Quantity highsBelow,
        Quantity highsBelowDbfs,
        Quantity saturationOutputLevel,
        Quantity middleOneDbLevel,
        Double loudSweepLevelDb,
        Quantity lossAt10kHz,
        Quantity oneDbLossFrom,
        List<Row> rows) {

    /** Copies the list. */
    public Headroom {
        rows = List.copyOf(rows);
    }

    /**
     * Compression of the highs.
     *
     * @param programmeLevelDb level in the programme, dB re reference
     * @param boostDb boost before the tape, dB
     * @param compressionDb what of it is lost, dB, or null beyond the ladder
     */
    public record Row(double programmeLevelDb, double boostDb, Double compressionDb) {}
}

package offtape.report.measure.tape;

import offtape.core.standard.TimeConstants;
import offtape.core.standard.TrackSpacing;
import offtape.core.tape.ToneList;

/**
 * What is said of a tape and the machine that replays it; whatever is not said is null.
 *
 * @param list the tones of the tape
 * @param speedToneHz what the tape's tone for speed should have, Hz
 * @param tape time constants the tape was recorded to; goes before those of the list
 * @param machine time constants the machine's replay is set to
 * @param tapeSpeedMmPerS nominal speed; goes before that of the list
 * @param tracks distance of the two tracks
 */
public record TapeQuestion(
        ToneList list,
        Double speedToneHz,
        TimeConstants tape,
        TimeConstants machine,
        Double tapeSpeedMmPerS,
        TrackSpacing tracks) {

    /** Nothing is said. */
    public static final TapeQuestion PLAIN = new TapeQuestion(null, null, null, null, null, null);

    /** Time constants of the tape by what was said or by the list, or null. */
    TimeConstants tapeConstants() {
        return tape != null || list == null ? tape : list.constants().orElse(null);
    }

    /** Nominal speed by what was said or by the list, mm/s, or null. */
    Double mmPerS() {
        return tapeSpeedMmPerS != null || list == null
                ? tapeSpeedMmPerS
                : list.speed().map(s -> s.mmPerS()).orElse(null);
    }
}

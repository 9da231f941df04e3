package offtape.report.apply.model;

import java.util.List;
import java.util.Set;
import offtape.report.result.Session;
import offtape.report.result.Speed;

/**
 * A machine fitted to the results of its session.
 *
 * @param session what was measured
 * @param channels left and right
 * @param leaks what left hears of right and right of left, null for nothing
 * @param inverted whether the machine turns the polarity over
 * @param hiss left and right, or null if no noise is known
 * @param motion how the sound wavers, or null if it is not known
 * @param known parts of which something is known
 * @param notes what a user should know, plain sentences
 */
public record MachineModel(
        Session session,
        ChannelModel[] channels,
        LeakModel[] leaks,
        boolean inverted,
        HissModel[] hiss,
        MotionModel motion,
        Set<ModelPart> known,
        List<String> notes) {

    private static final double USUAL_REFERENCE_DBFS = -18;
    private static final double TONE_HZ = 1000;

    /** Copies the collections. */
    public MachineModel {
        known = Set.copyOf(known);
        notes = List.copyOf(notes);
    }

    /** The programme's reference, dB re a full-scale sine. */
    public double referenceDbfs() {
        return session.referenceDbfs() == null ? USUAL_REFERENCE_DBFS : session.referenceDbfs();
    }

    /**
     * Third harmonic of a tone of 1 kHz on the channel where it is stronger, percent.
     *
     * @param levelDb level of the tone, dB re reference
     */
    public double k3Percent(double levelDb) {
        double most = 0;
        for (ChannelModel c : channels) {
            double third = c.bent().third(TONE_HZ, levelDb, hz -> LogGrid.at(c.levelDb(), hz));
            most = Math.max(most, 100 * third);
        }
        return most;
    }

    /** How far the fundamental of that tone is compressed, dB, 0 or more. */
    public double compressionDb(double levelDb) {
        double most = 0;
        for (ChannelModel c : channels) {
            most = Math.max(most, -c.bent().gainDb(TONE_HZ, levelDb));
        }
        return most;
    }

    /** The same machine that wavers as its transport alone does, or null if that is not known. */
    public MachineModel withMotionOfTransport(Speed speed) {
        MotionModel own = speed == null ? null : MotionModel.ofTransport(speed);
        return own == null
                ? null
                : new MachineModel(session, channels, leaks, inverted, hiss, own, known, notes);
    }
}

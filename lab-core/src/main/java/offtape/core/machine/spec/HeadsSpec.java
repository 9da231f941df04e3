package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.copy;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;

import java.util.List;
import offtape.core.text.Sentences;

/**
 * Geometry of heads and tape. What is absent loses nothing.
 *
 * @param spacingMm from record to replay head along the tape, 1 to 200 mm; default 30
 * @param gapMicrometres length of the replay gap, 0 to 30 µm; default 0 (no loss)
 * @param spacingLossMicrometres distance between head and tape, 0 to 30 µm; default 0
 * @param thicknessMicrometres magnetic coating that the record equalisation does not make up for, 0
 *     to 30 µm; default 0
 * @param azimuthArcMinutes replay head against what is written, −120 to 120; + makes the right
 *     channel late; default 0
 * @param trackWidthMm 0.1 to 12.7 mm; default 2 (half-track on quarter-inch tape)
 * @param trackSpacingMm between the centres of the two tracks, 0.1 to 12.7 mm; default 4
 * @param bumps low-frequency contour, at most 16
 * @param azimuthWander how the tape skews while it runs, added to the azimuth, at most 16 lines; it
 *     moves the delay between the tracks, not the azimuth loss
 * @param magnetisation a head that has become a magnet; default none
 * @param left what differs at the left track, or null
 * @param right what differs at the right track, or null
 */
public record HeadsSpec(
        Double spacingMm,
        double gapMicrometres,
        double spacingLossMicrometres,
        double thicknessMicrometres,
        double azimuthArcMinutes,
        Double trackWidthMm,
        Double trackSpacingMm,
        List<HeadBumpSpec> bumps,
        List<AzimuthWanderSpec> azimuthWander,
        MagnetisedHeadSpec magnetisation,
        TrackHeadSpec left,
        TrackHeadSpec right) {

    private static final Sentences SAID = Sentences.near(HeadsSpec.class);

    /** Heads without losses, 30 mm apart. */
    public static final HeadsSpec PERFECT =
            new HeadsSpec(null, 0, 0, 0, 0, null, null, List.of(), List.of(), null, null, null);

    /** Checks the limits and fills in defaults. */
    public HeadsSpec {
        spacingMm = within("spacingMm", orElse(spacingMm, 30.0), 1, 200, "mm");
        within("gapMicrometres", gapMicrometres, 0, 30, "µm");
        within("spacingLossMicrometres", spacingLossMicrometres, 0, 30, "µm");
        within("thicknessMicrometres", thicknessMicrometres, 0, 30, "µm");
        within("azimuthArcMinutes", azimuthArcMinutes, -120, 120, SAID.say("unit.arc-minutes"));
        trackWidthMm = within("trackWidthMm", orElse(trackWidthMm, 2.0), 0.1, 12.7, "mm");
        trackSpacingMm = within("trackSpacingMm", orElse(trackSpacingMm, 4.0), 0.1, 12.7, "mm");
        bumps = copy("bumps", bumps, 16);
        magnetisation = orElse(magnetisation, MagnetisedHeadSpec.NONE);
        azimuthWander = copy("azimuthWander", azimuthWander, 16);
    }

    /** Length of the replay gap at a track, 0 left or 1 right, µm. */
    public double gapMicrometres(int track) {
        return orElse(track(track).gapMicrometres(), gapMicrometres);
    }

    /** Distance between head and tape at a track, 0 left or 1 right, µm. */
    public double spacingLossMicrometres(int track) {
        return orElse(track(track).spacingLossMicrometres(), spacingLossMicrometres);
    }

    private TrackHeadSpec track(int track) {
        return orElse(track == 0 ? left : right, TrackHeadSpec.SAME);
    }

    /** tan α of the mean azimuth error. */
    public double azimuthTangent() {
        return Math.tan(Math.toRadians(azimuthArcMinutes / 60));
    }

    /** tan α of the azimuth error at a place on the tape, in seconds of the programme. */
    public double azimuthTangent(double programmeSeconds) {
        double arcMinutes = azimuthArcMinutes;
        for (AzimuthWanderSpec line : azimuthWander) {
            arcMinutes += line.arcMinutes(programmeSeconds);
        }
        return Math.tan(Math.toRadians(arcMinutes / 60));
    }

    /** Root mean square of the wander over a long time, arc minutes. */
    public double azimuthWanderRms() {
        double power = 0;
        for (AzimuthWanderSpec line : azimuthWander) {
            power += line.peakArcMinutes() * line.peakArcMinutes() / 2;
        }
        return Math.sqrt(power);
    }

    /** Perfect heads but for the magnetisation of these. */
    public HeadsSpec magnetisationAlone() {
        HeadsSpec p = PERFECT;
        return new HeadsSpec(
                p.spacingMm,
                0,
                0,
                0,
                0,
                p.trackWidthMm,
                p.trackSpacingMm,
                List.of(),
                List.of(),
                magnetisation,
                null,
                null);
    }
}

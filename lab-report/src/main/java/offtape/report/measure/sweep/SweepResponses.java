package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import offtape.core.dsp.PowerDensity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.Response;

/** The responses of a session from its followed sweeps, and what they tell together. */
public final class SweepResponses {

    private SweepResponses() {}

    /**
     * One response a sweep and channel on which it is heard.
     *
     * @param harmonics those of the loudest sweep, or null if there are none
     * @param noise density of the noise, one a channel, or null if unknown
     * @param leakage what each channel hears of the other, which is taken out
     * @param unsteadiness root mean square of slow changes of speed, a share
     */
    public static List<Response> of(
            ProgrammeReturn ret,
            List<FollowedSweep> sweeps,
            FollowedHarmonics harmonics,
            PowerDensity[] noise,
            Leakage leakage,
            double unsteadiness) {
        Double tapeSpeed = ret.sheet().tapeSpeedMmPerS();
        OptionalDouble speed =
                tapeSpeed == null ? OptionalDouble.empty() : OptionalDouble.of(tapeSpeed);
        List<Response> result = new ArrayList<>();
        for (FollowedSweep sweep : sweeps) {
            double ratio = ret.speedRatio(sweep.cue().startFrame(), sweep.cue().frames());
            for (int c = 0; c < ret.channels(); c++) {
                PowerDensity own = noise == null ? null : noise[c];
                Response response =
                        new ResponseMeasure(sweep, c, own, ratio, leakage, unsteadiness)
                                .measure(ProgrammeReturn.channelName(c), speed);
                if (response != null && harmonics != null && harmonics.isOf(sweep.cue())) {
                    response =
                            response.withHarmonics(
                                    new SweepDistortionMeasure(harmonics, c, own, ratio).measure());
                }
                if (response != null) {
                    result.add(response);
                }
            }
        }
        return LevelDependenceMeasure.added(result);
    }
}

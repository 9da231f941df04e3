package offtape.report.locate;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;

/** Follows the phase of a steady tone: how late the programme is, up to an unknown constant. */
final class TonePhase {

    private static final double BAND_HZ = 60;

    /** Tones lower than this do not resolve wow. */
    static final double LOWEST_HZ = 200;

    private static final double MARGIN_S = 0.05;

    private final AudioSource recording;
    private final TimeMap map;

    TonePhase(AudioSource recording, TimeMap map) {
        this.recording = recording;
        this.map = map;
    }

    /**
     * Lateness in programme seconds over time.
     *
     * @param firstSeconds time of the first value in the programme
     * @param stepSeconds distance of the values
     * @param lateSeconds one value a step
     * @param sigmaSeconds standard uncertainty of each by noise
     */
    record Course(
            double firstSeconds, double stepSeconds, double[] lateSeconds, double sigmaSeconds) {

        /** Time of a value in the programme. */
        double at(int k) {
            return firstSeconds + k * stepSeconds;
        }

        /** Length in seconds. */
        double seconds() {
            return lateSeconds.length * stepSeconds;
        }
    }

    /**
     * The course of a tone on each channel; empty where the tone is not heard.
     *
     * @param from start of the stretch in the programme, seconds
     * @param to its end
     */
    List<Course> courses(double from, double to, double hz) {
        double speed = map.speedRatio((from + to) / 2);
        double pass = Math.min(BAND_HZ, 0.2 * hz * speed);
        List<Course> out = new ArrayList<>();
        if (hz * speed + 2 * pass > recording.sampleRateHz() / 2.0) {
            return out;
        }
        Downconverter converter = Downconverter.of(pass, 2 * pass, recording.sampleRateHz());
        double turn = 2 * Math.PI * hz;
        List<Baseband> bases =
                converter.convert(
                        recording,
                        map.recordingSeconds(from + MARGIN_S),
                        map.recordingSeconds(to - MARGIN_S),
                        t -> turn * map.programmeSeconds(t));
        for (Baseband base : bases) {
            out.add(course(base, turn, speed, pass));
        }
        return out;
    }

    private Course course(Baseband base, double turn, double speed, double passHz) {
        double[] late = base.unwrappedPhase();
        double sigma = noise(base, passHz);
        for (int k = 0; k < late.length; k++) {
            late[k] /= -turn;
        }
        double first = map.programmeSeconds(base.firstSeconds());
        boolean heard = late.length > 4 && sigma < 0.3;
        return new Course(first, speed / base.rateHz(), heard ? late : new double[0], sigma / turn);
    }

    /**
     * Phase noise of a sample in radians, from the fluctuation of level beside a smooth course:
     * noise shakes both alike. Noise of a band from −b to b, here b in the middle of the filter's
     * edge, has at a distance t the correlation sin(2πbt)/(2πbt), and so shakes a sample against
     * the mean of its neighbours less than noise of which each sample is its own.
     */
    private static double noise(Baseband base, double passHz) {
        double turn = 2 * Math.PI * 1.5 * passHz / base.rateHz();
        double share = 1.5 - 2 * Math.sin(turn) / turn + Math.sin(2 * turn) / (4 * turn);
        double sum = 0;
        double level = 0;
        for (int k = 1; k + 1 < base.size(); k++) {
            double here = Math.sqrt(base.power(k));
            double beside = (Math.sqrt(base.power(k - 1)) + Math.sqrt(base.power(k + 1))) / 2;
            sum += (here - beside) * (here - beside) / share;
            level += base.power(k);
        }
        return level > 0 ? Math.sqrt(sum / level) : Double.POSITIVE_INFINITY;
    }
}

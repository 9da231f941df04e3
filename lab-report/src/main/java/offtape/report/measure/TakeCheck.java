package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.report.locate.MarkerSight;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.HealthNote;

/**
 * Whether a return is one unbroken take at one level: the last marker must come when the tones'
 * speed says, and as loud as the first.
 */
final class TakeCheck {

    private static final Sentences SAID = Sentences.near(TakeCheck.class);

    /** So much is within the means of a transport at any rate. */
    private static final double LEAST_LATE_S = 0.002;

    /** Twice the expanded uncertainty is four standard deviations. */
    private static final double BEYOND_CHANCE = 2;

    private static final double LEVEL_DB = 0.5;
    private static final double MARGIN_S = 0.03;

    private TakeCheck() {}

    /**
     * Warnings, none if first and last marker agree or one was not heard.
     *
     * @param hasLevel whether a channel's level tells anything, as that of a dead one does not
     */
    static List<HealthNote> notes(ProgrammeReturn ret, IntPredicate hasLevel) {
        List<HealthNote> notes = new ArrayList<>();
        List<MarkerSight> sights = ret.location().markers();
        if (sights.size() > 1) {
            notes.addAll(time(sights.get(sights.size() - 1)));
        }
        List<Cue.Marker> markers = ret.cues(Cue.Marker.class);
        if (markers.size() > 1 && sights.size() == markers.size()) {
            double[] first = gainDb(ret, markers.get(0));
            double[] last = gainDb(ret, markers.get(markers.size() - 1));
            for (int c = 0; c < first.length; c++) {
                if (hasLevel.test(c)) {
                    notes.addAll(level(ProgrammeReturn.channelName(c), last[c] - first[c]));
                }
            }
        }
        return notes;
    }

    /** A warning if the last marker does not come when it should. */
    static List<HealthNote> time(MarkerSight last) {
        double late = last.lateSeconds();
        double allowed = Math.max(LEAST_LATE_S, BEYOND_CHANCE * last.doubtSeconds());
        if (Math.abs(late) <= allowed) {
            return List.of();
        }
        return List.of(
                new HealthNote(
                        "warning",
                        "markers-disagree",
                        SAID.say(
                                late > 0 ? "marker-later" : "marker-earlier",
                                1000 * Math.abs(late),
                                1000 * allowed)));
    }

    /** A warning if a channel's level changes between first and last marker. */
    static List<HealthNote> level(String channel, double changeDb) {
        if (!(Math.abs(changeDb) > LEVEL_DB)) {
            return List.of();
        }
        return List.of(
                new HealthNote(
                        "warning", "level-changes", SAID.say("level-changes", changeDb, channel)));
    }

    /** Level returned over level sent, one a channel; NaN where nothing was sent or heard. */
    private static double[] gainDb(ProgrammeReturn ret, Cue.Marker marker) {
        double[][] heard = ret.read(ret.span(marker.startFrame(), marker.frames(), MARGIN_S));
        long margin = Math.round(MARGIN_S * ret.sheet().sampleRateHz());
        double[][] sent =
                ret.programme()
                        .audio()
                        .read(marker.startFrame() + margin, (int) (marker.frames() - 2 * margin));
        double[] db = new double[ret.channels()];
        for (int c = 0; c < db.length; c++) {
            db[c] =
                    Decibels.ofPower(
                            meanSquare(heard[c]) / meanSquare(sent[Math.min(c, sent.length - 1)]));
        }
        return db;
    }

    private static double meanSquare(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v * v;
        }
        return x.length == 0 ? 0 : sum / x.length;
    }
}

package offtape.report.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import offtape.core.audio.AudioSource;
import offtape.core.fault.Background;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;

/**
 * Where the first frame of a programme lies in a recording, though nothing sounds there: the
 * lateness that the first marker and the tones near it show is continued back to the first frame by
 * the best linear prediction ({@link LinearPrediction}). Steady wow is continued as it swings; what
 * cannot be foretold is in the uncertainty.
 */
final class StartTime {

    /**
     * A time with its uncertainty.
     *
     * @param seconds where the first frame lies in the recording
     * @param uncertaintySeconds expanded, k = 2
     */
    record Estimate(double seconds, double uncertaintySeconds) {}

    /** Tones as far as this from the anchor are used. */
    private static final double REACH_S = 6;

    private static final int MOST_READINGS = 350;
    private static final double LONG_TONE_S = 1;

    /** So much the mean speed may differ in a stretch that no tone shows. */
    private static final double UNSEEN_SLOPE = 2e-5;

    private static final double ANCHOR_SIGMA_S = 3e-5;

    /**
     * The path's own filters delay by some microseconds, which the phase cannot tell from place.
     */
    private static final double OWN_SIGMA_S = 2.5e-6;

    private final Placement placement;
    private final CueSheet sheet;
    private final AudioSource recording;
    private final Anchor anchor;
    private final TimeMap map;

    private StartTime(Placement placement, Anchor anchor) {
        this.placement = placement;
        this.sheet = placement.programme().sheet();
        this.recording = placement.recording();
        this.anchor = anchor;
        this.map = placement.smoothThrough(anchor);
    }

    /** The start, seen from the first anchor. */
    static Estimate of(Placement placement, Anchor first) {
        return new StartTime(placement, first).estimate();
    }

    private Estimate estimate() {
        CompletableFuture<List<List<PhaseReading>>> read = Background.start(this::readings);
        Optional<TonePhase.Course> tone = longestTone();
        WowMemory memory = tone.map(WowMemory::of).orElseGet(WowMemory::assumed);
        double sum = 0;
        double variance = 0;
        List<List<PhaseReading>> channels = Background.result(read);
        LinearPrediction prediction =
                new LinearPrediction(anchor.programmeSeconds(), slopeSigma(), memory, tone);
        for (LinearPrediction.Result p :
                Background.each(channels, r -> prediction.from(thinned(r)))) {
            sum += p.lateSeconds() / channels.size();
            variance = Math.max(variance, p.variance());
        }
        double stretch = 1 / map.speedRatio(0);
        double sigma = Math.hypot(stretch * Math.sqrt(variance), OWN_SIGMA_S);
        return new Estimate(map.recordingSeconds(0) + stretch * sum, 2 * sigma);
    }

    /** The longest tone that shows the machine's wow. */
    private Optional<TonePhase.Course> longestTone() {
        return tones(LONG_TONE_S)
                .sorted(Comparator.comparingLong(Cue.Tone::frames).reversed())
                .flatMap(t -> clearest(t).stream())
                .filter(c -> c.seconds() > LONG_TONE_S / 2)
                .findFirst();
    }

    /** The course of a tone on the channel that shows it best. */
    private Optional<TonePhase.Course> clearest(Cue.Tone t) {
        return courses(t).stream().min(Comparator.comparingDouble(TonePhase.Course::sigmaSeconds));
    }

    private Stream<Cue.Tone> tones(double leastSeconds) {
        return sheet.cues(Cue.Tone.class)
                .filter(t -> t.frequencyHz() >= TonePhase.LOWEST_HZ)
                .filter(t -> t.channels() == ChannelSet.BOTH)
                .filter(t -> sheet.seconds(t.frames()) >= leastSeconds)
                .filter(this::covered);
    }

    /** Whether all of a cue was recorded: what is broken off would pass for a wild motion. */
    private boolean covered(Cue cue) {
        double from = map.recordingSeconds(sheet.seconds(cue.startFrame()));
        double to = map.recordingSeconds(sheet.seconds(cue.endFrame()));
        return from >= 0
                && to <= (double) recording.frames() / recording.sampleRateHz()
                && !Placement.isBroken(placement.part(), from, to);
    }

    private List<TonePhase.Course> courses(Cue.Tone t) {
        return new TonePhase(recording, map)
                .courses(
                        sheet.seconds(t.startFrame()),
                        sheet.seconds(t.endFrame()),
                        t.frequencyHz());
    }

    /** What each channel that is heard shows near the start. */
    private List<List<PhaseReading>> readings() {
        List<List<PhaseReading>> all = new ArrayList<>();
        Optional<Cue.Marker> marker =
                sheet.cues(Cue.Marker.class)
                        .filter(m -> Math.abs(middle(m) - anchor.programmeSeconds()) < 1e-6)
                        .findFirst();
        for (int c = 0; c < recording.channels(); c++) {
            if (anchor.signs()[c] != 0) {
                all.add(anchorReadings(marker.orElse(null), c));
            }
        }
        if (all.isEmpty()) {
            all.add(anchorReadings(null, 0));
        }
        int group = 1;
        double until = anchor.programmeSeconds() + REACH_S;
        for (Cue.Tone t : tones(0.25).filter(t -> sheet.seconds(t.startFrame()) < until).toList()) {
            addTone(t, group++, all);
        }
        return all;
    }

    private double middle(Cue cue) {
        return sheet.seconds(cue.startFrame()) + sheet.seconds(cue.frames()) / 2;
    }

    private List<PhaseReading> anchorReadings(Cue.Marker marker, int channel) {
        List<PhaseReading> out = new ArrayList<>();
        if (marker != null) {
            out.addAll(
                    new MarkerPhase(placement.programme().audio(), recording, map)
                            .read(
                                    sheet.seconds(marker.startFrame()),
                                    sheet.seconds(marker.frames()),
                                    channel,
                                    0));
        }
        if (out.size() < 8) {
            out.clear();
            out.add(new PhaseReading(anchor.programmeSeconds(), 0, 1e9, ANCHOR_SIGMA_S, 0));
        }
        return out;
    }

    /** The tone of the clearer channel stands for the motion of both. */
    private void addTone(Cue.Tone t, int group, List<List<PhaseReading>> all) {
        clearest(t)
                .ifPresent(
                        course -> {
                            for (int k = 0; k < course.lateSeconds().length; k++) {
                                PhaseReading r =
                                        new PhaseReading(
                                                course.at(k),
                                                course.lateSeconds()[k],
                                                t.frequencyHz(),
                                                course.sigmaSeconds(),
                                                group);
                                all.forEach(list -> list.add(r));
                            }
                        });
    }

    /** All of the marker, and of the tones as many as can be handled. */
    static List<PhaseReading> thinned(List<PhaseReading> readings) {
        List<PhaseReading> kept =
                new ArrayList<>(readings.stream().filter(r -> r.group() == 0).toList());
        List<PhaseReading> tones = readings.stream().filter(r -> r.group() > 0).toList();
        int step = 1 + tones.size() / Math.max(1, MOST_READINGS - kept.size());
        for (int i = 0; i < tones.size(); i += step) {
            kept.add(tones.get(i));
        }
        return kept;
    }

    /**
     * How well the profile knows the speed before the anchor, one standard deviation: worse the
     * longer the beginning in which no tone shows it.
     */
    private double slopeSigma() {
        List<ToneStretches.Reading> readings = placement.readings();
        double scatter = placement.scatter();
        double length = sheet.seconds(sheet.frames());
        double first = readings.isEmpty() ? length : readings.get(0).programmeSeconds();
        double inside = 3 * scatter / Math.sqrt(Math.max(1, readings.size())) + 2e-6;
        return Math.max(inside, (scatter + UNSEEN_SLOPE) * Math.min(1, 2 * first / length));
    }
}

package offtape.report.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.audio.AudioSource;
import offtape.core.fault.Background;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ExponentialSweep;
import offtape.core.programme.Programme;

/**
 * Makes a map of time from a rough match: the course of speed from the tones, then the place from
 * markers and sweeps.
 *
 * @param part what is heard of the programme
 * @param profile the course of speed
 * @param smooth the map without what markers and sweeps say, but for its middle
 * @param markers all markers that the recording covers, heard or not, in order
 * @param readings what the tones say of speed
 */
record Placement(
        Programme programme,
        AudioSource recording,
        HeardPart part,
        StretchProfile profile,
        TimeMap smooth,
        List<Anchor> markers,
        List<ToneStretches.Reading> readings) {

    /** Least likeness at which a marker is heard. */
    static final double MARKER_LIKE = 0.4;

    /** Tones may show another speed than the match; this far, they are no tones of it. */
    private static final double TOO_FAR = 0.045;

    /** How far off the tones are looked for, and how far if none is there. */
    private static final double REACH = 0.012;

    private static final double WIDE_REACH = 0.04;

    /** A speed this near to what the tones say needs no second look. */
    private static final double SETTLED = 0.0006;

    private static final int MOST_ROUNDS = 3;
    private static final double ANCHOR_LIKE = 0.5;
    private static final double SWEEP_ANCHOR_S = 0.4;
    private static final double SWEEP_ANCHOR_HZ = 1200;
    private static final double KNOT_S = 0.5;

    /** What a marker's place is known to by itself. */
    private static final double OWN_S = 0.0002;

    /** Wow that a reading of speed shows may go on for such a time. */
    private static final double WOW_READING_S = 2;

    static final double MARKER_TOP_HZ = 5000;

    /** How sharply it is known where what is heard begins and ends. */
    private static final double EDGE_S = 0.1;

    /**
     * Places a programme.
     *
     * @param part what is heard of it there
     * @param fine finds the place of a match again once its speed is known better
     */
    static Placement of(
            Programme programme,
            AudioSource recording,
            CoarseSearch.Match match,
            HeardPart part,
            FineSearch fine) {
        CueSheet sheet = programme.sheet();
        double length = sheet.seconds(sheet.frames());
        CoarseSearch.Match known = match;
        for (int round = 1; ; round++) {
            TimeMap coarse = TimeMap.straight(known.offsetSeconds(), known.stretch(), length);
            double stretch = known.stretch();
            ToneStretches tones = new ToneStretches(sheet, recording, coarse);
            List<ToneStretches.Reading> readings = usable(tones.read(REACH), coarse, stretch, part);
            if (readings.isEmpty()) {
                readings = usable(tones.read(WIDE_REACH), coarse, stretch, part);
            }
            double middle = covered(recording, coarse, length);
            StretchProfile profile = StretchProfile.fit(readings, stretch, length);
            double off = Math.abs(profile.at(middle) / stretch - 1);
            if (off < SETTLED || round == MOST_ROUNDS) {
                double start = startOf(coarse, profile, middle);
                TimeMap drawn = integrate(profile, start, length, List.of());
                double late = fine.lateSeconds(drawn, stretch);
                TimeMap smooth = integrate(profile, start + late, length, List.of());
                List<Anchor> markers = markers(programme, recording, smooth);
                return new Placement(
                        programme, recording, part, profile, smooth, markers, readings);
            }
            known = fine.at(known, profile.at(middle));
        }
    }

    /** Readings near the speed of a match, from tone that does not break off. */
    private static List<ToneStretches.Reading> usable(
            List<ToneStretches.Reading> readings, TimeMap match, double stretch, HeardPart part) {
        return readings.stream()
                .filter(r -> Math.abs(r.stretch() / stretch - 1) < TOO_FAR)
                .filter(
                        r -> {
                            double from = r.programmeSeconds() - r.seconds() / 2;
                            return !isBroken(
                                    part,
                                    match.recordingSeconds(from),
                                    match.recordingSeconds(from + r.seconds()));
                        })
                .toList();
    }

    /** Whether what is heard begins or ends inside a stretch of the recording, seconds. */
    static boolean isBroken(HeardPart part, double from, double to) {
        return isInside(part.fromSeconds(), from, to) || isInside(part.toSeconds(), from, to);
    }

    private static boolean isInside(double edge, double from, double to) {
        return edge > from + EDGE_S && edge < to - EDGE_S;
    }

    /** Middle of the part of the programme that lies in the recording, programme seconds. */
    private static double covered(AudioSource recording, TimeMap coarse, double length) {
        double end = (double) recording.frames() / recording.sampleRateHz();
        double from = Math.max(0, coarse.programmeSeconds(0));
        return (from + Math.min(length, coarse.programmeSeconds(end))) / 2;
    }

    /** The start by a match that is taken to be right in the middle of what is there. */
    private static double startOf(TimeMap coarse, StretchProfile profile, double middle) {
        double fromStart = 0;
        int steps = (int) Math.ceil(middle / KNOT_S);
        for (int i = 0; i < steps; i++) {
            fromStart += profile.at((i + 0.5) * middle / steps) * middle / steps;
        }
        return coarse.recordingSeconds(middle) - fromStart;
    }

    private static List<Anchor> markers(
            Programme programme, AudioSource recording, TimeMap smooth) {
        CueSheet sheet = programme.sheet();
        AnchorSearch search = new AnchorSearch(programme.audio(), recording, smooth);
        return Background.each(
                        sheet.cues(Cue.Marker.class).toList(),
                        m ->
                                search.find(
                                        sheet.seconds(m.startFrame()),
                                        sheet.seconds(m.frames()),
                                        MARKER_TOP_HZ))
                .stream()
                .flatMap(Optional::stream)
                .toList();
    }

    /** Whether a marker is heard. */
    boolean markerHeard() {
        return markers.stream().anyMatch(a -> a.likeness() >= MARKER_LIKE);
    }

    /** Whether a marker of the first half of the programme is heard, or one of the second. */
    boolean markerHeardAt(boolean firstHalf) {
        return markers.stream()
                .filter(a -> a.likeness() >= MARKER_LIKE)
                .anyMatch(a -> a.programmeSeconds() < length() / 2 == firstHalf);
    }

    /** The markers and sweeps that were found for certain, in order. */
    List<Anchor> anchors() {
        List<Anchor> anchors = new ArrayList<>(markers);
        anchors.addAll(sweeps());
        anchors.removeIf(a -> a.likeness() < ANCHOR_LIKE);
        if (anchors.isEmpty()) {
            anchors.add(
                    markers.stream()
                            .max(Comparator.comparingDouble(Anchor::likeness))
                            .orElseThrow());
        }
        anchors.sort(Comparator.comparingDouble(Anchor::programmeSeconds));
        return anchors;
    }

    private List<Anchor> sweeps() {
        CueSheet sheet = programme.sheet();
        AnchorSearch search = new AnchorSearch(programme.audio(), recording, smooth);
        List<Anchor> found = new ArrayList<>();
        for (Cue.Sweep s : sheet.cues(Cue.Sweep.class).toList()) {
            ExponentialSweep sweep = ExponentialSweep.of(s, sheet.sampleRateHz());
            double seconds = Math.min(SWEEP_ANCHOR_S, sweep.seconds() / 4);
            double hz = Math.min(SWEEP_ANCHOR_HZ, Math.sqrt(s.startHz() * s.endHz()));
            double at = sweep.timeSeconds(hz) - seconds / 2;
            Optional<Anchor> anchor = search.find(sheet.seconds(s.startFrame()) + at, seconds, 0);
            anchor.ifPresent(found::add);
        }
        return found;
    }

    /** The map that passes through the anchors. */
    TimeMap through(List<Anchor> anchors) {
        return integrate(profile, smooth.recordingSeconds(0), length(), anchors);
    }

    /** The map without the wow between anchors, laid through one of them. */
    TimeMap smoothThrough(Anchor anchor) {
        double start = smooth.recordingSeconds(0) + miss(smooth, anchor);
        return integrate(profile, start, length(), List.of());
    }

    private double length() {
        return programme.sheet().seconds(programme.sheet().frames());
    }

    /** The profile's integral from a start, bent to pass through the anchors. */
    private static TimeMap integrate(
            StretchProfile profile, double start, double length, List<Anchor> anchors) {
        int knots = (int) Math.ceil(length / KNOT_S) + 1;
        double[] p = new double[knots];
        double[] t = new double[knots];
        t[0] = start;
        for (int i = 1; i < knots; i++) {
            p[i] = length * i / (knots - 1);
            double step = p[i] - p[i - 1];
            t[i] = t[i - 1] + step * profile.at(p[i] - step / 2);
        }
        TimeMap plain = new TimeMap(p, t);
        for (int i = 0; i < knots; i++) {
            t[i] += correction(plain, anchors, p[i]);
        }
        return new TimeMap(p, t);
    }

    private static double correction(TimeMap plain, List<Anchor> anchors, double at) {
        Anchor before = null;
        for (Anchor a : anchors) {
            if (a.programmeSeconds() > at) {
                if (before == null) {
                    return miss(plain, a);
                }
                double part =
                        (at - before.programmeSeconds())
                                / (a.programmeSeconds() - before.programmeSeconds());
                return (1 - part) * miss(plain, before) + part * miss(plain, a);
            }
            before = a;
        }
        return before == null ? 0 : miss(plain, before);
    }

    private static double miss(TimeMap plain, Anchor a) {
        return a.recordingSeconds() - plain.recordingSeconds(a.programmeSeconds());
    }

    /**
     * The markers that were heard, against the course of speed that the tones alone tell. Lateness
     * of the tones' course is known to the scatter of their readings over the root of their number,
     * times the time that went by; wow of rates too fast for a reading moves a marker by itself.
     */
    List<MarkerSight> sights() {
        List<Anchor> heard = markers.stream().filter(a -> a.likeness() >= ANCHOR_LIKE).toList();
        List<MarkerSight> sights = new ArrayList<>();
        for (Anchor a : heard) {
            Anchor first = heard.get(0);
            double late =
                    (miss(smooth, a) - miss(smooth, first)) / profile.at(a.programmeSeconds());
            double apart = a.programmeSeconds() - first.programmeSeconds();
            double mean = scatter() * apart / Math.sqrt(Math.max(1, readings.size()));
            double wow = scatter() * WOW_READING_S;
            sights.add(
                    new MarkerSight(
                            a.programmeSeconds(),
                            late,
                            2 * Math.hypot(OWN_S, Math.hypot(mean, wow))));
        }
        return sights;
    }

    /** How far the readings of speed scatter about the profile, one standard deviation. */
    double scatter() {
        return Math.sqrt(
                readings.stream()
                        .mapToDouble(r -> r.stretch() - profile.at(r.programmeSeconds()))
                        .map(d -> d * d)
                        .average()
                        .orElse(0));
    }
}

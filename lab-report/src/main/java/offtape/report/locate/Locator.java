package offtape.report.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ExponentialSweep;
import offtape.core.programme.Programme;

/**
 * Finds the programme in a recording: first by the colour of its parts, over place and speed
 * together; then its speed from the tones; then its place from markers and sweeps.
 */
public final class Locator {

    /** Speed errors up to this share are measured. */
    private static final double SPEED_RANGE = 0.04;

    private static final double LIKE = 0.6;
    private static final double MARKER_LIKE = 0.4;
    private static final double ANCHOR_LIKE = 0.5;
    private static final double SWEEP_ANCHOR_S = 0.4;
    private static final double SWEEP_ANCHOR_HZ = 1200;
    private static final double KNOT_S = 0.5;
    private static final double MARKER_TOP_HZ = 5000;

    private final Programme programme;
    private final AudioSource recording;
    private final CueSheet sheet;
    private final double length;

    private Locator(Programme programme, AudioSource recording) {
        this.programme = programme;
        this.recording = recording;
        this.sheet = programme.sheet();
        this.length = sheet.seconds(sheet.frames());
    }

    /**
     * Finds a programme.
     *
     * @throws UnusableInputException if the programme is not in the recording, or too little of it
     */
    public static Location locate(Programme programme, AudioSource recording) {
        return new Locator(programme, recording).locate();
    }

    private Location locate() {
        CoarseSearch search =
                new CoarseSearch(SpectralTrace.of(programme.audio()), SpectralTrace.of(recording));
        CoarseSearch.Match match = search.best(1, SPEED_RANGE);
        if (match.likeness() < LIKE) {
            throw notFound(search);
        }
        TimeMap coarse = TimeMap.straight(match.offsetSeconds(), match.stretch(), length);
        List<ToneStretches.Reading> readings = new ToneStretches(sheet, recording, coarse).read();
        StretchProfile profile = StretchProfile.fit(readings, match.stretch(), length);
        TimeMap sloped = integrate(profile, middleOffset(coarse, profile), List.of());
        List<Anchor> markers = markers(sloped);
        if (markers.stream().allMatch(a -> a.likeness() < MARKER_LIKE)) {
            throw new UnusableInputException(
                    recording.name()
                            + " sounds like the programme, but none of its markers is in it. Record"
                            + " the whole programme again, from before its first marker to after its"
                            + " last.");
        }
        return finish(profile, sloped, markers, readings);
    }

    private Location finish(
            StretchProfile profile,
            TimeMap sloped,
            List<Anchor> markers,
            List<ToneStretches.Reading> readings) {
        List<Anchor> anchors = new ArrayList<>(markers);
        anchors.addAll(sweeps(sloped));
        anchors.removeIf(a -> a.likeness() < ANCHOR_LIKE);
        anchors.sort(Comparator.comparingDouble(Anchor::programmeSeconds));
        TimeMap map = integrate(profile, sloped.recordingSeconds(0), anchors);
        double wow =
                Math.sqrt(
                        readings.stream()
                                .mapToDouble(r -> r.stretch() - profile.at(r.programmeSeconds()))
                                .map(d -> d * d)
                                .average()
                                .orElse(0));
        Anchor first = markers.get(0);
        Anchor last = markers.get(markers.size() - 1);
        double delay = map.recordingSeconds(0);
        return new Location(
                map,
                (double) recording.frames() / recording.sampleRateHz(),
                delay,
                2 * wow * first.programmeSeconds() + 1.0 / recording.sampleRateHz(),
                signs(anchors, recording.channels()),
                first.likeness() >= MARKER_LIKE && isFirst(first),
                last.likeness() >= MARKER_LIKE && isLast(last));
    }

    private boolean isFirst(Anchor anchor) {
        return anchor.programmeSeconds() < length / 2;
    }

    private boolean isLast(Anchor anchor) {
        return anchor.programmeSeconds() > length / 2;
    }

    private static List<Integer> signs(List<Anchor> anchors, int channels) {
        List<Integer> signs = new ArrayList<>();
        for (int c = 0; c < channels; c++) {
            int sum = 0;
            for (Anchor a : anchors) {
                sum += a.signs()[c];
            }
            signs.add(Integer.signum(sum));
        }
        return signs;
    }

    /** The coarse search is best in the middle of the programme; the start follows from there. */
    private double middleOffset(TimeMap coarse, StretchProfile profile) {
        double middle = length / 2;
        double fromStart = 0;
        int steps = (int) Math.ceil(middle / KNOT_S);
        for (int i = 0; i < steps; i++) {
            fromStart += profile.at((i + 0.5) * middle / steps) * middle / steps;
        }
        return coarse.recordingSeconds(middle) - fromStart;
    }

    private List<Anchor> markers(TimeMap map) {
        AnchorSearch search = new AnchorSearch(programme.audio(), recording, map);
        List<Anchor> found = new ArrayList<>();
        sheet.cues(Cue.Marker.class).toList().parallelStream()
                .map(
                        m ->
                                search.find(
                                        sheet.seconds(m.startFrame()),
                                        sheet.seconds(m.frames()),
                                        MARKER_TOP_HZ))
                .toList()
                .forEach(a -> a.ifPresent(found::add));
        if (found.isEmpty()) {
            throw new UnusableInputException(
                    sheet.cues(Cue.Marker.class).findAny().isEmpty()
                            ? "The cue sheet names no marker, so the programme cannot be placed."
                                    + " Write the programme again with \"offtape prepare\"."
                            : recording.name()
                                    + " is cut short: neither marker of the programme is in it. Record"
                                    + " from before the first marker to after the last.");
        }
        return found;
    }

    private List<Anchor> sweeps(TimeMap map) {
        AnchorSearch search = new AnchorSearch(programme.audio(), recording, map);
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

    /** The profile's integral from a start, bent to pass through the anchors. */
    private TimeMap integrate(StretchProfile profile, double start, List<Anchor> anchors) {
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

    private UnusableInputException notFound(CoarseSearch search) {
        for (double stretch : new double[] {48_000 / 44_100.0, 44_100 / 48_000.0, 0.5, 2}) {
            CoarseSearch.Match match = search.best(stretch, SPEED_RANGE);
            if (match.likeness() >= LIKE) {
                return new UnusableInputException(
                        String.format(
                                Locale.ROOT,
                                "%s holds the programme %.1f times as fast as it was made: a wrong"
                                        + " tape speed, or a file whose header names the wrong sample"
                                        + " rate. Set the machine or the file right and record again.",
                                recording.name(),
                                1 / match.stretch()));
            }
        }
        return new UnusableInputException(
                "The programme was not found in "
                        + recording.name()
                        + ". Check that this is the return of the programme in the folder given with"
                        + " --programme, that its level is not too low, and that the tape ran within"
                        + " 3 % of its speed.");
    }
}

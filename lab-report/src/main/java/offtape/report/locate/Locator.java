package offtape.report.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import offtape.core.audio.AudioSource;
import offtape.core.fault.Background;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.Programme;

/**
 * Finds the programme in a recording: first by the colour of its parts, over place and speed
 * together; then its speed from the tones; then its place from markers and sweeps.
 */
public final class Locator {

    /** The least likeness in colour at which a part of a recording may be the programme. */
    static final double LIKE = 0.6;

    /** The longest and shortest that the programme may have become, over its own length. */
    static final double LOWEST_STRETCH = 0.38;

    static final double HIGHEST_STRETCH = 2.65;

    /** Speed errors that are usual are looked for first. */
    private static final double USUAL = 0.045;

    /** At this likeness of the whole programme no other speed is tried. */
    private static final double SURE = 0.75;

    /** So many matches of different speed are followed up. */
    private static final int CANDIDATES = 5;

    /** Vectors of the fine traces that make one of the coarse ones. */
    private static final int COARSER = 8;

    /** This share of the programme is enough to know it, though the tape was broken off. */
    private static final double ENOUGH_SHARE = 0.25;

    /** Of a recording that is cut this much is enough, if it fills the recording. */
    private static final double ENOUGH_S = 3;

    private static final double FILLED_SHARE = 0.6;

    private final Programme programme;
    private final AudioSource recording;
    private final SpectralTrace fineProgramme;
    private final SpectralTrace fineRecording;
    private final SpectralTrace coarseProgramme;
    private final SpectralTrace coarseRecording;

    private Locator(Programme programme, AudioSource recording) {
        this.programme = programme;
        this.recording = recording;
        CompletableFuture<SpectralTrace> sent =
                Background.start(() -> SpectralTrace.of(programme.audio()).withoutSilence());
        this.fineRecording = SpectralTrace.of(recording);
        this.fineProgramme = Background.result(sent);
        this.coarseProgramme = fineProgramme.coarser(COARSER);
        this.coarseRecording = fineRecording.coarser(COARSER);
    }

    /**
     * Finds a programme.
     *
     * @throws UnusableInputException if the programme is not in the recording, or too little of it
     */
    public static Location locate(Programme programme, AudioSource recording) {
        return new Locator(programme, recording).locate();
    }

    /** A match that was followed up. */
    private record Candidate(
            CoarseSearch.Match match, HeardPart part, Optional<Placement> placement) {

        boolean heard() {
            return placement.filter(Placement::markerHeard).isPresent();
        }
    }

    private Location locate() {
        CoarseSearch search = new CoarseSearch(coarseProgramme, coarseRecording);
        List<Candidate> tried = new ArrayList<>();
        CoarseSearch.Match usual = search.best(1 / (1 + USUAL), 1 + USUAL, 1).get(0);
        if (usual.likeness() >= SURE) {
            tried.add(follow(usual));
        }
        if (tried.stream().noneMatch(Candidate::heard)) {
            for (CoarseSearch.Match m : search.best(LOWEST_STRETCH, HIGHEST_STRETCH, CANDIDATES)) {
                tried.add(follow(m));
                if (tried.get(tried.size() - 1).heard()) {
                    break;
                }
            }
        }
        // a stretched return may leave a marker where another speed would have it
        tried.forEach(this::requireNotStretched);
        Candidate found =
                tried.stream().filter(Candidate::heard).findFirst().orElseThrow(() -> no(tried));
        return choose(found);
    }

    private Candidate follow(CoarseSearch.Match rough) {
        FineSearch fine = new FineSearch(fineProgramme, fineRecording);
        CoarseSearch.Match match = fine.near(rough);
        HeardPart part = HeardPart.of(coarseProgramme, coarseRecording, match);
        boolean filled = part.soundingSeconds() >= ENOUGH_S && part.coveredShare() >= FILLED_SHARE;
        boolean brokenOff = part.share() >= ENOUGH_SHARE && part.fromStart();
        boolean like = part.likeness() >= LIKE && (filled || brokenOff);
        return new Candidate(
                match,
                part,
                like
                        ? Optional.of(Placement.of(programme, recording, match, part, fine))
                        : Optional.empty());
    }

    private UnusableInputException no(List<Candidate> tried) {
        NotFound words = new NotFound(programme, recording);
        return tried.stream()
                .filter(c -> c.placement().isPresent() && c.part().share() >= LIKE)
                .findFirst()
                .map(c -> words.withoutMarkers(c.match(), c.placement().get().markers()))
                .orElseGet(() -> isBackwards() ? words.backwards() : words.refusal());
    }

    /** A return that was stretched in time tells nothing of the machine's own time. */
    private void requireNotStretched(Candidate c) {
        if (c.placement().isEmpty()) {
            return;
        }
        double middle = programme.sheet().seconds(programme.sheet().frames()) / 2;
        new TimeStretch(programme.sheet(), fineProgramme, fineRecording)
                .of(c.match(), c.part(), c.placement().get().profile().at(middle))
                .ifPresent(
                        longer -> {
                            throw new NotFound(programme, recording).stretched(longer);
                        });
    }

    /** Whether the recording is the programme from its end to its beginning. */
    private boolean isBackwards() {
        SpectralTrace back = coarseRecording.backwards();
        CoarseSearch search = new CoarseSearch(coarseProgramme, back);
        return search.best(LOWEST_STRETCH, HIGHEST_STRETCH, 1).get(0).likeness() >= SURE;
    }

    /** Of several takes the one to measure. */
    private Location choose(Candidate found) {
        // Nearly always the one that was found first, so its start is sought meanwhile.
        CompletableFuture<StartTime.Estimate> start = Background.start(() -> start(found));
        MarkerCheck check = new MarkerCheck(programme, recording);
        List<Take> takes =
                new TakeSearch(coarseProgramme, coarseRecording, check::heard).takes(found.match());
        Take take = TakeSearch.choice(takes);
        Candidate best = found;
        if (Math.abs(take.fromSeconds() - found.match().offsetSeconds()) > TakeSearch.SAME_S) {
            double stretch = found.match().stretch();
            Candidate other = follow(new CoarseSearch.Match(take.fromSeconds(), stretch, 1));
            best = other.heard() ? other : found;
        }
        return location(best, takes, best == found ? Background.result(start) : start(best));
    }

    private static StartTime.Estimate start(Candidate found) {
        Placement placement = found.placement().orElseThrow();
        return StartTime.of(placement, placement.anchors().get(0));
    }

    private Location location(Candidate found, List<Take> takes, StartTime.Estimate start) {
        Placement placement = found.placement().orElseThrow();
        List<Anchor> anchors = placement.anchors();
        double length = (double) recording.frames() / recording.sampleRateHz();
        boolean first = placement.markerHeardAt(true);
        boolean last = placement.markerHeardAt(false);
        return new Location(
                placement.through(anchors),
                length,
                start.seconds(),
                start.uncertaintySeconds(),
                signs(anchors, recording.channels()),
                first,
                last,
                first ? 0 : Math.max(0, found.part().fromSeconds()),
                last || found.part().toEnd() ? length : Math.min(length, found.part().toSeconds()),
                takes.size() > 1 ? takes : List.of(),
                placement.sights());
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
}

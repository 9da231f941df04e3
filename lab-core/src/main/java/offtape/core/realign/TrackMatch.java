package offtape.core.realign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * Finds a track in its return by its sound alone, without marks. Levels in bands find the place
 * over the whole length ({@link PlaceSearch}), {@link Kinship} tells whether it is one, {@link
 * Tracker} follows it.
 *
 * <p>The delay is that without which the phase of the path's mean response is nearest to a constant
 * from 500 Hz to 8 kHz ({@link PhaseSlope}).
 */
public final class TrackMatch {

    private static final Sentences SAID = Sentences.near(TrackMatch.class);

    /** How far the return may lie before or behind its original, seconds. */
    public static final double FARTHEST_SECONDS = PlaceSearch.FARTHEST_S;

    /** The shortest track that can be found, seconds. */
    public static final double SHORTEST_SECONDS = 1;

    private static final double STRETCH_S = 60;
    private static final double SAMPLED_S = 5;
    private static final int SAMPLES = 24;

    /** What lies below this rms is silence, full scale: below the rounding of 24 bits. */
    private static final double SILENCE = 1e-7;

    private TrackMatch() {}

    /**
     * Finds it.
     *
     * @param original what was sent
     * @param returned what came back, of the same sample rate, with as many channels, or any number
     *     if the original has one
     * @return the mean delay, the mean speed and the gains of the path; differences from a path
     *     that changes nothing are none where they are below three standard uncertainties
     * @throws UnusableInputException if it is not found
     */
    public static Alignment find(AudioSource original, AudioSource returned) {
        return follow(original, returned, Optional.empty(), false).alignment();
    }

    /**
     * Finds it and follows it.
     *
     * @param expected what is known beforehand, if anything
     * @param isWhole whether all of it is to be followed; else a long track is looked at in two
     *     minutes altogether, spread over its length
     * @throws UnusableInputException if it is not found, or the two do not fit each other
     */
    public static FoundTrack follow(
            AudioSource original,
            AudioSource returned,
            Optional<Expectation> expected,
            boolean isWhole) {
        check(original, returned);
        LevelTrace trace = LevelTrace.of(original);
        LevelTrace heard = LevelTrace.of(returned);
        checkSound(trace, original);
        checkSound(heard, returned);
        PlaceScore score = new PlaceScore(trace, heard);
        List<Place> places = new PlaceSearch(trace, heard).find();
        if (places.isEmpty()) {
            throw notFound(original, returned);
        }
        List<Place> alike = alike(score, places);
        Place place = chosen(alike, expected);
        double rate = original.sampleRateHz();
        Course rough = score.course(place, rate);
        if (!Kinship.of(original, returned, rough, trace).isKin()) {
            throw notFound(original, returned);
        }
        List<Stretch> stretches = isWhole ? all(original) : some(original);
        Tracked tracked = new Tracker(original, returned, stretches).follow(rough);
        if (tracked == null) {
            throw notFound(original, returned);
        }
        OptionalDouble other =
                alike.stream().filter(p -> p != place).mapToDouble(Place::start).findFirst();
        return Findings.of(
                tracked, original, returned, expected.isPresent() ? OptionalDouble.empty() : other);
    }

    private static void check(AudioSource original, AudioSource returned) {
        if (original.sampleRateHz() != returned.sampleRateHz()) {
            throw new UnusableInputException(
                    SAID.say(
                            "rates-differ",
                            original.name(),
                            original.sampleRateHz(),
                            returned.name(),
                            returned.sampleRateHz()));
        }
        if (original.channels() != 1 && original.channels() != returned.channels()) {
            throw new UnusableInputException(
                    SAID.say(
                            "channels-differ",
                            original.name(),
                            original.channels(),
                            returned.name(),
                            returned.channels()));
        }
        if (original.frames() < SHORTEST_SECONDS * original.sampleRateHz()) {
            throw new UnusableInputException(SAID.say("too-short", original.name()));
        }
    }

    private static void checkSound(LevelTrace trace, AudioSource sound) {
        if (trace.loudest() < SILENCE) {
            throw new UnusableInputException(SAID.say("silent", sound.name()));
        }
    }

    private static UnusableInputException notFound(AudioSource original, AudioSource returned) {
        return new UnusableInputException(
                SAID.say("not-heard", original.name(), returned.name(), FARTHEST_SECONDS / 60));
    }

    /** The best place and those that nothing in the sound tells from it. */
    private static List<Place> alike(PlaceScore score, List<Place> places) {
        Place best = places.get(0);
        List<Place> alike = new ArrayList<>(List.of(best));
        for (Place other : places.subList(1, places.size())) {
            if (!score.tells(best, other)) {
                alike.add(other);
            }
        }
        return alike;
    }

    private static Place chosen(List<Place> alike, Optional<Expectation> expected) {
        return expected.flatMap(
                        e ->
                                alike.stream()
                                        .min(
                                                Comparator.comparingDouble(
                                                        p ->
                                                                Math.abs(
                                                                        p.start()
                                                                                - e
                                                                                        .delaySeconds()))))
                .orElse(alike.get(0));
    }

    private static List<Stretch> all(AudioSource original) {
        long some = Math.round(STRETCH_S * original.sampleRateHz());
        List<Stretch> stretches = new ArrayList<>();
        for (long from = 0; from < original.frames(); from += some) {
            stretches.add(new Stretch(from, Math.min(original.frames(), from + some)));
        }
        return stretches;
    }

    private static List<Stretch> some(AudioSource original) {
        long span = Math.round(SAMPLED_S * original.sampleRateHz());
        if (original.frames() <= SAMPLES * span) {
            return all(original);
        }
        List<Stretch> stretches = new ArrayList<>();
        for (int n = 0; n < SAMPLES; n++) {
            long from = Math.round((original.frames() - span) * (n / (SAMPLES - 1.0)));
            stretches.add(new Stretch(from, from + span));
        }
        return stretches;
    }
}

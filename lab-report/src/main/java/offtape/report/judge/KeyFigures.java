package offtape.report.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.Results;

/** The figures without which no machine is judged, whatever limits say. */
final class KeyFigures {

    private static final Sentences SAID = Sentences.near(KeyFigures.class);

    private static final double PLAIN_DISTORTION_PERCENT = 3;

    private final Results results;
    private final List<Gap> gaps = new ArrayList<>();

    private KeyFigures(Results results) {
        this.results = results;
    }

    /** Those that a session does not tell, though its capture mode could. */
    static List<Gap> missing(Results results) {
        KeyFigures figures = new KeyFigures(results);
        figures.channels();
        figures.speed();
        return List.copyOf(figures.gaps);
    }

    private void channels() {
        List<String> heard = Find.CHANNELS.stream().filter(this::isHeard).toList();
        List<String> channels = heard.isEmpty() ? Find.CHANNELS : heard;
        check(Judged.RESPONSE, channels, SAID.say("what.response"), this::hasResponse);
        check(Judged.LEVEL_AT_3_PERCENT, channels, SAID.say("what.distortion"), this::hasK3);
        check(Judged.WEIGHTED_NOISE_DISTANCE, channels, SAID.say("what.noise"), this::hasNoise);
    }

    private void check(
            Judged figure, List<String> channels, String what, Predicate<String> isThere) {
        List<String> lost = channels.stream().filter(isThere.negate()).toList();
        if (!lost.isEmpty()) {
            String of = SAID.say(lost.size() > 1 ? "on-both" : "on-" + lost.get(0), what);
            gaps.add(Gap.of(figure, results.session().mode(), of, SAID.say("not-told")));
        }
    }

    /** A mono recording has one channel, and lacks no figure of the other. */
    private boolean isHeard(String channel) {
        return Stream.of(
                        results.response().stream().map(r -> r.channel()),
                        results.distortion().stream().map(d -> d.channel()),
                        results.noise().stream().map(n -> n.channel()))
                .flatMap(s -> s)
                .anyMatch(channel::equals);
    }

    private boolean hasResponse(String channel) {
        return Find.quietResponse(results, channel)
                .map(r -> r.frequencyHz().length > 1)
                .orElse(false);
    }

    /** Where 3 % is not reached, the loudest tone that stays below says enough. */
    private boolean hasK3(String channel) {
        return Find.toneLadder(results, channel).map(KeyFigures::tellsK3).orElse(false);
    }

    private static boolean tellsK3(Distortion ladder) {
        Quantity level = Find.figure(ladder.levelAtK3ThreePercent());
        int last = ladder.steps().size() - 1;
        Double loudest = last < 0 ? null : ladder.steps().get(last).k3Percent();
        return level.isKnown() || loudest != null && loudest < PLAIN_DISTORTION_PERCENT;
    }

    private boolean hasNoise(String channel) {
        return Find.noise(results, channel)
                .map(Noise::aWeighted)
                .map(n -> Find.figure(n).isKnown())
                .orElse(false);
    }

    private void speed() {
        wanting(Judged.WOW_AND_FLUTTER, SAID.say("what.wow-and-flutter"));
        String mode = results.session().mode();
        if (mode == null || mode.equals(CaptureMode.REFERENCE_TAPE.key())) {
            wanting(Judged.SPEED_DEVIATION, SAID.say("what.mean-speed"));
        }
    }

    private void wanting(Judged judged, String what) {
        Quantity figure = judged.of(results, "");
        if (!figure.isKnown()) {
            gaps.add(Gap.of(judged, results.session().mode(), what, figure.reason()));
        }
    }
}

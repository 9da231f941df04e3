package offtape.report.measure.pass;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.HealthNote;
import offtape.report.result.Pass;
import offtape.report.result.PassFigures;
import offtape.report.result.Passes;
import offtape.report.result.Results;

/** Adds several replays of one recording to the results of the first. */
public final class PassMeasure {

    private static final Sentences SAID = Sentences.near(PassMeasure.class);

    /** One machine repeats its speed within this, unless something slips (common practice). */
    private static final double SAME_SPEED_PERCENT = 0.3;

    private static final List<String> NOTES = List.of(SAID.say("repeats"), SAID.say("reels"));

    private PassMeasure() {}

    /**
     * The results with the readings of all replays; wow and flutter become the mean of them.
     *
     * @param results those of the first replay
     * @param given all replays, two or more
     */
    public static Results added(Results results, List<PassReading> given) {
        PassReading longest =
                given.stream().max(Comparator.comparingDouble(PassReading::seconds)).orElseThrow();
        List<PassReading> replays = given.stream().map(r -> r.besides(longest)).toList();
        List<HealthNote> health = new ArrayList<>(results.health());
        health.addAll(health(replays));
        return results.withSpeed(results.speed().withPasses(passes(replays))).withHealth(health);
    }

    private static Passes passes(List<PassReading> replays) {
        List<Pass> readings = replays.stream().map(PassReading::pass).toList();
        List<PassFigures> figures = readings.stream().map(Pass::figures).toList();
        PassParting parts =
                PassParting.of(replays.stream().flatMap(r -> r.course().stream()).toList());
        return new Passes(
                statement(replays),
                readings,
                PassFigures.of(figures, PassSpread::highest),
                PassFigures.of(figures, PassSpread::mean),
                PassFigures.of(figures, PassSpread::spread),
                parts.written(),
                parts.read(),
                parts.lines(),
                parts.seconds(),
                parts.seconds() == null ? List.of() : NOTES);
    }

    private static boolean isWhole(PassReading replay) {
        return replay.pass().figures().weightedPeak().isKnown();
    }

    private static String statement(List<PassReading> replays) {
        long whole = replays.stream().filter(PassMeasure::isWhole).count();
        String first = replays.get(0).pass().file();
        if (whole == 0) {
            return SAID.say("mean-of-none", first);
        }
        return whole == replays.size()
                ? SAID.say("mean-of-all", whole, first)
                : SAID.say("mean-of-some", whole, replays.size(), first);
    }

    private static List<HealthNote> health(List<PassReading> replays) {
        List<HealthNote> notes = new ArrayList<>();
        for (PassReading replay : replays) {
            replay.notes().forEach(n -> notes.add(new HealthNote("warning", "file", n)));
            Quantity peak = replay.pass().figures().weightedPeak();
            if (!peak.isKnown()) {
                notes.add(
                        new HealthNote(
                                "warning",
                                "replay-without-readings",
                                SAID.say("without-readings", replay.pass().file())
                                        + " "
                                        + peak.reason()));
            }
        }
        List<Pass> told =
                replays.stream()
                        .map(PassReading::pass)
                        .filter(p -> p.rate().isKnown())
                        .sorted((a, b) -> Double.compare(a.rate().value(), b.rate().value()))
                        .toList();
        if (told.size() > 1) {
            speeds(told.get(0), told.get(told.size() - 1), notes);
        }
        return notes;
    }

    private static void speeds(Pass slow, Pass fast, List<HealthNote> notes) {
        double apart = fast.rate().value() - slow.rate().value();
        double sure = Math.hypot(fast.rate().uncertainty(), slow.rate().uncertainty());
        if (apart - sure > SAME_SPEED_PERCENT) {
            notes.add(
                    new HealthNote(
                            "warning",
                            "replays-differ-in-speed",
                            SAID.say(
                                    "speeds-differ",
                                    slow.file(),
                                    shown(slow),
                                    fast.file(),
                                    shown(fast))));
        }
    }

    /** Rounded as it is told, so that nothing carries no minus. */
    private static double shown(Pass pass) {
        return Math.rint(100 * pass.rate().value()) / 100 + 0.0;
    }
}

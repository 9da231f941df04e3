package offtape.report.result;

import java.nio.file.Path;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.DoubleStream;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/**
 * What is held of numbers that come from a file, so that what is computed from them is a number
 * again: frequencies rise, and levels can be taken for powers.
 */
final class ResultsCheck {

    private static final Sentences SAID = Sentences.near(ResultsCheck.class);

    private static final double LOWEST_HZ = 0.001;
    private static final double HIGHEST_HZ = 1e9;

    /** Beyond anything that is measured, dB. */
    private static final double MOST_DB = 1000;

    /** A deviation of more is no deviation, percent. */
    private static final double MOST_PERCENT = 1000;

    private final Path file;

    private ResultsCheck(Path file) {
        this.file = file;
    }

    /**
     * Checks results.
     *
     * @param file where they are from, for the refusal
     * @throws UnusableInputException if they cannot be used, with the place
     */
    static void check(Results results, Path file) {
        ResultsCheck check = new ResultsCheck(file);
        each("response", results.response(), check::response);
        each("noise", results.noise(), check::noise);
        each("losses", results.losses(), check::loss);
        if (results.speed() != null) {
            check.speed("speed", results.speed());
        }
        if (results.channels() != null) {
            check.channels("channels", results.channels());
        }
    }

    private static <T> void each(String name, List<T> list, BiConsumer<String, T> check) {
        for (int i = 0; i < list.size(); i++) {
            check.accept(name + "[" + i + "]", list.get(i));
        }
    }

    private void response(String place, Response r) {
        level(place + ".levelDb", r.levelDb());
        rising(place + ".frequencyHz", r.frequencyHz());
        level(place + ".magnitudeDb", r.magnitudeDb());
    }

    private void noise(String place, Noise n) {
        level(place + ".unweighted", n.unweighted());
        level(place + ".aWeighted", n.aWeighted());
        level(place + ".itu468", n.itu468());
        for (HumLine line : n.hum()) {
            level(place + ".hum", line.levelDb());
        }
        if (n.spectrum() != null) {
            rising(place + ".spectrum.frequencyHz", n.spectrum().frequencyHz());
            level(place + ".spectrum.levelDb", n.spectrum().levelDb());
        }
        if (n.unweightedBandHz() != null) {
            require(n.unweightedBandHz().length == 2, place + ".unweightedBandHz", "two-ends");
            rising(place + ".unweightedBandHz", n.unweightedBandHz());
        }
    }

    private void loss(String place, LossFit l) {
        rising(place + ".frequencyHz", l.frequencyHz());
        for (LossCause cause : l.causes()) {
            if (cause.shareDb() != null) {
                level(place + ".causes", cause.shareDb());
            }
        }
    }

    private void speed(String place, Speed s) {
        components(place, s.components());
        if (s.spectrum() != null) {
            rising(place + ".spectrum.frequencyHz", s.spectrum().frequencyHz());
            deviation(place + ".spectrum.peakPercent", s.spectrum().peakPercent());
        }
        TransportSpeed t = s.transport();
        if (t != null) {
            components(place + ".transport", t.components());
            if (t.spectrum() != null) {
                rising(place + ".transport.spectrum.frequencyHz", t.spectrum().frequencyHz());
                deviation(place + ".transport.spectrum.peakPercent", t.spectrum().peakPercent());
            }
        }
    }

    private void components(String place, List<SpeedComponent> lines) {
        for (SpeedComponent line : lines) {
            rising(place + ".components", line.frequencyHz());
            deviation(place + ".components", line.peakPercent());
            if (line.endFrequencyHz() != null) {
                rising(place + ".components", line.endFrequencyHz());
            }
        }
    }

    private void channels(String place, Channels c) {
        level(place + ".balance", c.balance());
        level(place + ".crosstalkLeftToRight", c.crosstalkLeftToRight());
        level(place + ".crosstalkRightToLeft", c.crosstalkRightToLeft());
        for (CrosstalkCurve curve : c.crosstalk()) {
            rising(place + ".crosstalk", curve.frequencyHz());
            for (Double db : curve.crosstalkDb()) {
                level(place + ".crosstalk", db == null ? 0 : db);
            }
        }
        if (c.phaseDifference() != null) {
            rising(place + ".phaseDifference.frequencyHz", c.phaseDifference().frequencyHz());
        }
    }

    private void rising(String place, double... frequencyHz) {
        double before = 0;
        for (double hz : frequencyHz) {
            require(hz > before && hz >= LOWEST_HZ && hz <= HIGHEST_HZ, place, "must-rise");
            before = hz;
        }
    }

    private void level(String place, Quantity figure) {
        if (figure.isKnown()) {
            level(place, figure.value());
        }
    }

    private void level(String place, double... db) {
        require(DoubleStream.of(db).allMatch(x -> Math.abs(x) <= MOST_DB), place, "level-beyond");
    }

    private void deviation(String place, double... percent) {
        require(
                DoubleStream.of(percent).allMatch(x -> Math.abs(x) <= MOST_PERCENT),
                place,
                "deviation-beyond");
    }

    private void require(boolean holds, String place, String otherwise) {
        if (!holds) {
            throw new UnusableInputException(
                    SAID.say(otherwise, file, place) + " " + SAID.say("give-folder"));
        }
    }
}

package offtape.report.measure.pass;

import java.util.List;
import offtape.core.standard.FlutterBand;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.PassLine;
import offtape.report.result.PassParts;

/**
 * The wavering of several replays in its two parts, or why they cannot be told.
 *
 * @param written what repeats with the tape
 * @param read what a replay adds
 * @param lines lines in both parts
 * @param seconds length of tape that was compared, or null
 */
record PassParting(PassParts written, PassParts read, List<PassLine> lines, Double seconds) {

    private static final Sentences SAID = Sentences.near(PassParting.class);

    private static final double SHORTEST_S = 5;
    private static final double MARGIN_S = 0.1;
    private static final double WHOLE_BAND_HZ = 200;

    /** Parts the courses of those replays that hold the tone. */
    static PassParting of(List<TapeCourse> courses) {
        if (courses.size() < 2) {
            return none(SAID.say("few-with-tone"));
        }
        TapeCourse first = courses.get(0);
        double from = courses.stream().mapToDouble(c -> c.from(first)).max().orElseThrow();
        double to = courses.stream().mapToDouble(c -> c.to(first)).min().orElseThrow();
        double seconds = to - from - 2 * MARGIN_S;
        if (seconds < SHORTEST_S) {
            return none(SAID.say("little-in-common"));
        }
        int count = (int) (seconds * TapeCourse.RATE_HZ);
        double[][] series =
                courses.stream()
                        .map(c -> c.along(first, from + MARGIN_S, count))
                        .toArray(double[][]::new);
        double bandHz = courses.stream().mapToDouble(TapeCourse::bandHz).min().orElseThrow();
        return of(new Separation(series, TapeCourse.RATE_HZ), courses.size(), bandHz, seconds);
    }

    private static PassParting none(String reason) {
        return new PassParting(
                PassParts.unknown(reason), PassParts.unknown(reason), List.of(), null);
    }

    private static PassParting of(Separation parts, int replays, double bandHz, double seconds) {
        Words words = new Words(parts, replays, bandHz);
        return new PassParting(
                new PassParts(
                        words.written(FlutterBand.WEIGHTED),
                        words.written(FlutterBand.UNWEIGHTED),
                        words.written(FlutterBand.WOW),
                        words.written(FlutterBand.FLUTTER)),
                new PassParts(
                        words.read(FlutterBand.WEIGHTED),
                        words.read(FlutterBand.UNWEIGHTED),
                        words.read(FlutterBand.WOW),
                        words.read(FlutterBand.FLUTTER)),
                parts.lines().stream().map(words::line).toList(),
                seconds);
    }

    /** Shares as figures, or as reasons where they are not told. */
    private record Words(Separation parts, int replays, double bandHz) {

        Quantity written(FlutterBand band) {
            return figure(band, parts.written(band), parts.read(band));
        }

        Quantity read(FlutterBand band) {
            return figure(band, parts.read(band), parts.written(band));
        }

        private Quantity figure(FlutterBand band, Share own, Share other) {
            boolean whole = band == FlutterBand.WEIGHTED || band == FlutterBand.WOW;
            if (!whole && bandHz < WHOLE_BAND_HZ) {
                return Quantity.unknown(SAID.say("narrow"));
            }
            return own.isToldBeside(other)
                    ? own.rms()
                    : untold("untold-wavering", own.rms().uncertainty());
        }

        private Quantity untold(String key, double uncertainty) {
            return Quantity.unknown(SAID.say(key, replays, uncertainty));
        }

        PassLine line(Separation.Parted parted) {
            RingPosterior ring = parted.ring();
            return new PassLine(
                    parted.line().hz(),
                    peak(ring.still(), ring.turning()),
                    peak(ring.turning(), ring.still()));
        }

        private Quantity peak(RingPosterior.Range own, RingPosterior.Range other) {
            return own.share().isToldBeside(other.share())
                    ? Quantity.known(own.middle(), "%", own.reach())
                    : untold("untold-line", own.reach());
        }
    }
}

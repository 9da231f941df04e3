package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/** Readings as plain lines: figures, and advice whenever it changes. */
public final class PlainLog {

    private static final List<String> NAMES = List.of("left", "right");

    private List<String> advice = List.of();
    private Delay delay = Delay.none();
    private List<NoiseReading> noise = List.of();

    /** What is known besides the steady readings and has not been told yet. */
    public List<String> news(Readings r) {
        List<String> lines = new ArrayList<>();
        if (!r.noise().equals(noise)) {
            noise = r.noise();
            lines.add("noise  " + noise(r));
        }
        if (!r.delay().equals(delay)) {
            delay = r.delay();
            lines.add("delay  " + DelayWords.of(delay));
        }
        return lines;
    }

    private static String noise(Readings r) {
        double reference = r.desk().limits().referenceDbfs();
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < r.noise().size(); c++) {
            String all = PictureTable.noise(r.noise().get(c).unweightedDbfs(), reference);
            String weighted = PictureTable.noise(r.noise().get(c).aWeightedDbfs(), reference);
            parts.add(
                    NAMES.get(c)
                            + " "
                            + all
                            + (all.equals(weighted) ? "" : " (A-weighted " + weighted + ")"));
        }
        return String.join(", ", parts) + " re reference";
    }

    /** Sentences of what to turn, if they are others than before. */
    public List<String> advice(Readings r) {
        List<String> now = Words.of(r);
        if (now.equals(advice)) {
            return List.of();
        }
        advice = now;
        return now;
    }

    /** The figures of this moment in a line. */
    public static String line(Readings r) {
        return switch (r.desk().view()) {
            case GAINS -> tones(r, r.desk().levelDbfs(), "re sent") + k3(r);
            case BIAS -> tones(r, r.desk().levelDbfs(), "re sent") + below(r);
            case TAPE ->
                    r.tapeHz() == null
                            ? "no steady tone"
                            : Decimals.hertz(r.tapeHz())
                                    + "  "
                                    + tones(r, r.desk().limits().targetDbfs(), "re target");
            case AZIMUTH -> azimuth(r.pair());
        };
    }

    private static String tones(Readings r, double against, String unit) {
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < r.tones().size(); c++) {
            double level = r.tones().get(c).levelDbfs();
            parts.add(
                    NAMES.get(c)
                            + (r.tones().get(c).isTone()
                                    ? " "
                                            + Decimals.signed(level - against, 2)
                                            + " dB "
                                            + unit
                                            + " ("
                                            + Decimals.of(level, 2)
                                            + " dBFS)"
                                    : " no tone"));
        }
        if (r.rightLessLeftDb() != null) {
            parts.add("right less left " + Decimals.signed(r.rightLessLeftDb(), 2) + " dB");
        }
        return String.join(", ", parts);
    }

    private static String k3(Readings r) {
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < r.tones().size(); c++) {
            parts.add(PictureTable.k3(r, c));
        }
        return ", K3 " + String.join(" and ", parts);
    }

    private static String below(Readings r) {
        List<String> parts = new ArrayList<>();
        r.bias().forEach(b -> parts.add(Decimals.of(b.belowDb(), 2) + " dB"));
        return ", below maximum " + String.join(" and ", parts);
    }

    private static String azimuth(PairReading p) {
        if (p == null || p.kind() == PairReading.Kind.UNRELATED) {
            return "delay between the channels unknown";
        }
        String line = "right late by " + Decimals.signed(p.delayMicroseconds(), 2) + " µs";
        if (p.kind() == PairReading.Kind.ONE_TONE) {
            line += " or whole periods of " + Decimals.of(p.periodMicroseconds(), 1) + " µs more";
        }
        return p.monoLossDb() == null
                ? line
                : line + ", mono sum " + Decimals.of(p.monoLossDb(), 2) + " dB at 10 kHz";
    }
}

package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/** Readings as plain lines: figures, and advice whenever it changes. */
public final class PlainLog {

    private final Wording wording;
    private final PictureTable table;
    private List<String> advice = List.of();
    private Delay delay = Delay.none();
    private List<NoiseReading> noise = List.of();

    /** In a wording. */
    public PlainLog(Wording wording) {
        this.wording = wording;
        this.table = new PictureTable(wording);
    }

    /** What is known besides the steady readings and has not been told yet. */
    public List<String> news(Readings r) {
        List<String> lines = new ArrayList<>();
        if (!r.noise().equals(noise)) {
            noise = r.noise();
            lines.add(noise(r));
        }
        if (!r.delay().equals(delay)) {
            delay = r.delay();
            lines.add(wording.say("lineup.log-delay", new DelayWords(wording).of(delay)));
        }
        return lines;
    }

    private String noise(Readings r) {
        double reference = r.desk().limits().referenceDbfs();
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < r.noise().size(); c++) {
            String all = table.noise(r.noise().get(c).unweightedDbfs(), reference);
            String weighted = table.noise(r.noise().get(c).aWeightedDbfs(), reference);
            parts.add(
                    all.equals(weighted)
                            ? wording.say("lineup.log-part", wording.channel(c), all)
                            : wording.say(
                                    "lineup.log-noise-part", wording.channel(c), all, weighted));
        }
        return wording.say("lineup.log-noise", String.join(", ", parts));
    }

    /** Sentences of what to turn, if they are others than before. */
    public List<String> advice(Readings r) {
        List<String> now = new Words(wording).of(r);
        if (now.equals(advice)) {
            return List.of();
        }
        advice = now;
        return now;
    }

    /** The figures of this moment in a line. */
    public String line(Readings r) {
        double sent = r.desk().levelDbfs();
        return switch (r.desk().view()) {
            case GAINS ->
                    wording.say("lineup.log-gains", tones(r, sent, "lineup.log-re-sent"), k3(r));
            case BIAS ->
                    wording.say("lineup.log-bias", tones(r, sent, "lineup.log-re-sent"), below(r));
            case TAPE ->
                    r.tapeHz() == null
                            ? wording.say("lineup.no-steady-tone")
                            : wording.hertz(r.tapeHz())
                                    + "  "
                                    + tones(
                                            r,
                                            r.desk().limits().targetDbfs(),
                                            "lineup.log-re-target");
            case AZIMUTH -> azimuth(r.pair());
        };
    }

    private String tones(Readings r, double against, String key) {
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < r.tones().size(); c++) {
            double level = r.tones().get(c).levelDbfs();
            parts.add(
                    r.tones().get(c).isTone()
                            ? wording.say(
                                    key,
                                    wording.channel(c),
                                    wording.signed(level - against, 2),
                                    wording.of(level, 2))
                            : wording.say(
                                    "lineup.log-part",
                                    wording.channel(c),
                                    wording.say("lineup.no-tone")));
        }
        if (r.rightLessLeftDb() != null) {
            parts.add(
                    wording.say(
                            "lineup.log-right-less-left", wording.signed(r.rightLessLeftDb(), 2)));
        }
        return String.join(", ", parts);
    }

    private String k3(Readings r) {
        List<String> parts = new ArrayList<>();
        for (int c = 0; c < r.tones().size(); c++) {
            parts.add(table.k3(r, c));
        }
        return and(parts);
    }

    private String below(Readings r) {
        List<String> parts = new ArrayList<>();
        r.bias().forEach(b -> parts.add(wording.of(b.belowDb(), 2) + " dB"));
        return and(parts);
    }

    private String and(List<String> parts) {
        return String.join(" " + wording.say("lineup.and") + " ", parts);
    }

    private String azimuth(PairReading p) {
        if (p == null || p.kind() == PairReading.Kind.UNRELATED) {
            return wording.say("lineup.log-unknown");
        }
        String late = wording.signed(p.delayMicroseconds(), 2);
        String line =
                p.kind() == PairReading.Kind.ONE_TONE
                        ? wording.say(
                                "lineup.log-periods", late, wording.of(p.periodMicroseconds(), 1))
                        : wording.say("lineup.log-late", late);
        return p.monoLossDb() == null
                ? line
                : wording.say("lineup.log-mono", line, wording.of(p.monoLossDb(), 2));
    }
}

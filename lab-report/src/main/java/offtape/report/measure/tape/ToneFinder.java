package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.report.measure.tone.FoundTone;
import offtape.report.measure.tone.ToneRange;
import offtape.report.measure.tone.ToneSearch;

/** Every steady tone of a recording, whatever lies between them. */
final class ToneFinder {

    private static final double HIGHEST_HZ = 21_600;

    /** Share of half the sample rate up to which tones are looked for. */
    private static final double HIGHEST_SHARE = 0.985;

    /** Looked at before and after what the search found. */
    private static final double AROUND_S = 0.5;

    /** Two finds of one frequency so close together are one tone with a dropout. */
    private static final double DROPOUT_S = 0.6;

    private static final double SAME_SHARE = 0.02;

    private final AudioSource recording;
    private final double from;
    private final double to;

    private ToneFinder(AudioSource recording, double from, double to) {
        this.recording = recording;
        this.from = from;
        this.to = Math.min(to, (double) recording.frames() / recording.sampleRateHz());
    }

    /** All tones in order of time. */
    static List<HeardTone> in(AudioSource recording, double from, double to) {
        return new ToneFinder(recording, from, to).all();
    }

    private List<HeardTone> all() {
        ToneRange range =
                new ToneRange(
                        0.35,
                        27,
                        Math.min(HIGHEST_HZ, HIGHEST_SHARE * recording.sampleRateHz() / 2),
                        0.008,
                        1,
                        0.7,
                        0.025,
                        1,
                        -105,
                        200);
        List<HeardTone> tones = read(ToneSearch.in(recording, range, from, to));
        return tones.isEmpty()
                ? read(ToneSearch.in(recording, range.withStanding(), from, to))
                : tones;
    }

    private List<HeardTone> read(ToneSearch search) {
        List<HeardTone> tones = new ArrayList<>();
        for (FoundTone run : joined(search.tones())) {
            double start = Math.max(from, run.fromSeconds() - AROUND_S);
            double end = Math.min(to, run.toSeconds() + AROUND_S);
            for (HeardTone tone : ToneReader.all(recording, start, end, run.frequencyHz())) {
                boolean isNew = tones.stream().noneMatch(t -> isSame(t, tone));
                if (isNew) {
                    tones.add(tone);
                }
            }
        }
        tones.sort(Comparator.comparingDouble(HeardTone::fromSeconds));
        return List.copyOf(tones);
    }

    /** Whether two finds are one: they sound at the same time. */
    private static boolean isSame(HeardTone a, HeardTone b) {
        double common =
                Math.min(a.toSeconds(), b.toSeconds()) - Math.max(a.fromSeconds(), b.fromSeconds());
        return common > 0.5 * Math.min(a.seconds(), b.seconds());
    }

    private static List<FoundTone> joined(List<FoundTone> runs) {
        List<FoundTone> all = new ArrayList<>();
        for (FoundTone run : runs) {
            FoundTone last = all.isEmpty() ? null : all.get(all.size() - 1);
            if (last != null
                    && run.fromSeconds() - last.toSeconds() <= DROPOUT_S
                    && run.isNear(last.frequencyHz(), SAME_SHARE)) {
                all.set(all.size() - 1, last.until(run));
            } else {
                all.add(run);
            }
        }
        return all;
    }
}

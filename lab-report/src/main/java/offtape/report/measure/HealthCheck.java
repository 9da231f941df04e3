package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import offtape.core.fault.Background;
import offtape.core.unit.Decibels;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.channel.CrosstalkMeasure;
import offtape.report.measure.channel.Polarity;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.HealthNote;
import offtape.report.result.Speed;

/** What the reader of the figures should know about the recording itself. */
final class HealthCheck {

    private static final double LOUD_DBFS = -6;
    private static final double QUIET_DBFS = -45;
    private static final double LARGE_DRIFT_PERCENT = 0.3;
    private static final double WEAK_DB = 10;

    /** So many samples in a row at one extreme value are taken for clipping. */
    private static final int CLIPPED_RUN = 4;

    private static final int BLOCK = 1 << 16;

    private final ProgrammeReturn ret;
    private final CompletableFuture<ClippingScan> clipping;
    private final List<HealthNote> notes = new ArrayList<>();

    /** Begins to read the whole recording, beside other work. */
    HealthCheck(ProgrammeReturn ret) {
        this.ret = ret;
        this.clipping = Background.start(this::scan);
    }

    /** All notes, the most severe first. */
    List<HealthNote> notes(
            ReferenceLevels reference, Speed speed, Polarity polarity, CrosstalkMeasure crosstalk) {
        notes.addAll(new PlaceNotes(ret).notes());
        levels(reference);
        clipping();
        polarity(polarity);
        if (crosstalk.swapped()) {
            add(
                    "warning",
                    "swapped-channels",
                    "Left and right are exchanged somewhere between programme and recording: figures"
                            + " named left are those of the right track. Exchange the cables or the"
                            + " channels of the recording.");
        }
        if (speed.drift().isKnown() && speed.drift().value() > LARGE_DRIFT_PERCENT) {
            add(
                    "warning",
                    "drift",
                    String.format(
                            Locale.ROOT,
                            "The speed drifts by %.2f %% over the speed tone: let the machine warm up,"
                                    + " then record again.",
                            speed.drift().value()));
        }
        notes.addAll(RecordingNotes.of(ret.recording()));
        notes.sort((a, b) -> rank(a.severity()) - rank(b.severity()));
        return notes;
    }

    private static int rank(String severity) {
        return List.of("blocking", "warning", "note").indexOf(severity);
    }

    private void add(String severity, String code, String message) {
        notes.add(new HealthNote(severity, code, message));
    }

    private void levels(ReferenceLevels reference) {
        if (reference == null) {
            add(
                    "blocking",
                    "no-reference",
                    "The recording holds no reference tone, so no level can be stated.");
            return;
        }
        weakChannel(reference);
        for (int c = 0; c < ret.channels(); c++) {
            String name = ProgrammeReturn.channelName(c);
            if (!reference.heard(c)) {
                add(
                        "blocking",
                        "dead-channel",
                        "The "
                                + name
                                + " channel is dead: the reference tone is not heard on it, or only as"
                                + " crosstalk of the other. Its figures are left out. Check cable,"
                                + " connector and track selector.");
                continue;
            }
            double dbfs = Decibels.ofAmplitude(reference.peaks()[c]);
            if (dbfs > LOUD_DBFS || dbfs < QUIET_DBFS) {
                add(
                        "warning",
                        dbfs > LOUD_DBFS ? "too-loud" : "too-quiet",
                        String.format(
                                Locale.ROOT,
                                "The reference tone returns at %.1f dBFS on the %s channel; it was sent"
                                        + " at %.1f dBFS. Set the input gain so that the two agree within"
                                        + " some decibels.",
                                dbfs,
                                name,
                                ret.sheet().referenceDbfs()));
            }
        }
    }

    private void weakChannel(ReferenceLevels reference) {
        if (ret.channels() < 2 || !reference.heard(0) || !reference.heard(1)) {
            return;
        }
        double db = Decibels.ofAmplitude(reference.peaks()[1] / reference.peaks()[0]);
        if (Math.abs(db) > WEAK_DB) {
            add(
                    "warning",
                    "weak-channel",
                    String.format(
                            Locale.ROOT,
                            "The %s channel returns the reference tone %.1f dB weaker than the other:"
                                    + " check its connections, the head and the level controls.",
                            ProgrammeReturn.channelName(db < 0 ? 1 : 0),
                            Math.abs(db)));
        }
    }

    private void polarity(Polarity polarity) {
        if (polarity.oddChannel() >= 0) {
            add(
                    "warning",
                    "opposite-channels",
                    "One channel comes back inverted against the other: check the wiring of the "
                            + ProgrammeReturn.channelName(polarity.oddChannel())
                            + " channel.");
        }
    }

    private ClippingScan scan() {
        long from = Math.round(ret.map().recordingSeconds(0) * ret.recording().sampleRateHz());
        double end = ret.map().recordingSeconds(ret.sheet().seconds(ret.sheet().frames()));
        long to = Math.round(end * ret.recording().sampleRateHz());
        ClippingScan scan = new ClippingScan(ret.channels(), CLIPPED_RUN);
        for (long n = Math.max(0, from); n < to; n += BLOCK) {
            scan.add(ret.recording().read(n, (int) Math.min(BLOCK, to - n)), n);
        }
        return scan;
    }

    private void clipping() {
        ClippingScan scan = Background.result(clipping);
        for (int c = 0; c < ret.channels(); c++) {
            if (scan.runs(c) > 0) {
                add(
                        "warning",
                        "clipping",
                        String.format(
                                Locale.ROOT,
                                "The %s channel is clipped in %d places, first at %.2f s, at %.1f dBFS:"
                                        + " the converter or a stage before it is overloaded, and its"
                                        + " distortion is in the figures. Lower the input gain.",
                                ProgrammeReturn.channelName(c),
                                scan.runs(c),
                                (double) scan.firstFrame(c) / ret.recording().sampleRateHz(),
                                Decibels.ofAmplitude(scan.level(c))));
            }
        }
    }
}

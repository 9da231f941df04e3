package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import offtape.core.fault.Background;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.channel.CrosstalkMeasure;
import offtape.report.measure.channel.Polarity;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.HealthNote;
import offtape.report.result.Speed;

/** What the reader of the figures should know about the recording itself. */
final class HealthCheck {

    private static final Sentences SAID = Sentences.near(HealthCheck.class);

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
            add("warning", "swapped-channels", SAID.say("swapped-channels"));
        }
        if (speed.drift().isKnown() && speed.drift().value() > LARGE_DRIFT_PERCENT) {
            add("warning", "drift", SAID.say("drift", speed.drift().value()));
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
            add("blocking", "no-reference", SAID.say("no-reference"));
            return;
        }
        elsewhere(reference);
        new SilentParts(ret, reference).note().ifPresent(notes::add);
        weakChannel(reference);
        for (int c = 0; c < ret.channels(); c++) {
            String name = ProgrammeReturn.channelName(c);
            if (!reference.heard(c)) {
                add("blocking", "dead-channel", SAID.say("channel-dead", name));
                continue;
            }
            double dbfs = Decibels.ofAmplitude(reference.peaks()[c]);
            if (dbfs > LOUD_DBFS || dbfs < QUIET_DBFS) {
                add(
                        "warning",
                        dbfs > LOUD_DBFS ? "too-loud" : "too-quiet",
                        SAID.say("reference-level", dbfs, name, ret.sheet().referenceDbfs()));
            }
        }
    }

    private void elsewhere(ReferenceLevels reference) {
        ReferenceLevels.wanted(ret)
                .filter(wanted -> !wanted.equals(reference.cue()))
                .ifPresent(
                        wanted ->
                                add(
                                        "warning",
                                        "reference-elsewhere",
                                        SAID.say(
                                                "reference-elsewhere",
                                                wanted.id(),
                                                at(wanted),
                                                reference.cue().frequencyHz(),
                                                at(reference.cue()))));
    }

    private double at(Cue.Tone tone) {
        return ret.map().recordingSeconds(ret.sheet().seconds(tone.startFrame()));
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
                    SAID.say(
                            "weak-channel",
                            ProgrammeReturn.channelName(db < 0 ? 1 : 0),
                            Math.abs(db)));
        }
    }

    private void polarity(Polarity polarity) {
        if (polarity.oddChannel() >= 0) {
            add(
                    "warning",
                    "opposite-channels",
                    SAID.say(
                            "opposite-channels",
                            ProgrammeReturn.channelName(polarity.oddChannel())));
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
                        SAID.say(
                                "clipping",
                                ProgrammeReturn.channelName(c),
                                scan.runs(c),
                                (double) scan.firstFrame(c) / ret.recording().sampleRateHz(),
                                Decibels.ofAmplitude(scan.level(c))));
            }
        }
    }
}

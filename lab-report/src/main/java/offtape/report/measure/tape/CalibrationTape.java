package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.standard.TimeConstants;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.channel.Azimuth;
import offtape.report.measure.speed.BareTone;
import offtape.report.result.Speed;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeTone;
import offtape.report.result.ToneLevel;

/** Reads a recording of a calibration tape. */
public final class CalibrationTape {

    private static final Sentences SAID = Sentences.near(CalibrationTape.class);

    private final AudioSource recording;
    private final TapeQuestion question;
    private final Naming naming;
    private final ReferenceTone reference;
    private final PairDelay pair;
    private final TapeSpeedReading speed;
    private final Azimuth azimuth;

    private CalibrationTape(AudioSource recording, TapeQuestion question, Naming naming) {
        this.recording = recording;
        this.question = question;
        this.naming = naming;
        this.reference = ReferenceTone.of(naming.tones());
        this.pair = PairDelay.of(naming.tones().stream().map(NamedTone::heard).toList());
        this.speed = TapeSpeedReading.of(naming, question);
        Quantity deviation = speed.deviation();
        double ratio = deviation.isKnown() ? 1 + deviation.value() / 100 : 1;
        this.azimuth = new Azimuth(question.tracks(), question.mmPerS(), ratio);
    }

    /**
     * Finds the steady tones in a recording and says what they tell. Memory does not grow with the
     * recording but with its tones, some megabytes an hour.
     *
     * @param fromSeconds where to begin in the recording
     * @param toSeconds where to stop at the latest
     * @throws UnusableInputException if there is no steady tone, or the tones do not fit what was
     *     said of them
     */
    public static TapeReading read(
            AudioSource recording, TapeQuestion question, double fromSeconds, double toSeconds) {
        List<HeardTone> heard = ToneFinder.in(recording, fromSeconds, toSeconds);
        if (heard.isEmpty()) {
            throw new UnusableInputException(SAID.say("no-tone", recording.name()));
        }
        return new CalibrationTape(
                        recording, question, Naming.of(heard, question, recording.name()))
                .reading();
    }

    private TapeReading reading() {
        TimeConstants tape = question.tapeConstants();
        TimeConstants machine = question.machine();
        ResponseTones response = ResponseTones.of(naming.tones(), reference);
        NamedTone forSpeed = speed.tone();
        return new TapeReading(
                TapeReading.FORMAT,
                TapeReading.VERSION,
                recording.name(),
                question.list() == null ? null : question.list().name(),
                recording.sampleRateHz(),
                recording.channels(),
                question.mmPerS(),
                naming.series(),
                reference.record(),
                response.zero() == null ? null : response.zero().record(),
                speed.deviation(),
                speed.from(),
                reference.tone().heard().difference(),
                pair.delay(),
                azimuth.of(pair.delay()),
                polarity(),
                tape == null ? null : tape.toString(),
                machine == null ? null : machine.toString(),
                naming.tones().stream().map(this::tone).toList(),
                response.curves(recording.channels(), tape, machine),
                forSpeed == null ? null : flutter(forSpeed),
                forSpeed == null ? null : (Integer) forSpeed.number(),
                notes(response));
    }

    /** Null if no tone is heard on both channels. */
    private String polarity() {
        if (naming.tones().stream().allMatch(t -> t.heard().phase() == null)) {
            return null;
        }
        return pair.isInverted() ? "inverted" : "normal";
    }

    private Speed flutter(NamedTone tone) {
        HeardTone heard = tone.heard();
        return BareTone.at(
                recording, heard.fromSeconds(), heard.toSeconds(), tone.nominalHz(), heard.hz());
    }

    private List<String> notes(ResponseTones response) {
        List<String> notes = new ArrayList<>(naming.notes());
        notes.addAll(new TapeNotes(recording, question, naming, pair).all());
        notes.addAll(TapeNotes.onResponse(response, question));
        return notes;
    }

    private TapeTone tone(NamedTone tone) {
        HeardTone heard = tone.heard();
        Quantity delay = pair.of(heard);
        return new TapeTone(
                tone.number(),
                heard.fromSeconds(),
                heard.toSeconds(),
                tone.frequency(),
                tone.nominalHz(),
                tone.deviation(),
                tone.listed() == null || tone.listed().purpose() == null
                        ? null
                        : tone.listed().purpose().word(),
                tone.recordedDb(),
                IntStream.range(0, recording.channels()).mapToObj(c -> level(c, heard)).toList(),
                heard.difference(),
                heard.phase() == null ? null : (Double) Math.toDegrees(heard.phase().radians()),
                delay,
                azimuth.of(delay),
                wander(heard),
                heard.leftOutSeconds());
    }

    private ToneLevel level(int channel, HeardTone heard) {
        Quantity level = heard.levels().get(channel);
        Quantity zero = reference.tone().heard().levels().get(channel);
        Quantity relative =
                !level.isKnown() || !zero.isKnown()
                        ? level.isKnown() ? zero : level
                        : Quantity.known(
                                level.value() - zero.value(),
                                "dB",
                                heard == reference.tone().heard()
                                        ? 0
                                        : Math.hypot(level.uncertainty(), zero.uncertainty()));
        return new ToneLevel(ProgrammeReturn.channelName(channel), level, relative);
    }

    private static Quantity wander(HeardTone heard) {
        HeardTone.Phase phase = heard.phase();
        if (phase == null) {
            return Quantity.unknown(SAID.say("not-on-both"));
        }
        double microseconds = 1e6 / (2 * Math.PI * heard.hz());
        if (!(phase.wander() > phase.wanderUncertainty())) {
            double limit = Math.sqrt(Math.max(0, phase.wander()) + phase.wanderUncertainty());
            return Quantity.unknown(
                    SAID.say("no-wander", Math.ceil(100 * microseconds * limit) / 100));
        }
        double rms = Math.sqrt(phase.wander());
        return Quantity.known(
                microseconds * rms, "µs", microseconds * phase.wanderUncertainty() / (2 * rms));
    }
}

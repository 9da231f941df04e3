package offtape.report.measure.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import offtape.core.fault.Background;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.core.standard.SampleClock;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.measure.line.FoundLine;
import offtape.report.result.Speed;
import offtape.report.result.SpeedFloors;
import offtape.report.result.WorstTenSeconds;

/** Every reading of speed from a demodulated tone. */
final class SpeedMeasure {

    private static final Sentences SAID = Sentences.near(SpeedMeasure.class);

    private static final String UNIT = "%";
    private static final double SHORTEST_FOR_DRIFT_S = 15;
    private static final double FLUTTER_HZ = 200;

    private static final double OWN_DRIFT_PERCENT = 1e-4;

    private static final Quantity TOO_SHORT = Quantity.unknown(SAID.say("short"));

    private final ToneStream tone;
    private final SpeedReader reader;
    private final ToneStream.Summary summary;
    private final NoiseFloor floor;
    private final SpeedLines lines;
    private final MeterReadings readings;
    private final List<FoundLine> found;
    private final List<String> notes;

    private SpeedMeasure(ToneStream tone, List<String> notes) {
        this.tone = tone;
        this.reader = new SpeedReader(Iec60386.atRate(tone.rateHz()), tone.samples());
        this.summary = tone.read(reader::next);
        reader.end();
        this.lines = reader.lines();
        CompletableFuture<List<FoundLine>> search = Background.start(lines::found);
        this.floor = new NoiseFloor(tone, summary.noiseDensity());
        this.readings = new MeterReadings(reader, floor, lines.meterDoubt(), seconds());
        this.found = Background.result(search);
        this.notes = new ArrayList<>(notes);
        addNotes();
    }

    /**
     * All readings; those of modulation are unknown if the tone is too short or too low for them.
     *
     * @param notes what is known of the tone already, plain sentences
     */
    static Speed of(ToneStream tone, List<String> notes) {
        return reading(tone, notes).speed();
    }

    /** As above, with the deviation itself. */
    static ToneReading reading(ToneStream tone, List<String> notes) {
        return new SpeedMeasure(tone, notes).reading();
    }

    private ToneReading reading() {
        return new ToneReading(
                speed(),
                new HeardDeviation(
                        reader.modulation(), tone.rateHz(), tone.bandHz(), floor::density, found));
    }

    private Speed speed() {
        double weightedFloor = floor.rms(FlutterBand.WEIGHTED);
        return new Speed(
                deviation(),
                drift(),
                ifLong(() -> readings.weightedPeak(reader.weightedPeak())),
                ifLong(readings::twoSigma),
                ifLong(() -> readings.rms(FlutterBand.WEIGHTED)),
                wide(readings::unweightedPeak),
                wide(() -> readings.rms(FlutterBand.UNWEIGHTED)),
                ifLong(() -> readings.rms(FlutterBand.WOW)),
                wide(() -> readings.rms(FlutterBand.FLUTTER)),
                Quantity.known(weightedFloor, UNIT, 0.2 * weightedFloor),
                tone.nominalHz(),
                lines.components(found),
                reader.trace(),
                lines.spectrum(),
                tone.firstSeconds(),
                seconds(),
                tone.bandHz(),
                wide(() -> readings.rms(FlutterBand.AMERICAN)),
                floors(),
                isLong() ? reader.readings() : null,
                worst(),
                notes);
    }

    private double seconds() {
        return tone.samples() / tone.rateHz();
    }

    private boolean isLong() {
        return Iec60386.atRate(tone.rateHz()).isLongEnough(tone.samples());
    }

    private boolean isWide() {
        return tone.bandHz() >= FLUTTER_HZ;
    }

    private Quantity ifLong(Supplier<Quantity> reading) {
        return isLong() ? reading.get() : TOO_SHORT;
    }

    /** A reading that needs the whole band up to 200 Hz. */
    private Quantity wide(Supplier<Quantity> reading) {
        if (!isWide()) {
            return Quantity.unknown(SAID.say("narrow", tone.bandHz()));
        }
        return ifLong(reading);
    }

    /** The recorder's clock is what a speed is measured with. */
    private Quantity deviation() {
        double clock = SampleClock.UNCERTAINTY * (100 + reader.mean());
        return Quantity.known(reader.mean(), UNIT, clock + reader.meanUncertainty());
    }

    private Quantity drift() {
        if (seconds() < SHORTEST_FOR_DRIFT_S) {
            return Quantity.unknown(SAID.say("no-drift"));
        }
        double drift = reader.drift();
        return Quantity.known(drift, UNIT, 2 * reader.driftDoubt() + OWN_DRIFT_PERCENT);
    }

    private SpeedFloors floors() {
        boolean wide = isWide();
        return new SpeedFloors(
                floor.weightedPeak(),
                floor.weightedTwoSigma(),
                floor.rms(FlutterBand.WEIGHTED),
                wide ? floor.unweightedPeak() : null,
                wide ? (Double) floor.rms(FlutterBand.UNWEIGHTED) : null,
                floor.rms(FlutterBand.WOW),
                wide ? (Double) floor.rms(FlutterBand.FLUTTER) : null,
                wide ? (Double) floor.rms(FlutterBand.AMERICAN) : null);
    }

    private WorstTenSeconds worst() {
        HalfSeconds halfSeconds = reader.halfSeconds();
        return halfSeconds.hasWorst()
                ? new WorstTenSeconds(
                        halfSeconds.worstFromSeconds(),
                        ifLong(() -> readings.weightedPeak(halfSeconds.worstPeak())),
                        ifLong(() -> readings.rms(halfSeconds.worstRms(), FlutterBand.WEIGHTED)))
                : null;
    }

    private void addNotes() {
        if (summary.gaps() > 0) {
            double seconds = summary.bridgedSeconds();
            notes.add(
                    summary.gaps() == 1
                            ? SAID.say("gap", seconds)
                            : SAID.say("gaps", summary.gaps(), seconds));
        }
        if (!isWide()) {
            notes.add(SAID.say("low-tone", tone.bandHz()));
        }
        if (seconds() > SpeedReader.LINES_S) {
            notes.add(SAID.say("first-minutes", SpeedReader.LINES_S / 60));
        }
    }
}

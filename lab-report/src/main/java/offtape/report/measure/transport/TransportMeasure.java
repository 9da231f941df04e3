package offtape.report.measure.transport;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.measure.line.FoundLine;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.measure.speed.SpeedReader;
import offtape.report.result.RateBand;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedSpectrum;
import offtape.report.result.TransportSpectrum;
import offtape.report.result.TransportSpeed;

/** Every reading of the transport's own speed, from a return off tape. */
public final class TransportMeasure {

    private static final Sentences SAID = Sentences.near(TransportMeasure.class);

    private static final String ESTIMATOR = SAID.say("estimator");

    private static final double FASTEST_HZ = 200;
    private final HeardDeviation heard;
    private final HeadDelay delay;
    private final TransportDeviation motion;
    private final Recovery recovery;
    private final SpeedReader reader;
    private final TransportReadings readings;

    private TransportMeasure(Iec60386 meter, HeardDeviation heard, HeadDelay delay) {
        this.heard = heard;
        this.delay = delay;
        this.motion = TransportDeviation.of(heard, delay.comb());
        this.recovery = new Recovery(motion.doubt(), motion.lines(), heard.lines(), heard.bandHz());
        this.reader = new SpeedReader(meter, heard.percent().length);
        reader.next(motion.percent());
        reader.end();
        this.readings = new TransportReadings(reader, recovery);
    }

    /**
     * Undoes the comb of a return and reads what comes out.
     *
     * @param meter for the rate of the deviation
     * @param heard the return's deviation
     * @param lines the same lines as in {@code heard}, in the words of the results
     * @param delay time from record to replay head
     * @param deviation why the mean speed cannot be known
     * @param heardMeanPercent mean of the return's deviation: two sample clocks, or a steady drift
     */
    public static TransportSpeed of(
            Iec60386 meter,
            HeardDeviation heard,
            List<SpeedComponent> lines,
            HeadDelay delay,
            Quantity deviation,
            double heardMeanPercent) {
        if (!meter.isLongEnough(heard.percent().length)) {
            return TransportSpeed.unknown(deviation, SAID.say("short"));
        }
        if (heard.seconds() < 8 * delay.seconds()) {
            return TransportSpeed.unknown(deviation, SAID.say("short-for-delay"));
        }
        return new TransportMeasure(meter, heard, delay).speed(lines, deviation, heardMeanPercent);
    }

    private TransportSpeed speed(
            List<SpeedComponent> lines, Quantity deviation, double heardMeanPercent) {
        return new TransportSpeed(
                deviation,
                TransportDrift.of(reader.drift(), delay, heard.seconds(), heardMeanPercent),
                readings.peak(FlutterBand.WEIGHTED, reader.weightedPeak()),
                readings.statistic(FlutterBand.WEIGHTED, reader.twoSigma()),
                readings.rms(FlutterBand.WEIGHTED),
                wide(readings.peak(FlutterBand.UNWEIGHTED, reader.unweightedPeak())),
                wide(readings.rms(FlutterBand.UNWEIGHTED)),
                readings.rms(FlutterBand.WOW),
                wide(readings.rms(FlutterBand.FLUTTER)),
                wide(readings.rms(FlutterBand.AMERICAN)),
                components(lines),
                Quantity.known(1000 * delay.seconds(), "ms", 2000 * delay.sigmaSeconds()),
                delay.found(),
                recovery.bands(),
                1 - readings.share(FlutterBand.WEIGHTED),
                ESTIMATOR,
                reader.trace(),
                spectrum(),
                notes());
    }

    private Quantity wide(Quantity reading) {
        return heard.bandHz() >= FASTEST_HZ
                ? reading
                : Quantity.unknown(SAID.say("narrow", heard.bandHz()));
    }

    private List<SpeedComponent> components(List<SpeedComponent> lines) {
        List<SpeedComponent> own = new ArrayList<>();
        for (UndoneLine line : motion.lines()) {
            own.add(
                    lines.get(heard.lines().indexOf(line.heard()))
                            .withPeak(line.peak(), line.peakUncertainty(delay.comb())));
        }
        own.sort(Comparator.comparingDouble(c -> -c.peakPercent()));
        return own;
    }

    /** The spectrum with what noise, delay and the finite tone leave uncertain of a line. */
    private TransportSpectrum spectrum() {
        SpeedSpectrum spectrum = reader.spectrum();
        double[] hz = spectrum.frequencyHz();
        double[] peak = spectrum.peakPercent();
        double[] uncertainty = new double[hz.length];
        CombDoubt doubt = motion.doubt();
        for (int i = 0; i < hz.length; i++) {
            double power = doubt.comb().power(hz[i]);
            double spoilt = doubt.finite() + doubt.comb().variance(hz[i]);
            double share = spoilt / (power + spoilt);
            double noise =
                    2 * doubt.noise().applyAsDouble(hz[i]) / (power + spoilt) / doubt.seconds();
            uncertainty[i] = 2 * Math.sqrt(peak[i] * peak[i] * share / (1 - share + 1e-3) + noise);
        }
        return new TransportSpectrum(hz, peak, uncertainty);
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>();
        List<RateBand> bands = recovery.bands();
        if (!bands.isEmpty()) {
            notes.add(recovered(bands));
        }
        for (FoundLine line : heard.lines()) {
            if (motion.lines().stream().noneMatch(l -> l.heard().equals(line))) {
                notes.add(SAID.say("line-hidden", line.middleHz()));
            }
        }
        return notes;
    }

    private String recovered(List<RateBand> bands) {
        double widest = 0;
        for (int i = 1; i < bands.size(); i++) {
            widest = Math.max(widest, bands.get(i).fromHz() - bands.get(i - 1).toHz());
        }
        double top = bands.get(bands.size() - 1).toHz();
        return SAID.say(
                "not-recovered",
                bands.get(0).fromHz(),
                Math.max(widest / 2, bands.get(0).fromHz()),
                1 / delay.seconds(),
                top);
    }
}

package offtape.report.apply.model;

import java.util.EnumSet;
import java.util.Set;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.PairPhaseCurve;
import offtape.report.result.Results;

/** Fits a model to the results of a session. */
public final class ModelFit {

    private static final String[] NAMES = {"left", "right"};
    private static final double MOST_REFERENCE_HZ = 2000;
    private static final double USUAL_REFERENCE_HZ = 1000;
    private static final double DELAY_FROM_HZ = 500;
    private static final double DELAY_TO_HZ = 5000;

    private final Results results;
    private final Channels pair;
    private final Set<ModelPart> known = EnumSet.noneOf(ModelPart.class);

    private ModelFit(Results results) {
        this.results = results;
        this.pair =
                results.channels() == null
                        ? Channels.unknown("The session tells nothing of the pair.")
                        : results.channels();
    }

    /** The model; parts of which nothing is known are left out, and its notes say so. */
    public static MachineModel of(Results results) {
        return new ModelFit(results).model();
    }

    private MachineModel model() {
        Magnitude[] heard = {magnitude(0), magnitude(1)};
        for (int c = 0; c < 2; c++) {
            heard[c] =
                    heard[c] != null
                            ? heard[c]
                            : heard[1 - c] != null ? heard[1 - c] : Magnitude.FLAT;
        }
        MotionModel motion = results.speed() == null ? null : MotionModel.heard(results.speed());
        ChannelModel[] channels = channels(heard, motion);
        LeakModel[] leaks = new LeakFit(pair).leaks();
        if (leaks[0] != null || leaks[1] != null) {
            known.add(ModelPart.CROSSTALK);
        }
        HissModel[] hiss = hiss();
        if (motion != null) {
            known.add(ModelPart.MOTION);
        }
        boolean phaseTold = heard[0].tellsPhase() && heard[1].tellsPhase();
        return new MachineModel(
                results.session(),
                channels,
                leaks,
                isInverted(),
                hiss,
                motion,
                known,
                new ModelNotes(results, known, phaseTold).all());
    }

    private Magnitude magnitude(int c) {
        Magnitude found = new MagnitudeFit(results, NAMES[c]).magnitude();
        if (found != null) {
            known.add(ModelPart.RESPONSE);
            if (!found.bent().curve().isStraight()) {
                known.add(ModelPart.SATURATION);
            }
        }
        return found;
    }

    private ChannelModel[] channels(Magnitude[] heard, MotionModel motion) {
        PhaseBasis[] bases = new PhaseBasis[2];
        for (int c = 0; c < 2; c++) {
            bases[c] = new PhaseBasis(heard[c].levelDb(), heard[c].electronicDb());
        }
        PairPhaseCurve difference = pair.phaseDifference();
        boolean opposite = PhaseFit.oppositeTurn(difference) != 0;
        PhaseFit fit = new PhaseFit(bases, valueOr(pair.interchannelDelay(), 0));
        for (int c = 0; c < 2; c++) {
            fit.hear(c, heard[c].harmonics(), heard[c].bent().emphasis());
            boolean turned = isInverted() != (c == 1 && opposite);
            if (heard[c].quiet() != null && motion != null) {
                fit.hear(c, heard[c].quiet(), motion.latenessSeconds(), turned);
            }
        }
        if (difference != null) {
            fit.hear(difference);
        }
        PhaseFit.Found found = fit.found();
        double[] tone = {heard[0].referenceDb(referenceHz()), heard[1].referenceDb(referenceHz())};
        // the balance is that of the reference tone, which each channel compresses as it does
        double[] gain = {0, valueOr(pair.balance(), tone[1] - tone[0]) - (tone[1] - tone[0])};
        ChannelModel[] channels = new ChannelModel[2];
        for (int c = 0; c < 2; c++) {
            channels[c] =
                    new ChannelModel(
                            NAMES[c],
                            heard[c].levelDb(),
                            found.phase()[c],
                            gain[c],
                            gain[c] + tone[c],
                            c == 1 && opposite,
                            (c - 0.5) * found.lateSeconds(),
                            heard[c].bent());
        }
        double delay = (delay(channels[0]) + delay(channels[1])) / 2;
        return new ChannelModel[] {channels[0].earlier(delay), channels[1].earlier(delay)};
    }

    private boolean isInverted() {
        return results.timing() != null && "inverted".equals(results.timing().polarity());
    }

    /** The reference tone is of the frequency of the ladder in the mids. */
    private double referenceHz() {
        return results.distortion().stream()
                .mapToDouble(Distortion::frequencyHz)
                .filter(hz -> hz < MOST_REFERENCE_HZ)
                .findFirst()
                .orElse(USUAL_REFERENCE_HZ);
    }

    private static double valueOr(Quantity quantity, double otherwise) {
        return quantity.isKnown() ? quantity.value() : otherwise;
    }

    private HissModel[] hiss() {
        HissModel[] both = new HissModel[2];
        for (Noise noise : results.noise()) {
            both["left".equals(noise.channel()) ? 0 : 1] = HissModel.of(noise);
        }
        if (both[0] == null && both[1] == null) {
            return null;
        }
        known.add(ModelPart.NOISE);
        both[0] = both[0] == null ? both[1] : both[0];
        both[1] = both[1] == null ? both[0] : both[1];
        return both;
    }

    /** Mean delay of the mids, seconds: what a user would call the machine's delay. */
    private static double delay(ChannelModel channel) {
        double along = 0;
        double size = 0;
        for (int i = 0; i < LogGrid.SIZE; i++) {
            double hz = LogGrid.hz(i);
            if (hz > DELAY_FROM_HZ && hz < DELAY_TO_HZ) {
                along -= hz * channel.phase()[i];
                size += 2 * Math.PI * hz * hz;
            }
        }
        return along / size;
    }
}

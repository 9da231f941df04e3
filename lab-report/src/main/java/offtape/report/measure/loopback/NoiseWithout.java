package offtape.report.measure.loopback;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.standard.Iec61260;
import offtape.core.standard.Iec61672;
import offtape.core.standard.ItuBs468;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.HumLine;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;

/**
 * The noise of one channel with the interface's own taken out. Independent noises add their powers,
 * so one is the sum less the other; of Gaussian noises that holds for a quasi-peak reading squared,
 * too. The interface's noise is held to stay as it is whatever comes back, as that of its input
 * does. Where the reference tone comes back at another level than in the loopback, its gain may
 * have been changed or the noise be that of its output; the uncertainty holds that.
 */
public final class NoiseWithout {

    private static final Sentences SAID = Sentences.near(NoiseWithout.class);

    /** Of more than this share of what was heard the rest is not told, only bounded. */
    private static final double MOST_SHARE = 0.8;

    private static final double LIMITING_SHARE = 0.5;

    /** A line of the interface within this of another is the same, Hz. */
    private static final double SAME_LINE_HZ = 0.3;

    private static final int THIRDS = 3;

    private final InterfaceFigures.Channel own;
    private final double offsetDb;
    private final List<InterfaceShare.Entry> entries = new ArrayList<>();

    /**
     * @param own the channel of the interface
     * @param referenceReturnDbfs level at which the reference tone comes back in the session
     */
    public NoiseWithout(InterfaceFigures.Channel own, double referenceReturnDbfs) {
        this.own = own;
        this.offsetDb = own.referenceReturnDbfs() - referenceReturnDbfs;
    }

    /** What the interface has in each figure that was given out. */
    public List<InterfaceShare.Entry> entries() {
        return List.copyOf(entries);
    }

    /**
     * The figures without the interface.
     *
     * @param heard with it
     * @param maximumOutputLevel of the channel, or unknown
     */
    public Noise of(Noise heard, Quantity maximumOutputLevel) {
        Quantity unweighted =
                figure(
                        SAID.say("noise-unweighted"),
                        heard.unweighted(),
                        own.unweighted(),
                        sway(heard, heard.unweighted(), f -> 0));
        Quantity a =
                figure(
                        SAID.say("noise-a-weighted"),
                        heard.aWeighted(),
                        own.aWeighted(),
                        sway(heard, heard.aWeighted(), Iec61672::aWeightingDb));
        return new Noise(
                heard.channel(),
                unweighted,
                a,
                figure(
                        SAID.say("noise-itu468"),
                        heard.itu468(),
                        own.itu468(),
                        sway(heard, heard.itu468(), ItuBs468::weightingDb)),
                range(a, heard.dynamicRange(), maximumOutputLevel),
                heard.hum().stream().map(this::line).toList(),
                spectrum(heard.spectrum()),
                heard.unweightedBandHz(),
                heard.mainsFrequency(),
                heard.humThreshold(),
                heard.modulationNoise(),
                heard.residue());
    }

    /**
     * What lines of the same mains may add to a power, or take from it, as a share of the power:
     * their phases are not known.
     */
    private double sway(Noise heard, Quantity figure, DoubleUnaryOperator weightDb) {
        double sum = 0;
        for (HumLine line : figure.isKnown() ? heard.hum() : List.<HumLine>of()) {
            double db = line.levelDb() + weightDb.applyAsDouble(line.frequencyHz());
            sum += 2 * ratio(line) * Decibels.toPower(db - figure.value());
        }
        return sum;
    }

    /** The interface's line over one that was heard, of amplitudes; 0 if it has none there. */
    private double ratio(HumLine heard) {
        return own.hum().stream()
                .filter(h -> Math.abs(h.frequencyHz() - heard.frequencyHz()) < SAME_LINE_HZ)
                .mapToDouble(h -> Decibels.toAmplitude(h.levelDb() + offsetDb - heard.levelDb()))
                .max()
                .orElse(0);
    }

    private Quantity figure(String name, Quantity heard, Quantity interfaceAlone, double sway) {
        if (!heard.isKnown() || !interfaceAlone.isKnown()) {
            return heard;
        }
        double ownDb = interfaceAlone.value() + offsetDb;
        double share = Decibels.toPower(ownDb - heard.value());
        entries.add(
                new InterfaceShare.Entry(
                        name,
                        own.channel(),
                        "dB",
                        ownDb,
                        heard.value(),
                        100 * Math.min(1, share),
                        share > LIMITING_SHARE,
                        SAID.say(share > MOST_SHARE ? "only-bound" : "taken-out")));
        double level = Decibels.toPower(Math.abs(offsetDb)) - 1;
        double doubt =
                Math.hypot(
                                relative(heard.uncertainty()),
                                share * Math.hypot(relative(interfaceAlone.uncertainty()), level))
                        + sway;
        return share > MOST_SHARE ? bound(heard, share, doubt) : less(heard, share, doubt);
    }

    /** A decibel uncertainty as a share of the power. */
    private static double relative(double db) {
        return Decibels.toPower(db) - 1;
    }

    private static Quantity less(Quantity heard, double share, double doubt) {
        double rest = 1 - share;
        double lower = Math.max(0.1, 1 - doubt / rest);
        return Quantity.known(
                heard.value() + Decibels.ofPower(rest), heard.unit(), -Decibels.ofPower(lower));
    }

    private static Quantity bound(Quantity heard, double share, double doubt) {
        double most = Math.min(1 + relative(heard.uncertainty()), Math.max(0, 1 - share) + doubt);
        return Quantity.unknown(
                SAID.say(
                        "noise-bound",
                        100 * Math.min(1, share),
                        heard.value(),
                        Math.ceil(10 * (heard.value() + Decibels.ofPower(most))) / 10));
    }

    private static Quantity range(Quantity a, Quantity heard, Quantity maximumOutputLevel) {
        if (!heard.isKnown() || !maximumOutputLevel.isKnown()) {
            return heard;
        }
        return a.isKnown()
                ? Quantity.known(
                        maximumOutputLevel.value() - a.value(),
                        "dB",
                        Math.hypot(maximumOutputLevel.uncertainty(), a.uncertainty()))
                : a;
    }

    /** The phase between two lines of the same mains is not known, so theirs may add or cancel. */
    private HumLine line(HumLine heard) {
        double ratio = ratio(heard);
        if (ratio == 0) {
            return heard;
        }
        entries.add(
                new InterfaceShare.Entry(
                        SAID.say("hum", heard.frequencyHz()),
                        own.channel(),
                        "dB",
                        heard.levelDb() + Decibels.ofAmplitude(ratio),
                        heard.levelDb(),
                        100 * Math.min(1, ratio),
                        ratio > LIMITING_SHARE,
                        SAID.say("in-uncertainty")));
        double sway = -Decibels.ofAmplitude(Math.max(0.1, 1 - ratio));
        return new HumLine(
                heard.frequencyHz(), heard.levelDb(), Math.hypot(heard.uncertaintyDb(), sway));
    }

    private NoiseSpectrum spectrum(NoiseSpectrum heard) {
        if (heard == null || own.noise() == null) {
            return heard;
        }
        double[] level = heard.levelDb().clone();
        for (int i = 0; i < level.length; i++) {
            double centre = heard.frequencyHz()[i];
            double power =
                    power(
                            Iec61260.lowerEdgeHz(centre, THIRDS),
                            Iec61260.upperEdgeHz(centre, THIRDS));
            double share = power * Decibels.toPower(offsetDb - level[i]);
            level[i] += Decibels.ofPower(Math.max(1 - MOST_SHARE, 1 - share));
        }
        return new NoiseSpectrum(heard.frequencyHz(), level);
    }

    /** Power of the interface's noise between two frequencies, re its reference tone. */
    private double power(double fromHz, double toHz) {
        double[] edges = own.noise().edgesHz();
        double sum = 0;
        for (int i = 0; i + 1 < edges.length; i++) {
            double width = Math.min(toHz, edges[i + 1]) - Math.max(fromHz, edges[i]);
            sum += Math.max(0, width) * Decibels.toPower(own.noise().levelDb()[i]);
        }
        return sum;
    }
}

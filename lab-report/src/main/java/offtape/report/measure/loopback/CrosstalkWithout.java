package offtape.report.measure.loopback;

import java.util.ArrayList;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;

/**
 * The crosstalk of a pair beside that of the interface, which is its floor: the two add with a
 * phase that is not known.
 */
public final class CrosstalkWithout {

    private static final Sentences SAID = Sentences.near(CrosstalkWithout.class);

    private static final double LIMITING_SHARE = 0.3;
    private static final double MOST_SHARE = 0.7;

    private final InterfaceFigures own;
    private final List<InterfaceShare.Entry> entries = new ArrayList<>();

    public CrosstalkWithout(InterfaceFigures own) {
        this.own = own;
    }

    /** What the interface has in each direction. */
    public List<InterfaceShare.Entry> entries() {
        return List.copyOf(entries);
    }

    /** The pair with the interface in its crosstalk's uncertainty. */
    public Channels of(Channels heard) {
        return heard.withCrosstalk(
                figure(
                        SAID.say("crosstalk-left-to-right"),
                        heard.crosstalkLeftToRight(),
                        own.crosstalkLeftToRight()),
                figure(
                        SAID.say("crosstalk-right-to-left"),
                        heard.crosstalkRightToLeft(),
                        own.crosstalkRightToLeft()));
    }

    private Quantity figure(String name, Quantity heard, Quantity floor) {
        if (!heard.isKnown() || !floor.isKnown()) {
            return heard;
        }
        double ratio = Decibels.toAmplitude(floor.value() - heard.value());
        entries.add(
                new InterfaceShare.Entry(
                        name,
                        null,
                        "dB",
                        floor.value(),
                        heard.value(),
                        100 * Math.min(1, ratio),
                        ratio > LIMITING_SHARE,
                        SAID.say(ratio > MOST_SHARE ? "only-bound" : "in-uncertainty")));
        if (ratio > MOST_SHARE) {
            return Quantity.unknown(
                    SAID.say(
                            "crosstalk-bound",
                            heard.value(),
                            floor.value(),
                            heard.value() + Decibels.ofAmplitude(1 + ratio)));
        }
        double sway = -Decibels.ofAmplitude(1 - ratio);
        return Quantity.known(heard.value(), heard.unit(), Math.hypot(heard.uncertainty(), sway));
    }
}

package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.CrosstalkWithout;
import offtape.report.measure.loopback.DistortionWithout;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.loopback.NoiseWithout;
import offtape.report.measure.loopback.ResponseShare;
import offtape.report.measure.sweep.SweepResponses;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** Takes a known interface out of the results of a session. */
final class WithoutInterface {

    private static final Sentences SAID = Sentences.near(WithoutInterface.class);

    private final KnownInterface known;
    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;
    private final List<InterfaceShare.Entry> entries = new ArrayList<>();

    /**
     * @param reference the reference tone, or null if it was not found
     */
    WithoutInterface(KnownInterface known, ProgrammeReturn ret, ReferenceLevels reference) {
        this.known = known;
        this.ret = ret;
        this.reference = reference;
    }

    /**
     * The results without the interface. Delays are those of {@link
     * offtape.report.measure.mode.ModeFigures}, the delay between the channels that of {@link
     * offtape.report.measure.channel.ChannelMeasure}, which have it out already.
     */
    Results of(Results heard) {
        List<Response> responses = SweepResponses.without(known, ret, heard.response());
        List<InterfaceShare.ChannelCurve> curves = curves();
        entries.addAll(ResponseShare.entries(known, responses));
        List<Distortion> ladders = heard.distortion().stream().map(this::ladder).toList();
        List<Noise> noises = heard.noise().stream().map(n -> noise(n, ladders)).toList();
        CrosstalkWithout crosstalk = new CrosstalkWithout(known.figures());
        Channels pair = crosstalk.of(heard.channels());
        entries.addAll(crosstalk.entries());
        delays(heard);
        InterfaceShare share = new InterfaceShare(entries, curves);
        List<HealthNote> health = new ArrayList<>(heard.health());
        health.addAll(InterfaceNotes.of(known, share, heard.session().mode(), levelChanges()));
        return new Results(
                heard.format(),
                heard.version(),
                heard.session().withLoopback(known.use()),
                heard.timing(),
                heard.speed(),
                responses,
                ladders,
                noises,
                pair,
                heard.dropouts(),
                health,
                heard.verdict(),
                heard.dropoutSummary(),
                null,
                share,
                heard.losses());
    }

    private List<InterfaceShare.ChannelCurve> curves() {
        List<InterfaceShare.ChannelCurve> curves = new ArrayList<>();
        for (InterfaceFigures.Channel c : known.figures().channels()) {
            if (c.response() != null) {
                curves.add(
                        new InterfaceShare.ChannelCurve(
                                c.channel(),
                                c.response().frequencyHz(),
                                c.response().magnitudeDb()));
            }
        }
        return curves;
    }

    private Distortion ladder(Distortion heard) {
        Optional<InterfaceFigures.Channel> own = known.channel(heard.channel());
        if (own.isEmpty()) {
            return heard;
        }
        DistortionWithout without = new DistortionWithout(own.get());
        Distortion result = without.of(heard);
        entries.addAll(without.entries());
        return result;
    }

    private Noise noise(Noise heard, List<Distortion> ladders) {
        Optional<InterfaceFigures.Channel> own = known.channel(heard.channel());
        int channel = heard.channel().equals(ProgrammeReturn.channelName(0)) ? 0 : 1;
        if (own.isEmpty() || reference == null || !reference.heard(channel)) {
            return heard;
        }
        NoiseWithout without =
                new NoiseWithout(own.get(), Decibels.ofAmplitude(reference.peaks()[channel]));
        Noise result = without.of(heard, maximumOutputLevel(heard.channel(), ladders));
        entries.addAll(without.entries());
        return result;
    }

    private static Quantity maximumOutputLevel(String channel, List<Distortion> ladders) {
        return ladders.stream()
                .filter(d -> d.channel().equals(channel) && d.maximumOutputLevel().isKnown())
                .map(Distortion::maximumOutputLevel)
                .findFirst()
                .orElseGet(() -> Quantity.unknown(SAID.say("no-maximum")));
    }

    private void delays(Results heard) {
        InterfaceFigures own = known.figures();
        if (own.delay().isKnown()) {
            boolean out = heard.timing().headDelay().isKnown();
            entries.add(
                    new InterfaceShare.Entry(
                            SAID.say("figure-delay"),
                            null,
                            "ms",
                            own.delay().value(),
                            heard.timing().delay().value(),
                            null,
                            false,
                            SAID.say(out ? "taken-out-of-heads" : "stays-in-delay")));
        }
        if (own.interchannelDelay().isKnown() && heard.channels().interchannelDelay().isKnown()) {
            entries.add(
                    new InterfaceShare.Entry(
                            SAID.say("figure-interchannel-delay"),
                            null,
                            "µs",
                            own.interchannelDelay().value(),
                            heard.channels().interchannelDelay().value()
                                    + own.interchannelDelay().value(),
                            null,
                            false,
                            SAID.say("taken-out")));
        }
    }

    /** By how much the reference tone comes back otherwise than in the loopback, dB, a channel. */
    private List<InterfaceNotes.LevelChange> levelChanges() {
        List<InterfaceNotes.LevelChange> changes = new ArrayList<>();
        for (int c = 0; c < ret.channels(); c++) {
            String name = ProgrammeReturn.channelName(c);
            Optional<InterfaceFigures.Channel> own = known.channel(name);
            if (own.isPresent() && reference != null && reference.heard(c)) {
                double db = Decibels.ofAmplitude(reference.peaks()[c]);
                changes.add(
                        new InterfaceNotes.LevelChange(name, db - own.get().referenceReturnDbfs()));
            }
        }
        return changes;
    }
}

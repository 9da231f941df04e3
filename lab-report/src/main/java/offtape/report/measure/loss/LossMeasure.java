package offtape.report.measure.loss;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import offtape.core.fault.Background;
import offtape.core.text.Sentences;
import offtape.report.result.Channels;
import offtape.report.result.LossFit;
import offtape.report.result.Response;
import offtape.report.result.Session;

/**
 * Causes of loss from measured responses: every set of causes is fitted to the quietest sweep of a
 * channel, and the sets are weighed against each other.
 */
public final class LossMeasure {

    private static final Sentences SAID = Sentences.near(LossMeasure.class);

    /** Up to this share of the sample rate a recorder's own filter takes nothing away. */
    private static final double RECORDER_SHARE = 0.45;

    private final Session session;
    private final Channels channels;
    private final double rateHz;

    /**
     * @param channels the pair, whose delay bears witness of azimuth
     * @param rateHz sample rate of programme or recording, the lower one
     */
    public LossMeasure(Session session, Channels channels, double rateHz) {
        this.session = session;
        this.channels = channels;
        this.rateHz = rateHz;
    }

    /** A fit for each channel of which there is a response. */
    public List<LossFit> measure(List<Response> responses) {
        return Background.each(
                Stream.of("left", "right").flatMap(c -> quietest(responses, c)).toList(),
                this::fit);
    }

    private static Stream<Response> quietest(List<Response> responses, String channel) {
        return responses.stream()
                .filter(r -> r.channel().equals(channel))
                .min(Comparator.comparingDouble(Response::levelDb))
                .stream();
    }

    private LossFit fit(Response response) {
        Double speed = session.tapeSpeedMmPerS();
        if ("loopback".equals(session.mode())) {
            return LossFit.unknown(response.channel(), SAID.say("no-tape"));
        }
        if (speed == null) {
            return LossFit.unknown(response.channel(), SAID.say("no-speed"));
        }
        LossCurve curve = LossCurve.of(response, RECORDER_SHARE * rateHz);
        if (curve == null) {
            return LossFit.unknown(response.channel(), SAID.say("too-little"));
        }
        Witness witness = Witness.of(channels.interchannelDelay(), session.tracks(), speed);
        Optional<Weighing> weighing = Weighing.of(curve, speed, rateHz, witness);
        return weighing.map(w -> new LossReport(w, response, session).fit())
                .orElseGet(() -> LossFit.unknown(response.channel(), SAID.say("too-little")));
    }
}

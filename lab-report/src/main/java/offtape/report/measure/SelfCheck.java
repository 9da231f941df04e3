package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.unit.Decibels;
import offtape.report.result.HealthNote;
import offtape.report.result.Response;

/** Holds the response from the sweep against steady tones of the same level. */
final class SelfCheck {

    private static final double MARGIN_S = 0.06;

    /** Tones within this of the sweep's level are compared with it, dB. */
    private static final double SAME_LEVEL_DB = 0.5;

    /** Room beyond the stated uncertainty for short tones under wow and hiss, dB. */
    private static final double TONE_UNCERTAINTY_DB = 0.15;

    private final ProgrammeReturn ret;

    SelfCheck(ProgrammeReturn ret) {
        this.ret = ret;
    }

    /** One warning a disagreement, or a single note that all agree; none without check tones. */
    List<HealthNote> notes(List<Response> responses) {
        List<HealthNote> notes = new ArrayList<>();
        int compared = 0;
        double worst = 0;
        for (Response r : responses) {
            int channel = r.channel().equals(ProgrammeReturn.channelName(0)) ? 0 : 1;
            for (Difference d : differences(r, channel)) {
                compared++;
                worst = Math.max(worst, Math.abs(d.db()));
                if (Math.abs(d.db()) > d.allowedDb()) {
                    notes.add(
                            new HealthNote(
                                    "warning",
                                    "sweep-and-tones-differ",
                                    String.format(
                                            Locale.ROOT,
                                            "At %.0f Hz on the %s channel the steady tone reads %+.2f dB"
                                                    + " against the sweep: something changed between the two"
                                                    + " (dropout, drift of level), or a limiter or noise"
                                                    + " reduction is on.",
                                            d.hz(),
                                            r.channel(),
                                            d.db())));
                }
            }
        }
        if (compared > 0 && notes.isEmpty()) {
            notes.add(
                    new HealthNote(
                            "note",
                            "self-check",
                            String.format(
                                    Locale.ROOT,
                                    "Sweep and steady tones agree within %.2f dB in %d comparisons.",
                                    worst,
                                    compared)));
        }
        return notes;
    }

    private record Difference(double hz, double db, double allowedDb) {}

    private List<Difference> differences(Response response, int channel) {
        List<Cue.Tone> tones =
                ret.cues(Cue.Tone.class).stream()
                        .filter(t -> t.channels() == ChannelSet.BOTH)
                        .filter(t -> Math.abs(t.levelDb() - response.levelDb()) < SAME_LEVEL_DB)
                        .toList();
        List<Difference> result = new ArrayList<>();
        Double zero = null;
        for (Cue.Tone t : tones) {
            if (Math.abs(t.frequencyHz() - 1000) < 1) {
                zero = levelDb(t, channel);
            }
        }
        for (Cue.Tone t : tones) {
            Double level = zero == null ? null : levelDb(t, channel);
            double[] hz = response.frequencyHz();
            if (level != null && t.frequencyHz() > hz[0] && t.frequencyHz() < hz[hz.length - 1]) {
                int i = 0;
                while (hz[i + 1] < t.frequencyHz()) {
                    i++;
                }
                double part = Math.log(t.frequencyHz() / hz[i]) / Math.log(hz[i + 1] / hz[i]);
                double sweep =
                        response.magnitudeDb()[i] * (1 - part)
                                + response.magnitudeDb()[i + 1] * part;
                double allowed = 2 * response.uncertaintyDb()[i] + TONE_UNCERTAINTY_DB;
                result.add(new Difference(t.frequencyHz(), level - zero - sweep, allowed));
            }
        }
        return result;
    }

    private Double levelDb(Cue.Tone t, int channel) {
        double hz = t.frequencyHz() * ret.speedRatio(t.startFrame(), t.frames());
        List<OrderSpectrum> orders =
                OrderSpectrum.of(
                        ret.recording(), ret.span(t.startFrame(), t.frames(), MARGIN_S), hz);
        if (orders.isEmpty()) {
            return null;
        }
        double noise = orders.get(channel).noise(1);
        double own = orders.get(channel).power(1) - noise;
        return own > 100 * noise ? Decibels.ofPower(own) - t.levelDb() : null;
    }
}

package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import offtape.core.fault.Background;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.OrderSpectrum;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.HealthNote;
import offtape.report.result.Response;

/**
 * Holds the figures of a session against each other: the response from the sweep against steady
 * tones of the same level, the two channels, and the first marker against the last.
 */
final class SelfCheck {

    private static final Sentences SAID = Sentences.near(SelfCheck.class);

    /** Longer tones serve other ends and are left out. */
    private static final double LONGEST_S = 10;

    /** Tones within this of the sweep's level are compared with it, dB. */
    private static final double SAME_LEVEL_DB = 0.5;

    /** Room beyond the stated uncertainty for short tones under wow and hiss, dB. */
    private static final double TONE_UNCERTAINTY_DB = 0.15;

    private final ProgrammeReturn ret;
    private final List<Heard> tones;
    private final List<PairReading> pair;

    /** Measures the tones on both channels once; they are compared with every sweep. */
    SelfCheck(ProgrammeReturn ret) {
        this.ret = ret;
        List<Cue.Tone> brief =
                ret.cues(Cue.Tone.class).stream()
                        .filter(t -> t.channels() == ChannelSet.BOTH)
                        .filter(t -> ret.sheet().seconds(t.frames()) <= LONGEST_S)
                        .toList();
        this.tones = Background.each(brief, t -> new Heard(t, OrderSpectrum.of(ret, t)));
        this.pair = pair();
    }

    /** The channels on every tone, and on the steps of ladders that sound at a level of a tone. */
    private List<PairReading> pair() {
        Stream<Heard> steps =
                ret.cues(Cue.Ladder.class).stream()
                        .filter(l -> l.channels() == ChannelSet.BOTH)
                        .flatMap(ReferenceLevels::steps)
                        .filter(
                                s ->
                                        tones.stream()
                                                .map(Heard::tone)
                                                .filter(t -> t.frequencyHz() == s.frequencyHz())
                                                .anyMatch(t -> t.levelDb() == s.levelDb()))
                        .map(s -> new Heard(s, OrderSpectrum.of(ret, s)));
        return Stream.concat(tones.stream(), steps)
                .flatMap(
                        h -> {
                            long middle = h.tone().startFrame() + h.tone().frames() / 2;
                            double at = ret.sheet().seconds(middle);
                            return PairReading.of(h.tone(), at, h.orders()).stream();
                        })
                .toList();
    }

    /**
     * What channels and markers say of themselves. A dead channel has no level, and no pair is left
     * with it, but its fellow's markers still tell the time.
     *
     * @param wander of the delay between the channels, µs rms
     * @param reference the reference tone, or null if it was not found: then time alone is told
     */
    List<HealthNote> ofTake(Quantity wander, ReferenceLevels reference) {
        boolean known = reference != null;
        List<HealthNote> notes = new ArrayList<>();
        if (known && reference.deadChannel() < 0) {
            double wanderUs = wander.isKnown() ? wander.value() : 0;
            notes.addAll(new PairCheck(pair, wanderUs).notes());
        }
        notes.addAll(TakeCheck.notes(ret, c -> known && c != reference.deadChannel()));
        return notes;
    }

    /**
     * A tone as it was heard.
     *
     * @param orders one entry a channel, or none if it was not heard
     */
    private record Heard(Cue.Tone tone, List<OrderSpectrum> orders) {

        /** Level on a channel less the programme's, the leak taken out, dB; NaN if not clear. */
        double levelDb(int channel, Leakage leakage) {
            if (orders.isEmpty()) {
                return Double.NaN;
            }
            OrderSpectrum own = orders.get(channel);
            double amplitude = own.fundamental().size();
            if (orders.size() > 1) {
                Complex other = orders.get(1 - channel).fundamental();
                amplitude =
                        leakage.unmixedAmplitude(
                                        channel, own.fundamental(), other, tone.frequencyHz())
                                .size();
            }
            double power = amplitude * amplitude - own.noise(1);
            boolean clear = power > 100 * own.noise(1);
            return clear ? Decibels.ofPower(power) - tone.levelDb() : Double.NaN;
        }
    }

    /** One warning a disagreement, or a single note that all agree; none without check tones. */
    List<HealthNote> notes(List<Response> responses, Leakage leakage) {
        List<HealthNote> notes = new ArrayList<>();
        int compared = 0;
        double worst = 0;
        for (Response r : responses) {
            int channel = r.channel().equals(ProgrammeReturn.channelName(0)) ? 0 : 1;
            for (Difference d : differences(r, channel, leakage)) {
                compared++;
                worst = Math.max(worst, Math.abs(d.db()));
                if (Math.abs(d.db()) > d.allowedDb()) {
                    notes.add(
                            new HealthNote(
                                    "warning",
                                    "sweep-and-tones-differ",
                                    SAID.say(
                                            "sweep-and-tones-differ",
                                            d.hz(),
                                            r.channel(),
                                            d.db())));
                }
            }
        }
        if (compared > 0 && notes.isEmpty()) {
            notes.add(
                    new HealthNote("note", "self-check", SAID.say("self-check", worst, compared)));
        }
        return notes;
    }

    private record Difference(double hz, double db, double allowedDb) {}

    private List<Difference> differences(Response response, int channel, Leakage leakage) {
        double[] hz = response.frequencyHz();
        if (hz.length == 0) {
            // all of the sweep lies below the noise or what leaks in
            return List.of();
        }
        List<Heard> same =
                tones.stream()
                        .filter(
                                h ->
                                        Math.abs(h.tone().levelDb() - response.levelDb())
                                                < SAME_LEVEL_DB)
                        .filter(h -> Double.isFinite(h.levelDb(channel, leakage)))
                        .toList();
        OptionalDouble zero =
                same.stream()
                        .filter(h -> Math.abs(h.tone().frequencyHz() - 1000) < 1)
                        .mapToDouble(h -> h.levelDb(channel, leakage))
                        .findFirst();
        List<Difference> result = new ArrayList<>();
        for (Heard h : same) {
            double f = h.tone().frequencyHz();
            if (zero.isPresent() && f > hz[0] && f < hz[hz.length - 1]) {
                result.add(
                        difference(response, f, h.levelDb(channel, leakage) - zero.getAsDouble()));
            }
        }
        return result;
    }

    private static Difference difference(Response response, double f, double toneDb) {
        double[] hz = response.frequencyHz();
        int i = 0;
        while (hz[i + 1] < f) {
            i++;
        }
        double part = Math.log(f / hz[i]) / Math.log(hz[i + 1] / hz[i]);
        double sweepDb =
                response.magnitudeDb()[i] * (1 - part) + response.magnitudeDb()[i + 1] * part;
        double allowedDb = 2 * response.uncertaintyDb()[i] + TONE_UNCERTAINTY_DB;
        return new Difference(f, toneDb - sweepDb, allowedDb);
    }
}

package offtape.report.apply.correct;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.Programme;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import offtape.report.apply.level.LevelReading;
import offtape.report.apply.level.OperatingLevels;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** From the results of a session to what to do before recording on its machine. */
public final class Corrector {

    private static final Sentences SAID = Sentences.near(Corrector.class);

    private static final List<String> CHANNELS = List.of("left", "right");
    private static final int USUAL_RATE_HZ = 48_000;
    private static final double MIDDLE_HZ = 1000;
    private static final int FEWEST_POINTS = 24;
    private static final double FROM_HZ = 40;
    private static final double TO_HZ = 15_000;

    private final Results results;
    private final String place;
    private final CorrectionWish wish;
    private final Curve target;
    private final BoostLimit limit;
    private final List<Response> responses;
    private final Map<String, Curve> gains = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();

    /**
     * Works the correction out.
     *
     * @param results of the session
     * @param place where they are from, for messages
     * @throws UnusableInputException if the session or the target cannot be used for it
     */
    public Corrector(Results results, String place, CorrectionWish wish) {
        this.results = results;
        this.place = place;
        this.wish = wish;
        if (CaptureMode.LOOPBACK.key().equals(results.session().mode())) {
            throw new UnusableInputException(SAID.say("session.loopback", place));
        }
        target = wish.target() == null ? TargetCurve.flat() : TargetCurve.read(wish.target());
        limit = new BoostLimit(wish.mostBoostDb(), wish.mostCutDb());
        responses = quietest();
        requireTarget();
        design();
    }

    private List<Response> quietest() {
        List<Response> found = new ArrayList<>();
        for (String channel : CHANNELS) {
            results.response().stream()
                    .filter(r -> r.channel().equals(channel))
                    .filter(Corrector::tellsCurve)
                    .min(Comparator.comparingDouble(Response::levelDb))
                    .ifPresent(found::add);
        }
        if (found.isEmpty()) {
            throw new UnusableInputException(SAID.say("session.no-response", place));
        }
        if (found.size() == 1) {
            notes.add(SAID.say("note.one-channel", found.get(0).channel()));
        }
        return found;
    }

    private static boolean tellsCurve(Response r) {
        double[] hz = r.frequencyHz();
        return hz.length >= FEWEST_POINTS && hz[0] < MIDDLE_HZ && hz[hz.length - 1] > MIDDLE_HZ;
    }

    private void requireTarget() {
        if (wish.target() == null) {
            return;
        }
        for (Response r : responses) {
            double first = r.frequencyHz()[0];
            double last = r.frequencyHz()[r.frequencyHz().length - 1];
            if (target.firstHz() >= last || target.lastHz() <= first) {
                throw new UnusableInputException(
                        SAID.say("target.outside", wish.target(), first, last));
            }
        }
    }

    private void design() {
        List<MeasuredCurve> curves = responses.stream().map(MeasuredCurve::of).toList();
        boolean common = wish.sameFilter() && curves.size() == 2;
        Curve mean =
                common
                        ? WantedGain.of(
                                MeasuredCurve.mean(curves.get(0), curves.get(1)), target, limit)
                        : null;
        for (int c = 0; c < curves.size(); c++) {
            gains.put(
                    responses.get(c).channel(),
                    common ? mean : WantedGain.of(curves.get(c), target, limit));
        }
        if (wish.target() != null) {
            noteEnds();
        }
        if (CaptureMode.REFERENCE_TAPE.key().equals(results.session().mode())) {
            notes.add(SAID.say("note.reference-tape"));
        }
        Quantity deviation = results.speed() == null ? null : results.speed().deviation();
        if (deviation != null && deviation.isKnown() && Math.abs(deviation.value()) > 1) {
            notes.add(SAID.say("note.off-speed", deviation.value()));
        }
    }

    private void noteEnds() {
        Response r = responses.get(0);
        double last = r.frequencyHz()[r.frequencyHz().length - 1];
        if (target.firstHz() < r.frequencyHz()[0] || target.lastHz() > last) {
            notes.add(SAID.say("note.target-beyond"));
        }
    }

    /**
     * The whole correction.
     *
     * @param others further sessions of the machine, at other speeds or on other tapes
     */
    public Correction correction(List<Results> others) {
        ChannelDesign design = new ChannelDesign(target, limit, wish.bands());
        List<ChannelCorrection> channels =
                responses.stream().map(r -> design.of(r, gains.get(r.channel()))).toList();
        List<FilterFile> filters = rates().stream().map(r -> FilterSet.of(gains, r)).toList();
        List<OperatingLevels> levels = new ArrayList<>();
        levels.add(LevelReading.of(results, wish.k3Percent()));
        others.forEach(o -> levels.add(LevelReading.of(o, wish.k3Percent())));
        return new Correction(
                Correction.FORMAT,
                Correction.VERSION,
                results.session(),
                wish.target() == null ? null : wish.target().getFileName().toString(),
                wish.mostBoostDb(),
                wish.mostCutDb(),
                wish.sameFilter(),
                channelsDiffer(),
                filters.stream().mapToDouble(FilterFile::peakGainDb).max().orElse(0),
                filters.stream().mapToDouble(FilterFile::boundDb).max().orElse(0),
                channels,
                filters,
                perChannel(c -> NoiseBehindFilter.of(c, noise(c), gains.get(c))),
                perChannel(c -> HeadroomCheck.of(results, c, gains.get(c))),
                levels,
                null,
                null,
                notes);
    }

    private <T> List<T> perChannel(java.util.function.Function<String, T> figure) {
        return responses.stream().map(Response::channel).map(figure).toList();
    }

    private List<Integer> rates() {
        if (!wish.ratesHz().isEmpty()) {
            return wish.ratesHz();
        }
        Integer own = results.session().recordingSampleRate();
        return List.of(own == null ? USUAL_RATE_HZ : own);
    }

    private Noise noise(String channel) {
        return results.noise().stream()
                .filter(n -> n.channel().equals(channel))
                .findFirst()
                .orElse(null);
    }

    private Quantity channelsDiffer() {
        if (responses.size() < 2) {
            return Quantity.unknown(SAID.say("session.one-channel"));
        }
        MeasuredCurve left = MeasuredCurve.of(responses.get(0));
        Curve right = MeasuredCurve.of(responses.get(1)).curve();
        Curve doubt = new Curve(right.hz(), responses.get(1).uncertaintyDb());
        double most = 0;
        double sure = 0;
        for (int i = 0; i < left.hz().length; i++) {
            double hz = left.hz()[i];
            double off = Math.abs(left.db()[i] - right.at(hz));
            if (hz >= FROM_HZ && hz <= TO_HZ && off >= most) {
                most = off;
                sure = Math.hypot(left.uncertaintyDb()[i], doubt.at(hz));
            }
        }
        return Quantity.known(most, "dB", sure);
    }

    /**
     * A programme held against the headroom.
     *
     * @throws UnusableInputException if the session does not tell its reference level, or the sound
     *     is empty
     */
    public MusicCheck music(AudioSource music) {
        Double reference = results.session().referenceDbfs();
        if (reference == null) {
            throw new UnusableInputException(SAID.say("music.no-reference", place, music.name()));
        }
        if (music.frames() < 1) {
            throw new UnusableInputException(SAID.say("music.no-sound", music.name()));
        }
        return MusicReading.of(results, gains, music, reference);
    }

    /**
     * The correction tried on a simulated machine.
     *
     * @param correction made by this
     * @param name of the machine's description
     */
    public Verification verification(
            Correction correction, Programme programme, MachineSpec spec, String name) {
        FilterFile filter = FilterSet.of(gains, programme.audio().sampleRateHz());
        return MachineTrial.of(correction, filter, programme, spec, name);
    }
}

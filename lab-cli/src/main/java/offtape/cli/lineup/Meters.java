package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Reads what a view shows from the last stretch of the return. */
final class Meters {

    private final int sampleRateHz;
    private final PairMeter pairs;
    private ToneMeter tone;
    private List<ToneReading> tones = List.of();
    private Double tapeHz;
    private PairReading pair;
    private AzimuthTrack azimuth = AzimuthTrack.begin();
    private List<BiasTrack> bias = List.of();

    Meters(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        this.pairs = new PairMeter(sampleRateHz);
    }

    /** Forgets everything, best values and maxima too. */
    void clear() {
        blank();
        azimuth = AzimuthTrack.begin();
        bias = List.of();
    }

    /** Forgets the readings of this moment. */
    void blank() {
        tones = List.of();
        tapeHz = null;
        pair = null;
    }

    /** How much sound a view takes. */
    double seconds(Desk desk) {
        return switch (desk.view()) {
            case AZIMUTH -> PairMeter.SECONDS;
            case TAPE -> SteadyTone.SECONDS;
            default -> meter(desk.sentHz()).seconds();
        };
    }

    /** Reads. */
    void read(Desk desk, History history) {
        switch (desk.view()) {
            case AZIMUTH -> readPair(history);
            case TAPE -> readTape(history);
            case BIAS -> {
                readTone(desk.sentHz(), history);
                follow();
            }
            case GAINS -> readTone(desk.sentHz(), history);
        }
    }

    private ToneMeter meter(double hz) {
        if (tone == null || Math.abs(tone.frequencyHz() / hz - 1) > 0.002) {
            tone = new ToneMeter(hz, sampleRateHz);
        }
        return tone;
    }

    private double[][] latest(History history, double seconds) {
        return history.latest((int) Math.ceil(seconds * sampleRateHz));
    }

    private void readTone(double hz, History history) {
        ToneMeter meter = meter(hz);
        tones = meter.read(latest(history, meter.seconds()));
    }

    private void readTape(History history) {
        OptionalDouble found = SteadyTone.find(latest(history, SteadyTone.SECONDS), sampleRateHz);
        blank();
        if (found.isPresent()) {
            tapeHz = found.getAsDouble();
            readTone(tapeHz, history);
        }
    }

    private void readPair(History history) {
        if (history.channels() == 2) {
            pair = pairs.read(latest(history, PairMeter.SECONDS));
            azimuth = azimuth.with(pair);
        }
    }

    private void follow() {
        List<BiasTrack> next = new ArrayList<>();
        for (int c = 0; c < tones.size(); c++) {
            BiasTrack before = c < bias.size() ? bias.get(c) : BiasTrack.begin();
            next.add(tones.get(c).isTone() ? before.with(tones.get(c).levelDbfs()) : before);
        }
        bias = next;
    }

    /** What has been read, with all else that is known. */
    Readings readings(
            Stage stage,
            boolean started,
            Desk desk,
            List<NoiseReading> noise,
            Delay delay,
            List<Peak> peaks,
            long late) {
        return new Readings(
                stage, started, desk, tones, tapeHz, pair, azimuth, bias, noise, delay, peaks,
                late);
    }
}

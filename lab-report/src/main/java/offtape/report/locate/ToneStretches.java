package offtape.report.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.fault.Background;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Reads the local stretch of time from the steady tones of a programme: nominal frequency over the
 * frequency that returned.
 */
final class ToneStretches {

    /**
     * One reading.
     *
     * @param programmeSeconds middle of the stretch of tone
     * @param stretch recording time over programme time
     * @param seconds length it was read from
     */
    record Reading(double programmeSeconds, double stretch, double seconds) {}

    private static final double SHORTEST_S = 0.25;
    private static final double PIECE_S = 2;
    private static final double MARGIN_S = 0.06;

    /** The share of the power around a tone that must be the tone. */
    private static final double PURE = 0.5;

    private final CueSheet sheet;
    private final AudioSource recording;
    private final TimeMap map;

    ToneStretches(CueSheet sheet, AudioSource recording, TimeMap map) {
        this.sheet = sheet;
        this.recording = recording;
        this.map = map;
    }

    /**
     * Readings from every tone and ladder step that is long and clean enough, in order.
     *
     * @param reach how far off the tones may be from where the map has them, as a share
     */
    List<Reading> read(double reach) {
        List<Piece> pieces = new ArrayList<>();
        for (Cue cue : sheet.cues()) {
            if (cue instanceof Cue.Tone t) {
                cut(t.startFrame(), t.frames(), t.frequencyHz(), pieces);
            } else if (cue instanceof Cue.Ladder l) {
                for (Cue.Step s : l.steps()) {
                    cut(s.startFrame(), s.frames(), l.frequencyHz(), pieces);
                }
            }
        }
        return Background.each(pieces, p -> reading(p, reach)).stream()
                .flatMap(Optional::stream)
                .toList();
    }

    /** A stretch of steady tone, by programme time. */
    private record Piece(double from, double length, double frequencyHz) {}

    private void cut(long startFrame, long frames, double hz, List<Piece> pieces) {
        double from = sheet.seconds(startFrame) + MARGIN_S;
        double length = sheet.seconds(frames) - 2 * MARGIN_S;
        if (length < SHORTEST_S) {
            return;
        }
        int count = (int) Math.ceil(length / PIECE_S);
        for (int i = 0; i < count; i++) {
            double piece = length / count;
            pieces.add(new Piece(from + i * piece, piece, hz));
        }
    }

    private Optional<Reading> reading(Piece piece, double reach) {
        double from = piece.from();
        double length = piece.length();
        double start = map.recordingSeconds(from);
        double end = map.recordingSeconds(from + length);
        double expectedHz = piece.frequencyHz() * map.speedRatio(from + length / 2);
        double pass = reach * expectedHz + 8;
        if (expectedHz + 2 * pass > recording.sampleRateHz() / 2.0
                || start < 0
                || end > (double) recording.frames() / recording.sampleRateHz()) {
            return Optional.empty();
        }
        Downconverter converter = Downconverter.of(pass, 2 * pass, recording.sampleRateHz());
        List<Baseband> bands =
                converter.convert(recording, start, end, PhaseLaw.steady(expectedHz));
        double[] total = powers(start, end);
        Baseband best = null;
        double bestPower = 0;
        for (int c = 0; c < bands.size(); c++) {
            double power = 2 * bands.get(c).meanPower();
            if (power > PURE * total[c] && power > bestPower) {
                best = bands.get(c);
                bestPower = power;
            }
        }
        if (best == null || best.size() <= 4) {
            return Optional.empty();
        }
        double heardHz = expectedHz + slopeHz(best);
        return Optional.of(new Reading(from + length / 2, piece.frequencyHz() / heardHz, length));
    }

    private double[] powers(double start, double end) {
        int rate = recording.sampleRateHz();
        double[][] x =
                recording.read(Math.round(start * rate), (int) Math.round((end - start) * rate));
        double[] power = new double[x.length];
        for (int c = 0; c < x.length; c++) {
            for (double v : x[c]) {
                power[c] += v * v / x[c].length;
            }
        }
        return power;
    }

    private static double slopeHz(Baseband band) {
        double[] phase = band.unwrappedPhase();
        SimpleRegression line = new SimpleRegression();
        for (int k = 0; k < phase.length; k++) {
            line.addData(k / band.rateHz(), phase[k]);
        }
        return line.getSlope() / (2 * Math.PI);
    }
}

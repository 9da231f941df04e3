package offtape.report.measure.tone;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.unit.Decibels;

/** Joins blocks in which one tone sounds to runs, and keeps the longest of them. */
final class ToneRuns {

    /** Runs that are kept, so that hours of speech or music take no more room. */
    private static final int MOST = 1000;

    private static final double STEADY = 0.05;

    /** Level of a second tone where there is none, dB. */
    private static final double NO_SECOND_DB = -120;

    /** Blocks in a row that may be spoilt without ending a tone: a dropout, a click. */
    private static final int SPOILT = 3;

    /** Share of a power average that a block moves: about half a second. */
    private static final double LATEST = 0.2;

    private final double blockSeconds;
    private final ToneRange range;
    private final double startSeconds;
    private final List<FoundTone> found = new ArrayList<>();
    private long start = -1;
    private long end;
    private double firstHz;
    private int count;
    private double hz;
    private double power;
    private double latestPower;
    private double secondHz;
    private double secondHzSquares;
    private double secondShare;
    private double share;

    /**
     * @param blockSeconds from one block to the next
     */
    ToneRuns(double startSeconds, double blockSeconds, ToneRange range) {
        this.startSeconds = startSeconds;
        this.blockSeconds = blockSeconds;
        this.range = range;
    }

    /** Takes a block; {@code sounds} tells whether there is a tone in it. */
    void next(long index, ToneBlock block, boolean sounds) {
        boolean other = sounds && Math.abs(frequency(block) / firstHz - 1) > range.sameShare();
        if (start >= 0 && (other || index - end > SPOILT)) {
            close();
        }
        if (sounds) {
            if (start < 0) {
                open(index, block);
            }
            extend(index, block);
        }
    }

    /** All runs that are long enough, in order of time, after the last block. */
    List<FoundTone> found() {
        close();
        return List.copyOf(found);
    }

    /** Of two tones that take turns in being the louder one, always the lower. */
    private double frequency(ToneBlock block) {
        return block.isPair(range) ? Math.min(block.hz(), block.secondHz()) : block.hz();
    }

    private void open(long index, ToneBlock block) {
        start = index;
        firstHz = frequency(block);
        count = 0;
        hz = 0;
        power = 0;
        secondHz = 0;
        secondHzSquares = 0;
        secondShare = 0;
        share = 0;
        latestPower = block.power();
    }

    private void extend(long index, ToneBlock block) {
        end = index + 1;
        count++;
        hz += frequency(block);
        power += block.power();
        latestPower += LATEST * (block.power() - latestPower);
        share += block.share();
        secondShare += block.secondShare();
        double second =
                block.isPair(range) ? Math.max(block.hz(), block.secondHz()) : block.secondHz();
        secondHz += block.secondShare() * second;
        secondHzSquares += block.secondShare() * second * second;
    }

    private void close() {
        if (start >= 0 && (end - start) * blockSeconds >= range.shortestSeconds()) {
            double fade = Decibels.ofPower(power / count) - Decibels.ofPower(latestPower);
            found.add(
                    new FoundTone(
                            startSeconds + start * blockSeconds,
                            startSeconds + end * blockSeconds,
                            hz / count,
                            secondShare > 0 ? secondHz / secondShare : 1,
                            isSecondSteady() ? Decibels.ofPower(secondShare / share) : NO_SECOND_DB,
                            fade));
            if (found.size() > MOST) {
                found.remove(
                        found.stream()
                                .min(Comparator.comparingDouble(FoundTone::seconds))
                                .orElseThrow());
            }
        }
        start = -1;
    }

    /** Lines of noise lie now here, now there; a tone stays. */
    private boolean isSecondSteady() {
        if (secondShare <= 0) {
            return false;
        }
        double mean = secondHz / secondShare;
        double variance = Math.max(0, secondHzSquares / secondShare - mean * mean);
        return Math.sqrt(variance) < STEADY * mean;
    }
}

package offtape.report.apply.listen;

import offtape.core.unit.Decibels;

/**
 * The part of both sounds before and after it was brought to one loudness.
 *
 * @param plainA the first as it was
 * @param plainB the second as it was
 * @param a the first as it is heard
 * @param b the second as it is heard
 */
record LevelledPair(HeardSound plainA, HeardSound plainB, HeardSound a, HeardSound b) {

    /** Reads the part and lowers the louder one, or both if a peak would not fit. */
    static LevelledPair of(AlignedPair pair, Part part) {
        HeardSound a = HeardSound.of(pair.a(), part);
        HeardSound b = HeardSound.of(pair.b(), part);
        double quieter = Math.min(a.loudnessLufs(), b.loudnessLufs());
        double common = Math.min(quieter, Math.min(highest(a), highest(b)));
        return new LevelledPair(
                a, b, a.by(common - a.loudnessLufs()), b.by(common - b.loudnessLufs()));
    }

    // the loudness at which its peak is at full scale, which float samples may exceed
    private static double highest(HeardSound sound) {
        return sound.loudnessLufs() - Decibels.ofAmplitude(sound.peak());
    }
}

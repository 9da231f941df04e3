package offtape.report.apply.listen;

import offtape.core.text.InertText;

/**
 * One of the two sounds, as it was and as it is heard.
 *
 * @param file its name
 * @param loudnessLufs integrated loudness of the part before matching, LUFS
 * @param gainDb what was applied, dB
 * @param peakDbfs the largest magnitude after that, dB re full scale
 * @param clippedPlaces how often the waveform stands still near full scale, in the file
 * @param wordLengthBits of the samples in the page
 * @param isDithered whether they were dithered to that length
 */
public record ListenSound(
        String file,
        double loudnessLufs,
        double gainDb,
        double peakDbfs,
        int clippedPlaces,
        int wordLengthBits,
        boolean isDithered) {

    /** The same with a name that steers no page. */
    ListenSound inert() {
        return new ListenSound(
                InertText.line(file),
                loudnessLufs,
                gainDb,
                peakDbfs,
                clippedPlaces,
                wordLengthBits,
                isDithered);
    }
}

package offtape.report.render;

import java.util.List;

/** How the figures were found, and by which standards. */
final class MethodSection {

    private static final List<String> METHODS =
            List.of(
                    "Response: an exponential sweep is followed in time as it comes back, so that"
                            + " unsteady speed does not disturb it; 0 dB is the level at 1 kHz. Its harmonics are"
                            + " followed in the same way, turned back by the sweep's own phase.",
                    "Causes of loss: every combination of space, gap, azimuth, thickness, wrong"
                            + " equalisation and amplifier is fitted to the response from 500 Hz up;"
                            + " a figure is told from the range in which some combination explains the"
                            + " curve as well as the best one does.",
                    "Speed: a steady tone is demodulated in frequency. Wow and flutter is the"
                            + " deviation weighted by rate and read as a quasi-peak; what the noise of the"
                            + " recording alone would read stands beside each reading.",
                    "Distortion: a ladder of steady tones. K3 is the third harmonic against the"
                            + " tone itself, with the noise beside it taken out; readings near the"
                            + " noise are not drawn, and what noise hides is given as less than a"
                            + " bound that holds in 19 of 20 cases. Levels are read from a smooth"
                            + " curve through the steps; a step far off it is left out and named.",
                    "Noise: recorded silence, in the bands and weightings named in the table. Hum"
                            + " is what stays steady at multiples of one frequency near 50 or 60 Hz."
                            + " Modulation noise is how the level of a steady tone fluctuates, less"
                            + " what the silence adds to it.",
                    "Channels: delay from the phase between the channels over the whole band, its"
                            + " wander from their phase while a steady tone sounds, the noise's share"
                            + " taken out; crosstalk from tones and sweeps on one channel at a time.",
                    "Dropouts: the level of the steady tones against the level just before and"
                            + " after; the length is read 3 dB down, in shallow ones 1.5 dB above"
                            + " the bottom.",
                    "Levels are in dB against the reference tone as it came back on the same"
                            + " channel. What follows ± is the expanded uncertainty: about 95 % of"
                            + " repeated measurements would fall within it (coverage factor 2).");

    private static final List<String> SOURCES =
            List.of(
                    "IEC 60386, wow and flutter: weighting and quasi-peak reading",
                    "AES6-2008, wow and flutter: two-sigma statistic",
                    "IEC 61672-1, frequency weighting A",
                    "ITU-R BS.468-4, noise weighting and quasi-peak reading",
                    "R. L. Wallace, Bell System Technical Journal 30 (1951): losses of spacing and"
                            + " thickness",
                    "IEC 60094-1, time constants of equalisation",
                    "A. Farina, exponential sweeps, 108th AES Convention, 2000",
                    "JCGM 100, expression of uncertainty in measurement");

    private MethodSection() {}

    /** The section. */
    static Section of() {
        Markup body = new Markup();
        METHODS.forEach(method -> body.add(Section.paragraph(method)));
        body.element("h3", "Sources").open("ul").line();
        SOURCES.forEach(source -> body.element("li", source).line());
        return new Section("method", "How it was found", body.close("ul").line());
    }
}

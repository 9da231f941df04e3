package offtape.report.render;

import java.util.List;
import java.util.Map;
import offtape.report.result.Results;

/** How the figures were found, by which standards, and what they cannot say. */
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
                            + " recording alone would read stands beside each reading. The mean is as"
                            + " good as the clock of the recorder, 50 parts in a million; a reading of"
                            + " wow and flutter is as good as the standard defines it: so far, and no"
                            + " more, another meter that keeps to it may read differently.",
                    "The transport itself, off tape: both heads hear one transport a moment apart."
                            + " Steady lines are undone one by one, the rest by least squares over"
                            + " the tape's length; beside the rates that both heads hear alike"
                            + " nothing is told, and what is expected to be missing there is added"
                            + " to the readings.",
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
                            + " channel.");

    private static final List<String> CERTAINTY =
            List.of(
                    "What follows ± is the expanded uncertainty: the true value of what this"
                            + " recording holds lies within it in about 95 of 100 cases (coverage"
                            + " factor 2). It is made up of the noise of the recording, the scatter"
                            + " of what the programme repeats, the fit of curves, and an allowance"
                            + " for filters and clocks.",
                    "It does not hold what another day, another tape or another piece of the same"
                            + " tape would read. To know that, record and measure again.");

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
                    "A. Novak, P. Lotton, L. Simon, synchronised sweeps, J. Audio Eng. Soc. 63,"
                            + " 2015",
                    "R. L. Wallace, reproduction of magnetically recorded signals, Bell System"
                            + " Technical Journal 30, 1951",
                    "IEC 60094-1, magnetic tape recording: time constants of the equalisation",
                    "JCGM 100, expression of uncertainty in measurement");

    private MethodSection() {}

    /** The section. */
    static Section of(Results results) {
        Markup body = new Markup();
        METHODS.forEach(method -> body.add(Section.paragraph(method)));
        body.element("h3", "How sure they are").line();
        CERTAINTY.forEach(text -> body.add(Section.paragraph(text)));
        body.element("h3", "What this recording cannot say").line();
        ModeWords.of(results.session().mode()).forEach(t -> body.add(Section.paragraph(t)));
        unknown(UnknownFigures.of(results), body);
        body.element("h3", "Sources").open("ul").line();
        SOURCES.forEach(source -> body.element("li", source).line());
        return new Section(
                "method",
                "How these figures were found and what they cannot say",
                body.close("ul").line());
    }

    private static void unknown(Map<String, List<String>> byReason, Markup body) {
        if (byReason.isEmpty()) {
            return;
        }
        body.open("ul").line();
        byReason.forEach(
                (reason, names) ->
                        body.element("li", String.join(", ", names) + ": " + reason).line());
        body.close("ul").line();
    }
}

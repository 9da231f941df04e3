package offtape.report.apply.level;

import offtape.core.unit.Quantity;

/**
 * Where distortion reaches a value on a channel.
 *
 * @param k3Percent third harmonic re fundamental, percent
 * @param recordLevel record level of a steady tone there, dB re reference
 * @param peaksDbfs the same as the tone's peak, dB re a full-scale sine
 * @param replayLevel level at which it comes back, dB re the returned reference tone
 * @param dynamicRange that less the A-weighted noise, dB
 */
public record LevelAtK3(
        double k3Percent,
        Quantity recordLevel,
        Quantity peaksDbfs,
        Quantity replayLevel,
        Quantity dynamicRange) {}

package offtape.report.apply.model;

/**
 * What a tone of one frequency and level tells of the curve.
 *
 * @param frequencyHz of the tone
 * @param levelDb in the programme, dB re reference
 * @param kind which figure
 * @param value the figure
 * @param deviation its standard uncertainty
 */
record CurveSample(double frequencyHz, double levelDb, Kind kind, double value, double deviation) {

    /** Figures that tell of a curve. */
    enum Kind {
        /** Gain of the fundamental re that of a small tone, a ratio. */
        GAIN,
        /** Third harmonic re fundamental in the return, a ratio. */
        THIRD,
        /** Second harmonic re fundamental in the return, a ratio. */
        SECOND,
        /** Gain re that of 1 kHz at the same level, and both re a quieter sweep, dB. */
        DEPENDENCE
    }
}

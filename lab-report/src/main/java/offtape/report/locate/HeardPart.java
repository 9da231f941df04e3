package offtape.report.locate;

/**
 * The part of a programme that is heard at a place of a recording: a tape may be started late,
 * broken off, or the recording may be shorter than the programme.
 *
 * @param fromSeconds where it begins in the recording
 * @param toSeconds where it ends in the recording
 * @param soundingSeconds how much of it sounds, in seconds of the programme
 * @param share the same as a share of all that sounds in the programme
 * @param coveredShare the same as a share of what the recording has room for
 * @param likeness how like the programme it is, 0 to 1
 * @param fromStart whether it begins with the first sound of the programme
 * @param toEnd whether it goes on to the last sound of the programme
 */
record HeardPart(
        double fromSeconds,
        double toSeconds,
        double soundingSeconds,
        double share,
        double coveredShare,
        double likeness,
        boolean fromStart,
        boolean toEnd) {

    /** A moment that is more like the programme than this speaks for it. */
    private static final double LIKE = 0.5;

    /**
     * A part that ends within this much of the programme's last sound goes on to it; so a start.
     */
    private static final double END_S = 0.5;

    /**
     * The stretch that speaks most for the programme: the one over which likeness less {@link
     * #LIKE} sums up to the most.
     *
     * @param programme without its silence
     * @param recording with vectors as far apart
     */
    static HeardPart of(
            SpectralTrace programme, SpectralTrace recording, CoarseSearch.Match match) {
        SpectralTrace wanted = programme.stretched(match.stretch());
        double hop = wanted.hopSeconds();
        int lag = (int) Math.rint(match.offsetSeconds() / hop);
        Run best = new Run(0, 0, 0, 0, 0);
        Run run = best;
        int sounding = 0;
        int covered = 0;
        int first = -1;
        int last = 0;
        for (int h = 0; h < wanted.hops(); h++) {
            if (!wanted.sounds(h)) {
                continue;
            }
            sounding++;
            first = first < 0 ? h : first;
            covered += h + lag >= 0 && h + lag < recording.hops() ? 1 : 0;
            last = h;
            double likeness = wanted.likeness(h, recording, h + lag);
            run = run.count() == 0 || run.gain() < 0 ? new Run(h, h, 0, 0, 0) : run;
            run = run.with(h, likeness);
            best = run.gain() > best.gain() ? run : best;
        }
        return new HeardPart(
                match.offsetSeconds() + best.first() * hop,
                match.offsetSeconds() + (best.last() + 1) * hop,
                best.count() * hop / match.stretch(),
                (double) best.count() / Math.max(1, sounding),
                (double) best.count() / Math.max(1, covered),
                best.sum() / Math.max(1, best.count()),
                (best.first() - first) * hop < END_S * match.stretch(),
                (last - best.last()) * hop < END_S * match.stretch());
    }

    private record Run(int first, int last, int count, double sum, double gain) {

        Run with(int hop, double likeness) {
            return new Run(first, hop, count + 1, sum + likeness, gain + likeness - LIKE);
        }
    }
}

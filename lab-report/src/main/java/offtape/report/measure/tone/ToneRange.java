package offtape.report.measure.tone;

/**
 * What counts as a steady tone in a search.
 *
 * @param blockSeconds length of the blocks that are transformed; halved at most, to a power of two
 * @param lowestHz lowest frequency of a tone
 * @param highestHz highest frequency of a tone
 * @param wanderShare share of its frequency by which flutter may spread a line to either side
 * @param aroundOctaves octaves to either side of a line within which it must rule; infinite for the
 *     whole band
 * @param pureShare share of the power there that a tone must have
 * @param sameShare share of its frequency by which a tone may move and still be the same
 * @param shortestSeconds shortest tone that is kept
 * @param silentDbfs level under which a block is silent, dB re a full-scale sine
 * @param standingBelowHz up to here a sound that never ends, such as hum, is no tone; 0 for none
 */
public record ToneRange(
        double blockSeconds,
        double lowestHz,
        double highestHz,
        double wanderShare,
        double aroundOctaves,
        double pureShare,
        double sameShare,
        double shortestSeconds,
        double silentDbfs,
        double standingBelowHz) {

    /** The same without regard to sounds that never end. */
    public ToneRange withStanding() {
        return new ToneRange(
                blockSeconds,
                lowestHz,
                highestHz,
                wanderShare,
                aroundOctaves,
                pureShare,
                sameShare,
                shortestSeconds,
                silentDbfs,
                0);
    }

    /** Mean square under which a block is silent. */
    double silentPower() {
        return 0.5 * Math.pow(10, silentDbfs / 10);
    }
}

package offtape.report.measure.channel;

import java.util.ArrayList;
import java.util.List;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.FollowedSweep;

/**
 * Whether each channel comes back upright. The low mids of a sweep tell it best: there the path
 * turns the phase little, and an error of place of a tenth of a millisecond is a small angle.
 *
 * @param signs for each channel +1 upright, −1 inverted, 0 not heard
 */
public record Polarity(List<Integer> signs) {

    private static final double FROM_HZ = 120;
    private static final double TO_HZ = 600;
    private static final double CLEAR = 0.2;

    public Polarity {
        signs = List.copyOf(signs);
    }

    /** From the sweeps, or from the markers where no sweep is clear. */
    public static Polarity of(ProgrammeReturn ret, List<FollowedSweep> sweeps) {
        List<Integer> signs = new ArrayList<>();
        for (int c = 0; c < ret.channels(); c++) {
            double sum = 0;
            for (FollowedSweep s : sweeps) {
                sum += s.uprightness(c, FROM_HZ, TO_HZ);
            }
            boolean clear = Math.abs(sum) > CLEAR * sweeps.size();
            signs.add(clear ? (int) Math.signum(sum) : ret.location().signs().get(c));
        }
        return new Polarity(signs);
    }

    /**
     * {@code inverted} if the first channel that is heard is inverted, otherwise {@code normal}.
     */
    public String word() {
        int first = signs.stream().filter(s -> s != 0).findFirst().orElse(1);
        return first < 0 ? "inverted" : "normal";
    }

    /** The channel that alone is inverted, or −1 if the channels agree. */
    public int oddChannel() {
        boolean differ = signs.size() > 1 && signs.get(0) * signs.get(1) < 0;
        return differ ? signs.indexOf(-1) : -1;
    }
}

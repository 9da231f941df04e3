package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.programme.ChannelSet;

/** Everything at a glance: plain lines for a screen of a given width, from 40 columns on. */
public final class Picture {

    private static final int NARROWEST = 40;

    private Picture() {}

    /** The lines, top down, none longer than the width as long as that is 60 or more. */
    public static List<String> of(Readings r, int width) {
        int w = Math.max(NARROWEST, width);
        List<String> lines = new ArrayList<>();
        lines.add("OFFTAPE LINE-UP   " + title(r.desk().view()));
        lines.addAll(Columns.wrap(Columns.line("Sent", ""), sending(r), w));
        lines.add("");
        lines.addAll(PictureTable.of(r, w));
        lines.add("");
        Words.of(r).forEach(t -> lines.addAll(Columns.wrap("> ", t, w)));
        if (!r.desk().note().isEmpty()) {
            lines.addAll(Columns.wrap("  ", r.desk().note(), w));
        }
        lines.add("");
        String caution =
                r.started() ? Cautions.ofView(r.desk().view()) : Cautions.ofSound(r.desk().sends());
        if (!caution.isEmpty()) {
            lines.addAll(Columns.wrap("CAUTION  ", caution, w));
            lines.add("");
        }
        keys(r.desk()).forEach(k -> lines.addAll(Columns.wrap("", k, w)));
        return lines;
    }

    private static String title(View view) {
        return switch (view) {
            case GAINS -> "gains and balance";
            case AZIMUTH -> "azimuth";
            case BIAS -> "bias";
            case TAPE -> "level of a calibration tape";
        };
    }

    private static String sending(Readings r) {
        return switch (r.stage()) {
            case NOISE -> "nothing for a moment";
            case MARK -> "a short mark";
            default -> sent(r.desk());
        };
    }

    private static String sent(Desk desk) {
        if (!desk.sends()) {
            return "nothing, listening";
        }
        return (desk.view() == View.AZIMUTH
                        ? "500 Hz to 12 kHz, peak "
                        : Decimals.hertz(desk.sentHz()) + ", ")
                + Decimals.signed(desk.levelDb(), 1)
                + " dB re reference ("
                + Decimals.of(desk.levelDbfs(), 1)
                + " dBFS), "
                + desk.channels().name().toLowerCase(Locale.ROOT)
                + (desk.channels() == ChannelSet.BOTH ? "" : " only");
    }

    private static List<String> keys(Desk desk) {
        List<String> lines = new ArrayList<>();
        String views = "a azimuth   t tape level   c forget best values   q quit";
        if (desk.limits().listening()) {
            lines.add(views);
            return lines;
        }
        if (desk.view() == View.GAINS) {
            lines.add("1 1 kHz   0 10 kHz   3 3150 Hz   + - level");
        }
        if (desk.sends()) {
            String level = desk.view() == View.GAINS ? "" : "+ - level   ";
            String sides = desk.view() == View.AZIMUTH ? "" : "l left   r right   b both   ";
            lines.add(level + sides + "n noise   m delay");
        }
        lines.add("g gains   a azimuth   o bias   t tape level   q quit");
        if (desk.view() != View.GAINS) {
            lines.add("c forget best values and maxima");
        }
        return lines;
    }
}

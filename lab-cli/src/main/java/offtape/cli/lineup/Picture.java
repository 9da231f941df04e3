package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Everything at a glance: plain lines for a screen of a given width, from 40 columns on.
 *
 * @param wording how it is said
 */
public record Picture(Wording wording) {

    private static final int NARROWEST = 40;

    /** The lines, top down, none longer than the width as long as that is 60 or more. */
    public List<String> of(Readings r, int width) {
        int w = Math.max(NARROWEST, width);
        Cautions cautions = new Cautions(wording);
        List<String> lines = new ArrayList<>();
        lines.add(wording.say("lineup.title", title(r.desk().view())));
        lines.addAll(Columns.wrap(Columns.line(wording.say("lineup.sent"), ""), sending(r), w));
        lines.add("");
        lines.addAll(new PictureTable(wording).of(r, w));
        lines.add("");
        new Words(wording).of(r).forEach(t -> lines.addAll(Columns.wrap("> ", t, w)));
        if (!r.desk().note().isEmpty()) {
            lines.addAll(Columns.wrap("  ", wording.told(r.desk().note()), w));
        }
        lines.add("");
        String caution =
                r.started() ? cautions.ofView(r.desk().view()) : cautions.ofSound(r.desk().sends());
        if (!caution.isEmpty()) {
            lines.addAll(Columns.wrap(wording.say("lineup.caution-label") + "  ", caution, w));
            lines.add("");
        }
        keys(r.desk()).forEach(k -> lines.addAll(Columns.wrap("", k, w)));
        return lines;
    }

    private String title(View view) {
        return wording.say("lineup.view-" + view.name().toLowerCase(Locale.ROOT));
    }

    private String sending(Readings r) {
        return switch (r.stage()) {
            case NOISE -> wording.say("lineup.sent-noise");
            case MARK -> wording.say("lineup.sent-mark");
            default -> sent(r.desk());
        };
    }

    private String sent(Desk desk) {
        if (!desk.sends()) {
            return wording.say("lineup.sent-nothing");
        }
        String what =
                desk.view() == View.AZIMUTH
                        ? wording.say("lineup.sent-many")
                        : wording.hertz(desk.sentHz()) + ",";
        return wording.say(
                "lineup.sent-tone",
                what,
                wording.signed(desk.levelDb(), 1),
                wording.of(desk.levelDbfs(), 1),
                wording.say("lineup.sent-" + desk.channels().key()));
    }

    private List<String> keys(Desk desk) {
        List<String> lines = new ArrayList<>();
        if (desk.limits().listening()) {
            lines.add(wording.say("lineup.keys-listening"));
            return lines;
        }
        if (desk.view() == View.GAINS) {
            lines.add(wording.say("lineup.keys-tones"));
        }
        if (desk.sends()) {
            lines.add(
                    wording.say(
                            switch (desk.view()) {
                                case GAINS -> "lineup.keys-gains";
                                case AZIMUTH -> "lineup.keys-azimuth";
                                default -> "lineup.keys-sides";
                            }));
        }
        lines.add(wording.say("lineup.keys-views"));
        if (desk.view() != View.GAINS) {
            lines.add(wording.say("lineup.keys-forget"));
        }
        return lines;
    }
}

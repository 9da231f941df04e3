package offtape.report.render;

import offtape.core.unit.Quantity;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.Headroom;
import offtape.report.apply.correct.NoiseChange;
import offtape.report.apply.level.ChannelLevels;
import offtape.report.apply.level.LevelAtK3;
import offtape.report.apply.level.OperatingLevels;

/** The curves and tables of a correction as CSV. */
final class CorrectionCsv {

    private CorrectionCsv() {}

    /** Responses before and after, filter and equaliser. */
    static String curves(Correction correction) {
        CsvTable t =
                new CsvTable(
                        "channel",
                        "frequency_hz",
                        "measured_db",
                        "uncertainty_db",
                        "target_db",
                        "filter_db",
                        "expected_db",
                        "equaliser_db");
        for (ChannelCorrection c : correction.channels()) {
            for (int i = 0; i < c.frequencyHz().length; i++) {
                t.text(c.channel())
                        .number(c.frequencyHz()[i], 2)
                        .number(c.measuredDb()[i], 3)
                        .number(c.uncertaintyDb()[i], 3)
                        .number(c.targetDb()[i], 3)
                        .number(c.gainDb()[i], 3)
                        .number(c.afterDb()[i], 3)
                        .number(c.equaliserDb()[i], 3)
                        .end();
            }
        }
        return t.toString();
    }

    /** Noise as it is and behind the filter. */
    static String noise(Correction correction) {
        CsvTable t = new CsvTable("channel", "frequency_hz", "level_db", "after_tape_filter_db");
        for (NoiseChange n : correction.noise()) {
            for (int i = 0; i < n.frequencyHz().length; i++) {
                t.text(n.channel())
                        .number(n.frequencyHz()[i], 1)
                        .number(n.levelDb()[i], 2)
                        .number(n.afterDb()[i], 2)
                        .end();
            }
        }
        return t.toString();
    }

    /** Compression of the highs over level and boost. */
    static String headroom(Correction correction) {
        CsvTable t =
                new CsvTable(
                        "channel",
                        "frequency_hz",
                        "programme_level_db",
                        "boost_db",
                        "compression_db");
        for (Headroom h : correction.headroom()) {
            for (Headroom.Row r : h.rows()) {
                t.text(h.channel())
                        .number(h.frequencyHz(), 1)
                        .number(r.programmeLevelDb(), 1)
                        .number(r.boostDb(), 1)
                        .number(r.compressionDb(), 3)
                        .end();
            }
        }
        return t.toString();
    }

    /** Levels at which the tape bends. */
    static String levels(Correction correction) {
        CsvTable t =
                new CsvTable(
                        "made_at",
                        "tape_speed_mm_per_s",
                        "channel",
                        "frequency_hz",
                        "k3_percent",
                        "record_level_db",
                        "record_level_uncertainty_db",
                        "peaks_dbfs",
                        "dynamic_range_db");
        for (OperatingLevels session : correction.levels()) {
            for (ChannelLevels c : session.channels()) {
                for (LevelAtK3 l : c.atK3()) {
                    t.text(session.madeAt() == null ? "" : session.madeAt())
                            .number(session.tapeSpeedMmPerS(), 2)
                            .text(c.channel())
                            .number(c.frequencyHz(), 1)
                            .number(l.k3Percent(), 3)
                            .number(value(l.recordLevel()), 3)
                            .number(l.recordLevel().uncertainty(), 3)
                            .number(value(l.peaksDbfs()), 3)
                            .number(value(l.dynamicRange()), 2)
                            .end();
                }
            }
        }
        return t.toString();
    }

    private static Double value(Quantity q) {
        return q.value();
    }
}

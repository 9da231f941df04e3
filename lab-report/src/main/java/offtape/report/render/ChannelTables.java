package offtape.report.render;

import java.util.List;
import offtape.report.result.Channels;
import offtape.report.result.CrosstalkCurve;
import offtape.report.result.DelayTrace;
import offtape.report.result.Dropout;

/** What was found between the channels, and the dropouts, as CSV. */
final class ChannelTables {

    private ChannelTables() {}

    static CsvTable crosstalk(Channels channels) {
        CsvTable table =
                new CsvTable(
                        "from",
                        "into",
                        "frequency (Hz)",
                        "crosstalk (dB re own level)",
                        "uncertainty k=2 (dB)",
                        "floor (dB re own level)");
        if (channels != null) {
            channels.crosstalk().forEach(curve -> rows(table, curve));
        }
        return table;
    }

    private static void rows(CsvTable table, CrosstalkCurve curve) {
        for (int i = 0; i < curve.frequencyHz().length; i++) {
            table.text(curve.from())
                    .text(curve.into())
                    .number(curve.frequencyHz()[i], 2)
                    .number(curve.crosstalkDb()[i], 2)
                    .number(curve.uncertaintyDb()[i], 2)
                    .number(curve.floorDb()[i], 2)
                    .end();
        }
    }

    static CsvTable delay(Channels channels) {
        CsvTable table = new CsvTable("time (s)", "right late (µs)");
        DelayTrace trace = channels == null ? null : channels.delayTrace();
        if (trace != null) {
            for (int i = 0; i < trace.seconds().length; i++) {
                table.number(trace.seconds()[i], 3).number(trace.microseconds()[i], 4).end();
            }
        }
        return table;
    }

    static CsvTable dropouts(List<Dropout> dropouts) {
        CsvTable table =
                new CsvTable("channel", "at (s)", "length (ms)", "depth (dB)", "on both channels");
        for (Dropout d : dropouts) {
            table.text(d.channel())
                    .number(d.atSeconds(), 3)
                    .number(d.milliseconds(), 1)
                    .number(d.depthDb(), 2)
                    .text(d.common() ? "yes" : "no")
                    .end();
        }
        return table;
    }
}

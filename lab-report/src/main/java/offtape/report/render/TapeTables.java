package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeResponse;
import offtape.report.result.TapeTone;
import offtape.report.result.ToneLevel;

/** The tones of a tape and their response as tables. */
final class TapeTables {

    private TapeTables() {}

    static String tonesCsv(TapeReading reading) {
        CsvTable table =
                new CsvTable(
                        "tone",
                        "from (s)",
                        "to (s)",
                        "nominal (Hz)",
                        "heard (Hz)",
                        "heard uncertainty k=2 (Hz)",
                        "deviation (%)",
                        "channel",
                        "level (dBFS)",
                        "level uncertainty k=2 (dB)",
                        "level (dB re reference tone)",
                        "recorded (dB re reference level)",
                        "right re left (dB)",
                        "phase right re left (degrees)",
                        "delay, right late (µs)",
                        "azimuth (arc min)");
        for (TapeTone t : reading.tones()) {
            for (ToneLevel l : t.levels()) {
                table.number((double) t.number(), 0)
                        .number(t.fromSeconds(), 2)
                        .number(t.toSeconds(), 2)
                        .number(t.nominalHz(), 3)
                        .number(t.frequency().value(), 4)
                        .number(t.frequency().uncertainty(), 4)
                        .number(t.deviation().value(), 5)
                        .text(l.channel())
                        .number(l.level().value(), 3)
                        .number(l.level().uncertainty(), 3)
                        .number(l.relativeLevel().value(), 3)
                        .number(t.recordedDb(), 3)
                        .number(t.channelDifference().value(), 3)
                        .number(t.phaseDegrees(), 3)
                        .number(t.interchannelDelay().value(), 3)
                        .number(t.azimuth().value(), 3)
                        .end();
            }
        }
        return table.toString();
    }

    static String responseCsv(TapeReading reading) {
        CsvTable table =
                new CsvTable(
                        "channel",
                        "tone",
                        "frequency (Hz)",
                        "as read (dB)",
                        "uncertainty k=2 (dB)",
                        "corrected for equalisation (dB)");
        for (TapeResponse r : reading.response()) {
            for (int i = 0; i < r.frequencyHz().length; i++) {
                table.text(r.channel())
                        .number((double) r.tone()[i], 0)
                        .number(r.frequencyHz()[i], 3)
                        .number(r.asReadDb()[i], 3)
                        .number(r.uncertaintyDb()[i], 3)
                        .number(r.correctedDb() == null ? null : (Double) r.correctedDb()[i], 3)
                        .end();
            }
        }
        return table.toString();
    }

    static DataTable tones(TapeReading reading) {
        List<String> heads =
                new ArrayList<>(
                        List.of("Tone", "From, s", "To, s", "Nominal, Hz", "Heard, Hz", "Off, %"));
        reading.tones()
                .get(0)
                .levels()
                .forEach(l -> heads.add(Words.sentence(l.channel()) + ", dBFS"));
        reading.tones()
                .get(0)
                .levels()
                .forEach(l -> heads.add(Words.sentence(l.channel()) + ", dB re reference"));
        heads.addAll(List.of("Right re left, dB", "Right late, µs"));
        List<List<String>> rows = new ArrayList<>();
        for (TapeTone t : reading.tones()) {
            List<String> row = new ArrayList<>();
            row.add(Integer.toString(t.number()));
            row.add(Numbers.decimal(t.fromSeconds(), 1));
            row.add(Numbers.decimal(t.toSeconds(), 1));
            row.add(
                    t.nominalHz() == null
                            ? DataTable.NOTHING
                            : Numbers.significant(t.nominalHz(), 6));
            row.add(Numbers.decimal(t.frequency().value(), 2));
            row.add(cell(t.deviation(), 3, true));
            t.levels().forEach(l -> row.add(cell(l.level(), 2, false)));
            t.levels().forEach(l -> row.add(cell(l.relativeLevel(), 2, true)));
            row.add(cell(t.channelDifference(), 2, true));
            row.add(cell(t.interchannelDelay(), 2, true));
            rows.add(row);
        }
        return new DataTable("Every tone, in the order of the recording", heads, rows)
                .withoutEmptyColumns();
    }

    static DataTable response(TapeReading reading) {
        List<List<String>> rows = new ArrayList<>();
        for (TapeResponse r : reading.response()) {
            for (int i = 0; i < r.frequencyHz().length; i++) {
                rows.add(
                        List.of(
                                Words.sentence(r.channel()),
                                Numbers.significant(r.frequencyHz()[i], 6),
                                Numbers.signed(r.asReadDb()[i], 2),
                                Numbers.decimal(r.uncertaintyDb()[i], 2),
                                r.correctedDb() == null
                                        ? DataTable.NOTHING
                                        : Numbers.signed(r.correctedDb()[i], 2)));
            }
        }
        return new DataTable(
                        "response",
                        List.of("Channel", "Frequency, Hz", "As read, dB", "± dB", "Corrected, dB"),
                        rows)
                .withoutEmptyColumns();
    }

    private static String cell(Quantity q, int decimals, boolean signed) {
        if (!q.isKnown()) {
            return DataTable.NOTHING;
        }
        return signed ? Numbers.signed(q.value(), decimals) : Numbers.decimal(q.value(), decimals);
    }
}

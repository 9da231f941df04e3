package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeResponse;
import offtape.report.result.TapeTone;
import offtape.report.result.ToneLevel;

/**
 * The tones of a tape and their response as tables.
 *
 * @param words of the reader of a page; what programs read is English
 */
record TapeTables(Wording words) {

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

    DataTable tones(TapeReading reading) {
        List<String> heads =
                new ArrayList<>(
                        List.of(
                                words.say("tape.tones-tone"),
                                words.say("tape.tones-from"),
                                words.say("tape.tones-to"),
                                words.say("tape.tones-nominal"),
                                words.say("tape.tones-heard"),
                                words.say("tape.tones-off")));
        List<String> channels =
                reading.tones().get(0).levels().stream().map(l -> channel(l.channel())).toList();
        channels.forEach(c -> heads.add(words.say("tape.tones-level", c)));
        channels.forEach(c -> heads.add(words.say("tape.tones-relative", c)));
        heads.addAll(List.of(words.say("tape.tones-difference"), words.say("tape.tones-delay")));
        List<List<String>> rows = new ArrayList<>();
        for (TapeTone t : reading.tones()) {
            List<String> row = new ArrayList<>();
            row.add(Integer.toString(t.number()));
            row.add(words.decimal(t.fromSeconds(), 1));
            row.add(words.decimal(t.toSeconds(), 1));
            row.add(
                    t.nominalHz() == null
                            ? DataTable.NOTHING
                            : words.significant(t.nominalHz(), 6));
            row.add(words.decimal(t.frequency().value(), 2));
            row.add(cell(t.deviation(), 3, true));
            t.levels().forEach(l -> row.add(cell(l.level(), 2, false)));
            t.levels().forEach(l -> row.add(cell(l.relativeLevel(), 2, true)));
            row.add(cell(t.channelDifference(), 2, true));
            row.add(cell(t.interchannelDelay(), 2, true));
            rows.add(row);
        }
        return new DataTable(words.say("tape.tones"), heads, rows).withoutEmptyColumns();
    }

    DataTable response(TapeReading reading) {
        List<List<String>> rows = new ArrayList<>();
        for (TapeResponse r : reading.response()) {
            for (int i = 0; i < r.frequencyHz().length; i++) {
                rows.add(
                        List.of(
                                channel(r.channel()),
                                words.significant(r.frequencyHz()[i], 6),
                                words.signed(r.asReadDb()[i], 2),
                                words.decimal(r.uncertaintyDb()[i], 2),
                                r.correctedDb() == null
                                        ? DataTable.NOTHING
                                        : words.signed(r.correctedDb()[i], 2)));
            }
        }
        return new DataTable(
                        words.say("tape.response"),
                        List.of(
                                words.say("tape.response-channel"),
                                words.say("tape.response-frequency"),
                                words.say("tape.response-as-read"),
                                words.say("tape.response-uncertainty"),
                                words.say("tape.response-corrected")),
                        rows)
                .withoutEmptyColumns();
    }

    private String channel(String name) {
        return words.sentence(words.channel(name));
    }

    private String cell(Quantity q, int decimals, boolean signed) {
        if (!q.isKnown()) {
            return DataTable.NOTHING;
        }
        return signed ? words.signed(q.value(), decimals) : words.decimal(q.value(), decimals);
    }
}

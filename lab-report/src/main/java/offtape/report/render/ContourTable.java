package offtape.report.render;

import java.util.List;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.ContourPoint;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** Peaks and dips of the bass. */
final class ContourTable {

    private ContourTable() {}

    /** Marks on the response chart. */
    static Stream<Chart.Mark> marks(Response r) {
        return r.contour().stream()
                .filter(p -> p.frequency().isKnown() && p.magnitude().isKnown())
                .map(p -> mark(r, p));
    }

    private static Chart.Mark mark(Response r, ContourPoint p) {
        return new Chart.Mark(
                p.frequency().value(),
                p.magnitude().value(),
                Math.min(
                        ResponseSection.MOST_DECIMALS,
                        Numbers.decimals(p.magnitude().uncertainty())),
                Words.sentence(r.channel()).substring(0, 1)
                        + " "
                        + p.kind()
                        + " "
                        + Numbers.frequency(p.frequency().value()),
                Look.of(r.channel(), false),
                false);
    }

    /** A row a peak or dip. */
    static DataTable of(Results results) {
        List<List<String>> rows =
                results.response().stream()
                        .flatMap(r -> r.contour().stream().map(p -> row(r, p)))
                        .toList();
        return new DataTable(
                "peaks and dips of the bass (contour of the head)",
                List.of(
                        "Channel, sweep level",
                        "Kind",
                        "Frequency",
                        "Level re 1 kHz",
                        "Recorded wavelength"),
                rows);
    }

    private static List<String> row(Response r, ContourPoint p) {
        Quantity frequency = Find.figure(p.frequency());
        return List.of(
                ResponseSection.who(r),
                p.kind(),
                Numbers.full(frequency, false),
                Numbers.full(Find.figure(p.magnitude()), true),
                p.wavelengthMm() == null
                        ? DataTable.NOTHING
                        : Numbers.withUnit(Numbers.significant(p.wavelengthMm(), 2), "mm"));
    }
}

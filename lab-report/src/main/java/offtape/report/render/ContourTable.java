package offtape.report.render;

import java.util.List;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.ContourPoint;
import offtape.report.result.Response;
import offtape.report.result.Results;

/**
 * Peaks and dips of the bass.
 *
 * @param words of the reader's language
 */
record ContourTable(Wording words) {

    /** Marks on the response chart. */
    Stream<Chart.Mark> marks(Response r) {
        return r.contour().stream()
                .filter(p -> p.frequency().isKnown() && p.magnitude().isKnown())
                .map(p -> mark(r, p));
    }

    private Chart.Mark mark(Response r, ContourPoint p) {
        return new Chart.Mark(
                p.frequency().value(),
                p.magnitude().value(),
                Math.min(
                        ResponseSection.MOST_DECIMALS,
                        Numbers.decimals(p.magnitude().uncertainty())),
                new ResponseWords(words).initial(r)
                        + " "
                        + kind(p)
                        + " "
                        + words.frequency(p.frequency().value()),
                Look.of(r.channel(), false),
                false);
    }

    private String kind(ContourPoint p) {
        return switch (p.kind()) {
            case "peak", "dip" -> words.say("response.kind-" + p.kind());
            default -> p.kind();
        };
    }

    /** A row a peak or dip. */
    DataTable of(Results results) {
        List<List<String>> rows =
                results.response().stream()
                        .flatMap(r -> r.contour().stream().map(p -> row(r, p)))
                        .toList();
        return new DataTable(
                words.say("response.contour"),
                List.of(
                        words.say("response.head-who"),
                        words.say("response.head-kind"),
                        words.say("response.head-frequency"),
                        words.say("response.head-level"),
                        words.say("response.head-wavelength")),
                rows);
    }

    private List<String> row(Response r, ContourPoint p) {
        Quantity frequency = Find.figure(p.frequency());
        return List.of(
                new ResponseWords(words).who(r),
                kind(p),
                words.full(frequency, false),
                words.full(Find.figure(p.magnitude()), true),
                p.wavelengthMm() == null
                        ? DataTable.NOTHING
                        : Numbers.withUnit(words.significant(p.wavelengthMm(), 2), "mm"));
    }
}

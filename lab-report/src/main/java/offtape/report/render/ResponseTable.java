package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** The response at the frequencies that the trade usually lists. */
final class ResponseTable {

    private static final double[] USUAL_HZ = {
        31.5, 40, 63, 100, 125, 250, 500, 1000, 2000, 4000, 6300, 8000, 10_000, 12_500, 14_000,
        16_000, 18_000, 20_000
    };

    private ResponseTable() {}

    /** The table of one session: a column a curve, and the largest uncertainty of each row. */
    static DataTable of(Wording words, Results results) {
        List<Response> curves =
                results.response().stream().filter(r -> r.frequencyHz().length > 0).toList();
        ResponseWords names = new ResponseWords(words);
        return of(words, curves, curves.stream().map(names::label).toList());
    }

    /** The table of any curves, each with a point at least, under heads of their own. */
    static DataTable of(Wording words, List<Response> curves, List<String> labels) {
        List<String> heads = new ArrayList<>(List.of(words.say("response.head-frequency")));
        labels.forEach(label -> heads.add(label + ", dB"));
        heads.add(words.say("response.head-uncertainty"));
        List<List<String>> rows =
                Arrays.stream(USUAL_HZ)
                        .filter(f -> curves.stream().anyMatch(r -> holds(r, f)))
                        .mapToObj(f -> row(words, curves, f))
                        .toList();
        return new DataTable(words.say("response.table"), List.copyOf(heads), rows);
    }

    private static List<String> row(Wording words, List<Response> curves, double hz) {
        List<String> cells = new ArrayList<>(List.of(usual(words, hz)));
        double uncertainty = 0;
        for (Response r : curves) {
            if (holds(r, hz)) {
                cells.add(words.signed(at(r, r.magnitudeDb(), hz), 1));
                uncertainty = Math.max(uncertainty, at(r, r.uncertaintyDb(), hz));
            } else {
                cells.add(DataTable.NOTHING);
            }
        }
        cells.add(words.decimal(uncertainty, 2));
        return List.copyOf(cells);
    }

    /** The trade's own way of writing: {@code 31.5 Hz}, {@code 12.5 kHz}. */
    private static String usual(Wording words, double hz) {
        return hz < 1000
                ? words.significant(hz, 4) + " Hz"
                : words.significant(hz / 1000, 4) + " kHz";
    }

    private static boolean holds(Response response, double hz) {
        double[] f = response.frequencyHz();
        return hz >= f[0] * 0.999 && hz <= f[f.length - 1] * 1.001;
    }

    /** {@code values} at {@code hz}, straight between neighbours on a logarithmic scale. */
    static double at(Response response, double[] values, double hz) {
        double[] f = response.frequencyHz();
        int i = Arrays.binarySearch(f, hz);
        if (i >= 0) {
            return values[i];
        }
        int above = Math.min(-i - 1, f.length - 1);
        int below = Math.max(0, -i - 2);
        if (above == below || f[below] <= 0) {
            return values[above];
        }
        double part = Math.log(hz / f[below]) / Math.log(f[above] / f[below]);
        return values[below] + Math.min(1, part) * (values[above] - values[below]);
    }
}

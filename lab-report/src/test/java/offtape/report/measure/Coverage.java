package offtape.report.measure;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import offtape.core.standard.TrackSpacing;
import offtape.report.result.Session;

/** How often the truth lies within the stated uncertainty, figure by figure. */
final class Coverage {

    private final Map<String, List<CoverageCase>> byFigure = new LinkedHashMap<>();

    /** All figures of a machine. */
    static List<CoverageCase> of(FaultyMachines.Faulty faulty, Path folder) {
        double mm = faulty.trackSpacingMm();
        Session session =
                new Session(
                        faulty.machine().name(),
                        null,
                        faulty.tapeMmPerS(),
                        "reference-tape",
                        "",
                        null,
                        "",
                        "",
                        TrackSpacing.parse(mm + "mm"));
        MeasuredMachine measured =
                Unbroken.required(MeasuredMachine.of(faulty.machine(), session, folder));
        return Stream.of(
                        SpeedCases.of(measured),
                        ResponseCases.of(measured),
                        LevelCases.of(measured),
                        PairCases.of(measured))
                .flatMap(List::stream)
                .toList();
    }

    void add(List<CoverageCase> cases) {
        for (CoverageCase c : cases) {
            byFigure.computeIfAbsent(c.figure(), f -> new ArrayList<>()).add(c);
        }
    }

    /**
     * A figure's row.
     *
     * @param uncertainty median
     * @param share median distance from the truth as a share of the uncertainty
     */
    record Row(
            String figure, int cases, int inside, double uncertainty, String unit, double share) {

        double insidePercent() {
            return 100.0 * inside / cases;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "| %s | %d | %.1f %% | %.2g %s | %.2f |",
                    figure,
                    cases,
                    insidePercent(),
                    uncertainty,
                    unit,
                    share);
        }
    }

    List<Row> rows() {
        return byFigure.values().stream().map(Coverage::row).toList();
    }

    private static Row row(List<CoverageCase> cases) {
        CoverageCase any = cases.get(0);
        int inside = (int) cases.stream().filter(CoverageCase::holds).count();
        return new Row(
                any.figure(),
                cases.size(),
                inside,
                median(cases.stream().mapToDouble(CoverageCase::uncertainty).toArray()),
                any.unit(),
                median(cases.stream().mapToDouble(CoverageCase::share).toArray()));
    }

    private static double median(double[] x) {
        Arrays.sort(x);
        return (x[(x.length - 1) / 2] + x[x.length / 2]) / 2;
    }

    /** The table as the documentation holds it. */
    String table() {
        StringBuilder text =
                new StringBuilder("| figure | cases | inside | median ± | median error / ± |\n")
                        .append("| --- | --- | --- | --- | --- |\n");
        rows().forEach(r -> text.append(r).append('\n'));
        return text.toString();
    }

    /** Every case, for a look at what lies outside. */
    String csv() {
        StringBuilder text = new StringBuilder("machine,figure,unit,found,uncertainty,truth\n");
        for (List<CoverageCase> cases : byFigure.values()) {
            for (CoverageCase c : cases) {
                text.append(
                        String.format(
                                Locale.ROOT,
                                "%s,\"%s\",%s,%.9g,%.9g,%.9g\n",
                                c.machine(),
                                c.figure(),
                                c.unit(),
                                c.found(),
                                c.uncertainty(),
                                c.truth()));
            }
        }
        return text.toString();
    }
}

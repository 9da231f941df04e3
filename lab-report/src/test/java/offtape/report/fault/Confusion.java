package offtape.report.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import offtape.report.fault.rank.Diagnosis;
import offtape.report.fault.rank.Ranked;
import offtape.report.fault.rank.Signatures;

/** Which faults were named for which. */
final class Confusion {

    private final Signatures signatures;
    private final List<Case> cases = new ArrayList<>();

    Confusion(Signatures signatures) {
        this.signatures = signatures;
    }

    /** One session and what was said of it. */
    private record Case(FaultSession session, Diagnosis said) {

        /** Codes of the faults it was given, as its mode calls them. */
        List<String> given() {
            return session.faults().stream()
                    .map(FaultSession.Given::code)
                    .map(
                            c ->
                                    c.equals("azimuth") && !session.mode().equals("reference-tape")
                                            ? "record-azimuth"
                                            : c)
                    .toList();
        }

        String first() {
            return calledSound() ? "sound" : said.faults().get(0).code();
        }

        boolean calledSound() {
            return said.faults().stream().noneMatch(f -> f.likelihood() >= 0.5);
        }

        /** Whether all that was given is among the likeliest faults. */
        boolean among(int count) {
            List<String> named = said.faults().stream().limit(count).map(Ranked::code).toList();
            return !calledSound() && named.containsAll(given());
        }

        /** Whether the fault is the first or second of all, however likely any is. */
        boolean rankedFirstOrSecond() {
            return said.faults().stream().limit(2).map(Ranked::code).toList().containsAll(given());
        }

        /** Whether the fault is the first or second answer that is told, "sound" being one. */
        boolean firstOrSecond() {
            double likelihood =
                    said.faults().stream()
                            .filter(f -> given().contains(f.code()))
                            .mapToDouble(Ranked::likelihood)
                            .max()
                            .orElse(0);
            long before =
                    said.faults().stream().filter(f -> f.likelihood() > likelihood).count()
                            + (said.sound() > likelihood ? 1 : 0);
            return likelihood >= Likelihood.TOLD && before < 2;
        }
    }

    void addAll(List<FaultSession> sessions) {
        for (FaultSession s : sessions) {
            Diagnosis said =
                    Diagnosis.of(
                                    signatures,
                                    s.mmPerS(),
                                    FaultCatalogue.codesOf(s.mode()),
                                    s.readings())
                            .orElseThrow();
            cases.add(new Case(s, said));
        }
    }

    double soundShare() {
        List<Case> of = cases(0);
        return of.stream().filter(Case::calledSound).count() / (double) of.size();
    }

    double firstShare() {
        return share(1, 1);
    }

    double secondShare() {
        return cases(1).stream().filter(Case::firstOrSecond).count() / (double) cases(1).size();
    }

    private double share(int faults, int among) {
        List<Case> of = cases(faults);
        return of.stream().filter(c -> c.among(among)).count() / (double) of.size();
    }

    private List<Case> cases(int faults) {
        return cases.stream().filter(c -> c.session().faults().size() == faults).toList();
    }

    /** The table as the documentation holds it. */
    String table() {
        StringBuilder text = new StringBuilder();
        line(text, "sound machines called sound", soundShare(), cases(0).size());
        line(text, "one fault: named first", firstShare(), cases(1).size());
        line(text, "one fault: first or second, not called sound", share(1, 2), cases(1).size());
        double ranked =
                cases(1).stream().filter(Case::rankedFirstOrSecond).count()
                        / (double) cases(1).size();
        line(text, "one fault: first or second, however likely", ranked, cases(1).size());
        line(text, "one fault: first or second answer", secondShare(), cases(1).size());
        line(text, "two faults: both named first", share(2, 2), cases(2).size());
        line(text, "two faults: both among the first three", share(2, 3), cases(2).size());
        text.append(
                "\n| fault | machines | named first | taken for (times) |\n| --- | --- | --- | --- |\n");
        Map<String, List<Case>> byCode = new TreeMap<>();
        cases(1).forEach(
                        c ->
                                byCode.computeIfAbsent(c.given().get(0), k -> new ArrayList<>())
                                        .add(c));
        byCode.put("sound", cases(0));
        byCode.forEach((code, of) -> row(text, code, of));
        return text.toString();
    }

    private static void line(StringBuilder text, String what, double share, int of) {
        text.append(String.format(Locale.ROOT, "- %s: %.1f %% of %d%n", what, 100 * share, of));
    }

    private static void row(StringBuilder text, String code, List<Case> of) {
        Map<String, Integer> taken = new TreeMap<>();
        of.stream()
                .map(Case::first)
                .filter(f -> !f.equals(code))
                .forEach(f -> taken.merge(f, 1, Integer::sum));
        long right = of.stream().filter(c -> c.first().equals(code)).count();
        StringBuilder others = new StringBuilder();
        taken.forEach(
                (k, n) -> others.append(others.length() == 0 ? "" : ", ").append(k + " " + n));
        text.append(
                String.format(
                        Locale.ROOT,
                        "| %s | %d | %d | %s |%n",
                        code,
                        of.size(),
                        right,
                        others.length() == 0 ? "–" : others));
    }
}

package offtape.report.fault;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import offtape.report.fault.rank.Course;
import offtape.report.fault.rank.Signatures;
import offtape.report.fault.rank.Sound;
import offtape.report.fault.symptom.Joining;
import offtape.report.fault.symptom.Reading;
import offtape.report.fault.symptom.Symptom;
import offtape.report.fault.symptom.Symptoms;
import offtape.report.fault.symptom.TapeKind;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;

/** Learns signatures from simulated machines. */
final class Learner {

    /** A symptom that fewer of the sound machines show is left out. */
    private static final double LEAST_SHARE = 0.2;

    /** Correlations of few machines are drawn towards none by this share. */
    private static final double SHRINK = 0.15;

    /** A symptom counts as moved by so many of its grains. */
    private static final double MOVED = 0.6;

    /**
     * A change is believed if it lies so many spreads from none over all severities: three standard
     * deviations of the mean of seven machines.
     */
    private static final double STEADY = 1.1;

    private final List<FaultSession> sound;
    private final Map<Integer, FaultSession> soundByNumber;
    private final List<FaultSession> faulty;

    Learner(List<FaultSession> sound, List<FaultSession> faulty) {
        this.sound = sound;
        this.soundByNumber = sound.stream().collect(Collectors.toMap(FaultSession::sound, s -> s));
        this.faulty = faulty;
    }

    Signatures signatures(String made) {
        return new Signatures(
                Signatures.FORMAT,
                Signatures.VERSION,
                made,
                List.of(sound("reel"), sound("cassette")),
                FaultForms.all().stream().map(this::course).toList());
    }

    private Sound sound(String tape) {
        List<FaultSession> of =
                sound.stream()
                        .filter(
                                s ->
                                        tape.equals(
                                                TapeKind.isCassette(s.mmPerS())
                                                        ? "cassette"
                                                        : "reel"))
                        .toList();
        List<Symptom> shown =
                Symptoms.all().stream()
                        .filter(
                                s ->
                                        of.stream()
                                                        .filter(
                                                                m ->
                                                                        m.readings()
                                                                                .containsKey(
                                                                                        s.key()))
                                                        .count()
                                                >= LEAST_SHARE * of.size())
                        .toList();
        double[] mean = shown.stream().mapToDouble(s -> mean(of, s)).toArray();
        double[][] covariance = new double[shown.size()][];
        for (int i = 0; i < mean.length; i++) {
            covariance[i] = new double[i + 1];
            for (int j = 0; j <= i; j++) {
                double c = covariance(of, shown.get(i), mean[i], shown.get(j), mean[j]);
                covariance[i][j] = rounded(i == j ? c : (1 - SHRINK) * c);
            }
        }
        return new Sound(
                tape,
                of.size(),
                shown.stream().map(Symptom::key).toList(),
                Arrays.stream(mean).map(Learner::rounded).toArray(),
                covariance);
    }

    private static double mean(List<FaultSession> of, Symptom s) {
        return of.stream()
                .filter(m -> m.readings().containsKey(s.key()))
                .mapToDouble(m -> m.readings().get(s.key()).scaled())
                .average()
                .orElse(0);
    }

    private static double covariance(
            List<FaultSession> of, Symptom a, double meanA, Symptom b, double meanB) {
        return of.stream()
                .map(FaultSession::readings)
                .filter(r -> r.containsKey(a.key()) && r.containsKey(b.key()))
                .mapToDouble(
                        r -> (r.get(a.key()).scaled() - meanA) * (r.get(b.key()).scaled() - meanB))
                .average()
                .orElse(0);
    }

    private Course course(FaultForm form) {
        List<FaultSession> of =
                faulty.stream()
                        .filter(
                                s ->
                                        s.faults().get(0).code().equals(form.code())
                                                && s.faults()
                                                        .get(0)
                                                        .variant()
                                                        .equals(form.variant()))
                        .toList();
        List<Course.Move> moves = new ArrayList<>();
        // what both channels have alike can prefer neither
        boolean even = form.side().equals("both") && !form.mirrored();
        Symptoms.all().stream()
                .filter(s -> !(even && s.mirrored()))
                .forEach(s -> move(of, s).ifPresent(moves::add));
        return new Course(form.code(), form.variant(), form.side(), form.mirrored(), moves);
    }

    /** How a symptom moves over severity: a parabola through the machines, and what scatters. */
    private Optional<Course.Move> move(List<FaultSession> of, Symptom symptom) {
        List<FaultSession> shown =
                of.stream().filter(s -> s.readings().containsKey(symptom.key())).toList();
        double moved =
                shown.stream()
                        .mapToDouble(s -> scaled(s, symptom) - own(s, symptom))
                        .map(change -> change * change)
                        .average()
                        .orElse(0);
        if (shown.size() < 6 || Math.sqrt(moved) < MOVED * symptom.grain()) {
            return Optional.empty();
        }
        if (symptom.joining() == Joining.LARGEST) {
            double[] changes =
                    shown.stream().mapToDouble(s -> scaled(s, symptom) - own(s, symptom)).toArray();
            boolean steady =
                    StatUtils.mean(changes) > STEADY * Math.sqrt(StatUtils.variance(changes));
            return steady ? Optional.of(fitted(symptom, shown, s -> 0)) : Optional.empty();
        }
        // a fault adds to what the machine did, or comes in its place, as a wrong speed does
        Course.Move added = fitted(symptom, shown, s -> own(s, symptom));
        Course.Move instead = fitted(symptom, shown, s -> usual(s, symptom));
        Course.Move move = added.spread() <= instead.spread() ? added : instead;
        return middle(move) < STEADY * move.spread() ? Optional.empty() : Optional.of(move);
    }

    private static double scaled(FaultSession s, Symptom symptom) {
        return s.readings().get(symptom.key()).scaled();
    }

    /** How far a symptom moves over all severities. */
    private static double middle(Course.Move move) {
        return Math.abs(move.at(0.2) + move.at(0.5) + move.at(0.8)) / 3;
    }

    /**
     * What the machine showed without the fault, or what machines like it do if it showed nothing.
     */
    private double own(FaultSession s, Symptom symptom) {
        Reading own = soundByNumber.get(s.sound()).readings().get(symptom.key());
        return own == null ? usual(s, symptom) : own.scaled();
    }

    /** What sound machines show on average at that tape speed. */
    private double usual(FaultSession s, Symptom symptom) {
        return mean(
                sound.stream()
                        .filter(
                                m ->
                                        TapeKind.isCassette(m.mmPerS())
                                                == TapeKind.isCassette(s.mmPerS()))
                        .toList(),
                symptom);
    }

    private static Course.Move fitted(
            Symptom symptom, List<FaultSession> of, ToDoubleFunction<FaultSession> from) {
        OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
        fit.newSampleData(
                of.stream().mapToDouble(s -> scaled(s, symptom) - from.applyAsDouble(s)).toArray(),
                of.stream()
                        .map(s -> new double[] {s.severity(), s.severity() * s.severity()})
                        .toArray(double[][]::new));
        double[] course =
                Arrays.stream(fit.estimateRegressionParameters()).map(Learner::rounded).toArray();
        return new Course.Move(
                symptom.key(), course, rounded(fit.estimateRegressionStandardError()));
    }

    private static double rounded(double x) {
        return new BigDecimal(x).round(new MathContext(5)).doubleValue();
    }
}

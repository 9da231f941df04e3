package offtape.report.fault.rank;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import offtape.report.fault.symptom.Joining;
import offtape.report.fault.symptom.Reading;
import offtape.report.fault.symptom.Symptom;
import offtape.report.fault.symptom.Symptoms;

/**
 * How likely one session's symptoms are under sets of faults.
 *
 * <p>Symptoms that add are taken as those of a sound machine, normally distributed about their mean
 * with their covariance, plus the change that each fault makes; so they are turned by the Cholesky
 * factor of the covariance into ones that are independent. Of the others the largest change counts
 * alone. Each is judged with tails heavier than normal (Student's t with sixteen degrees of
 * freedom): one odd figure must not outvote all others.
 */
final class SymptomLikelihood {

    /** A fault's course is trusted within this share of the change it makes. */
    private static final double COURSE_ERROR = 0.12;

    /** A machine that is strange in no known way spreads so many times wider than sound ones. */
    private static final double STRANGE = 5;

    private final List<Symptom> adding = new ArrayList<>();
    private final List<Symptom> covering = new ArrayList<>();
    private final double[][] factor;
    private final double[] residual;
    private final double[] reading;
    private final double[] place;
    private final double[] spread;

    SymptomLikelihood(Sound sound, Map<String, Reading> readings) {
        Map<String, Integer> rows = new HashMap<>();
        for (int i = 0; i < sound.symptoms().size(); i++) {
            rows.put(sound.symptoms().get(i), i);
        }
        for (Symptom s : Symptoms.all()) {
            if (rows.containsKey(s.key()) && readings.containsKey(s.key())) {
                (s.joining() == Joining.SUM ? adding : covering).add(s);
            }
        }
        factor = cholesky(covariance(sound, rows, readings));
        residual = solved(departures(adding, sound, rows, readings));
        int n = covering.size();
        reading = new double[n];
        place = new double[n];
        spread = new double[n];
        for (int j = 0; j < n; j++) {
            Symptom s = covering.get(j);
            int row = rows.get(s.key());
            reading[j] = readings.get(s.key()).scaled();
            place[j] = sound.mean()[row];
            spread[j] = variance(s, sound.covariance(row, row), readings);
        }
    }

    /** How many symptoms the session shows. */
    int symptoms() {
        return adding.size() + covering.size();
    }

    private double[][] covariance(
            Sound sound, Map<String, Integer> rows, Map<String, Reading> readings) {
        int n = adding.size();
        double[][] c = new double[n][n];
        for (int i = 0; i < n; i++) {
            int row = rows.get(adding.get(i).key());
            for (int j = 0; j < i; j++) {
                c[i][j] = sound.covariance(row, rows.get(adding.get(j).key()));
            }
            c[i][i] = variance(adding.get(i), sound.covariance(row, row), readings);
        }
        return c;
    }

    private static double variance(Symptom s, double own, Map<String, Reading> readings) {
        double sigma = readings.get(s.key()).sigma();
        return own + s.grain() * s.grain() + sigma * sigma;
    }

    private static double[] departures(
            List<Symptom> of,
            Sound sound,
            Map<String, Integer> rows,
            Map<String, Reading> readings) {
        return of.stream()
                .mapToDouble(s -> readings.get(s.key()).scaled() - sound.mean()[rows.get(s.key())])
                .toArray();
    }

    private static double[][] cholesky(double[][] c) {
        int n = c.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = c[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = i == j ? Math.sqrt(Math.max(1e-12, sum)) : sum / l[j][j];
            }
        }
        return l;
    }

    private double[] solved(double[] x) {
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double sum = x[i];
            for (int k = 0; k < i; k++) {
                sum -= factor[i][k] * y[k];
            }
            y[i] = sum / factor[i][i];
        }
        return y;
    }

    /**
     * What a fault does.
     *
     * @param mirrored whether it has the channels exchanged
     * @param severity 0 to 1
     */
    Effect effect(Course course, boolean mirrored, double severity) {
        double[] change = new double[adding.size()];
        double[] extra = new double[adding.size()];
        for (int i = 0; i < change.length; i++) {
            Symptom s = adding.get(i);
            double sign = mirrored && s.mirrored() ? -1 : 1;
            int at = i;
            course.move(s.key())
                    .ifPresent(
                            m -> {
                                change[at] = sign * m.at(severity);
                                extra[at] = m.spread() * m.spread();
                            });
        }
        double[] shift = solved(change);
        double[] turned = turned(extra);
        for (int i = 0; i < shift.length; i++) {
            turned[i] += COURSE_ERROR * COURSE_ERROR * shift[i] * shift[i];
        }
        double[] to = new double[covering.size()];
        double[] about = new double[covering.size()];
        Arrays.fill(to, Double.NaN);
        for (int j = 0; j < to.length; j++) {
            Symptom s = covering.get(j);
            int at = j;
            course.move(s.key())
                    .ifPresent(
                            m -> {
                                to[at] = m.at(severity);
                                about[at] = m.spread() * m.spread() + s.grain() * s.grain();
                            });
        }
        return new Effect(shift, turned, to, about);
    }

    /** Variances seen through the spread of sound machines. */
    private double[] turned(double[] variance) {
        double[] sum = new double[variance.length];
        for (int j = 0; j < variance.length; j++) {
            if (variance[j] > 0) {
                double[] unit = new double[variance.length];
                unit[j] = Math.sqrt(variance[j]);
                double[] column = solved(unit);
                for (int i = j; i < sum.length; i++) {
                    sum[i] += column[i] * column[i];
                }
            }
        }
        return sum;
    }

    /** Logarithm of the likelihood under faults together; none for a sound machine. */
    double log(Effect... faults) {
        Tails tails = new Tails();
        for (int i = 0; i < residual.length; i++) {
            double z = residual[i];
            double variance = 1;
            for (Effect f : faults) {
                z -= f.shift()[i];
                variance += f.extra()[i];
            }
            tails.add(z * z, variance);
        }
        for (int j = 0; j < reading.length; j++) {
            double at = place[j];
            double variance = spread[j];
            for (Effect f : faults) {
                if (f.place()[j] > at) {
                    at = f.place()[j];
                    variance = f.spread()[j];
                }
            }
            tails.add((reading[j] - at) * (reading[j] - at), variance);
        }
        return tails.log();
    }

    /** The same of a machine that is strange in no known way. */
    double logStrange() {
        double wide = STRANGE * STRANGE;
        Tails tails = new Tails();
        for (double z : residual) {
            tails.add(z * z, wide);
        }
        for (int j = 0; j < reading.length; j++) {
            double d = reading[j] - place[j];
            tails.add(d * d, wide * spread[j]);
        }
        return tails.log();
    }
}

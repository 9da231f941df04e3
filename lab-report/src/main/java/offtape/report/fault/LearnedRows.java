package offtape.report.fault;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.report.fault.rank.Course;
import offtape.report.fault.rank.Signatures;
import offtape.report.fault.rank.Sound;
import offtape.report.fault.symptom.Joining;
import offtape.report.fault.symptom.Symptom;
import offtape.report.fault.symptom.Symptoms;

/** How each fault typically moves the figures, from its learned signature. */
public final class LearnedRows {

    private static final Sentences SAID = Sentences.near(LearnedRows.class);

    /** Severities between which changes are told: neither the slightest nor the grossest. */
    private static final double SLIGHT = 0.25;

    private static final double STRONG = 0.75;

    /** A figure that moves by less than this many spreads of sound machines is left out. */
    private static final double MOVES = 1;

    private static final int MOST = 8;

    private final Signatures signatures;

    private LearnedRows(Signatures signatures) {
        this.signatures = signatures;
    }

    /** Those of a fault; empty if it moves no figure that is looked at. */
    public static List<SignatureRow> of(String code) {
        return new LearnedRows(Signatures.load()).rows(code);
    }

    private List<SignatureRow> rows(String code) {
        List<SignatureRow> rows = new ArrayList<>();
        List<Course> courses = signatures.courses(code);
        for (Course course : courses) {
            boolean isOneOfSeveral = courses.size() > 1;
            Symptoms.all().stream()
                    .filter(s -> strength(course, s) >= MOVES)
                    .sorted(
                            Comparator.comparingDouble((Symptom s) -> strength(course, s))
                                    .reversed())
                    .limit(MOST)
                    .forEach(
                            s ->
                                    rows.add(
                                            new SignatureRow(
                                                    isOneOfSeveral ? form(course, s) : s.words(),
                                                    change(
                                                            s,
                                                            course.move(s.key()).orElseThrow()))));
        }
        return rows;
    }

    /** A figure with the form of a fault that comes in several. */
    private static String form(Course course, Symptom symptom) {
        String key = course.variant().replace(",", "").replace(' ', '-');
        return SAID.say("form-" + key, symptom.words());
    }

    /** By how many spreads of sound machines a figure moves at middling severity. */
    private double strength(Course course, Symptom symptom) {
        Sound sound = signatures.sound().get(0);
        Optional<Course.Move> move = course.move(symptom.key());
        int row = sound.symptoms().indexOf(symptom.key());
        if (move.isEmpty() || row < 0) {
            return 0;
        }
        double at = move.get().at(0.5);
        double off = symptom.joining() == Joining.SUM ? at : at - sound.mean()[row];
        double spread = Math.hypot(Math.sqrt(sound.covariance(row, row)), symptom.grain());
        return symptom.joining() == Joining.SUM ? Math.abs(off) / spread : off / spread;
    }

    private static String change(Symptom symptom, Course.Move move) {
        if (symptom.unit().isEmpty()) {
            return SAID.say("is-seen");
        }
        String slight = SymptomWords.value(symptom, move.at(SLIGHT));
        String strong = SymptomWords.value(symptom, move.at(STRONG));
        if (slight.equals(strong)) {
            return SymptomWords.amount(symptom, slight);
        }
        return symptom.joining() == Joining.SUM && symptom.unit().equals("dB")
                ? SAID.say("against-sound", signed(slight), signed(strong))
                : SymptomWords.amount(symptom, slight + " to " + strong);
    }

    private static String signed(String number) {
        return number.startsWith("−") ? number : "+" + number;
    }
}

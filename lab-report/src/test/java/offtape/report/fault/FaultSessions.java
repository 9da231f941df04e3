package offtape.report.fault;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import offtape.report.fault.symptom.Symptoms;

/** Draws machines, sound ones and such with faults, and measures them. */
final class FaultSessions {

    /** Share of machines on which the full programme is played. */
    private static final double FULL = 0.04;

    private final Bench bench;

    FaultSessions(Path folder) {
        this.bench = new Bench(folder);
    }

    /** A machine to be measured. */
    private record Plan(
            Workshop machine, List<FaultSession.Given> faults, double severity, int sound) {}

    /** Sound machines, from one number to behind another. */
    List<FaultSession> sound(int from, int to, long seed) {
        return measured(
                IntStream.range(from, to)
                        .mapToObj(i -> new Plan(soundMachine(seed, i), List.of(), 0, i))
                        .toList());
    }

    /**
     * Machines with one form of a fault, of evenly spread severity, made of the sound machines of
     * the same seed.
     *
     * @param each how many
     * @param count how many sound machines there are to choose from
     */
    List<FaultSession> learning(FaultForm form, int each, int count, long seed) {
        SplittableRandom seeds = new SplittableRandom(seed + form.name().hashCode());
        List<Plan> plans = new ArrayList<>();
        for (int k = 0; k < each; k++) {
            Draws draw = new Draws(seeds.split());
            int sound = draw.oneOf(count);
            while (!form.suitsWholly(soundMachine(seed, sound))) {
                sound = draw.oneOf(count);
            }
            double severity = (k + draw.between(0, 1)) / each;
            plans.add(plan(soundMachine(seed, sound), sound, form, severity, draw));
        }
        return measured(plans);
    }

    /**
     * Machines with faults drawn at random.
     *
     * @param from number of the first to be measured
     * @param to number behind the last
     * @param count how many there are in all
     * @param faults how many each has, 1 or 2
     */
    List<FaultSession> faulty(int from, int to, int count, int faults, long seed) {
        SplittableRandom seeds = new SplittableRandom(seed + 2);
        List<Plan> plans = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            plans.add(drawn(i, count, faults, new Draws(seeds.split()), seed + 3));
        }
        return measured(plans.subList(from, to));
    }

    private static Plan drawn(int number, int count, int faults, Draws draw, long seed) {
        List<String> codes = FaultForms.all().stream().map(FaultForm::code).distinct().toList();
        Workshop sound = soundMachine(seed, number);
        String mode = sound.spec().mode().key();
        List<FaultForm> forms = new ArrayList<>();
        // every fault comes about as often as any other
        for (int next = number * codes.size() / count; forms.size() < faults; ) {
            String code = codes.get((next + codes.size()) % codes.size());
            List<FaultForm> of =
                    FaultForms.all().stream().filter(f -> f.code().equals(code)).toList();
            FaultForm form = of.get(draw.oneOf(of.size()));
            boolean other = forms.stream().noneMatch(f -> Clashes.clash(f, form));
            if (other && form.suits(sound)) {
                forms.add(form);
            }
            next = draw.oneOf(codes.size());
        }
        double severity = draw.between(0, 1);
        Workshop machine = inModeOf(forms, sound, draw);
        List<FaultSession.Given> given = new ArrayList<>();
        for (FaultForm form : forms) {
            machine =
                    form.giver()
                            .give(machine, given.isEmpty() ? severity : draw.between(0, 1), draw);
            given.add(new FaultSession.Given(form.code(), form.variant(), form.side()));
        }
        return new Plan(machine, given, severity, number);
    }

    private static Plan plan(
            Workshop sound, int number, FaultForm form, double severity, Draws draw) {
        Workshop machine = inModeOf(List.of(form), sound, draw);
        return new Plan(
                form.giver().give(machine, severity, draw),
                List.of(new FaultSession.Given(form.code(), form.variant(), form.side())),
                severity,
                number);
    }

    /** A machine recorded in a mode that shows all of its faults. */
    private static Workshop inModeOf(List<FaultForm> forms, Workshop sound, Draws draw) {
        List<String> modes =
                List.of("reference-tape", "two-pass", "off-tape").stream()
                        .filter(
                                m ->
                                        forms.stream()
                                                .allMatch(
                                                        f ->
                                                                FaultCatalogue.of(f.code())
                                                                        .showsIn(m)))
                        .toList();
        String own = sound.spec().mode().key();
        return modes.contains(own)
                ? sound
                : sound.with("mode", "\"" + modes.get(draw.oneOf(modes.size())) + "\"");
    }

    private static Workshop soundMachine(long seed, int number) {
        Draws draw = new Draws(new SplittableRandom(seed * 1_000_003 + number));
        Workshop machine = SoundMachines.draw(draw, FULL);
        String mode =
                draw.chance(0.5) ? "reference-tape" : draw.chance(0.5) ? "two-pass" : "off-tape";
        return machine.with("mode", "\"" + mode + "\"");
    }

    private List<FaultSession> measured(List<Plan> plans) {
        return plans.parallelStream().map(this::measured).toList();
    }

    private FaultSession measured(Plan plan) {
        return new FaultSession(
                plan.faults(),
                plan.severity(),
                plan.sound(),
                plan.machine().spec().mode().key(),
                plan.machine().mmPerS(),
                Symptoms.of(bench.measured(plan.machine())));
    }
}

package offtape.report.fault.symptom;

import java.util.List;
import java.util.Map;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Results;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.TransportSpeed;

/** What the speed tone shows; off tape, what the transport itself does. */
final class SpeedSymptoms {

    private static final Sentences SAID = Sentences.near(SpeedSymptoms.class);

    private static final Symptom DEVIATION =
            new Symptom(
                    "speed-deviation",
                    SAID.say("speed-deviation"),
                    "%",
                    Scale.SIGNED,
                    Joining.SUM,
                    false,
                    0.15);
    private static final Symptom DRIFT = Symptom.size("drift", SAID.say("drift"), "%", 0.15);
    private static final Symptom WOW =
            Symptom.size("irregular-wow", SAID.say("irregular-wow"), "%", 0.1);
    private static final Symptom FLUTTER =
            Symptom.size("irregular-flutter", SAID.say("irregular-flutter"), "%", 0.1);
    private static final Symptom CAPSTAN =
            Symptom.size("capstan-line", SAID.say("capstan-line"), "%", 0.08);
    private static final Symptom ROLLER =
            Symptom.size("roller-line", SAID.say("roller-line"), "%", 0.08);
    private static final Symptom REEL = Symptom.size("reel-line", SAID.say("reel-line"), "%", 0.08);
    private static final Symptom MOTOR =
            Symptom.size("motor-line", SAID.say("motor-line"), "%", 0.08);
    private static final Symptom SCRAPE =
            Symptom.size("scrape-flutter", SAID.say("scrape-flutter"), "%", 0.08);
    private static final Symptom DROPOUTS =
            Symptom.size("dropouts", SAID.say("dropouts"), "a minute", 0.15);

    /** All of them. */
    static final List<Symptom> ALL =
            List.of(DEVIATION, DRIFT, WOW, FLUTTER, CAPSTAN, ROLLER, REEL, MOTOR, SCRAPE, DROPOUTS);

    /** Less than this nobody asks for, percent. */
    private static final double LEAST_PERCENT = 0.01;

    /** Scrape flutter below this does not stand out of usual hiss, percent. */
    private static final double LEAST_SCRAPE = 0.03;

    /** One dropout in so many minutes is as good as none. */
    private static final double LEAST_A_MINUTE = 0.3;

    /** Where wow ends and flutter begins, hertz (IEC 60386). */
    private static final double FLUTTER_HZ = 6;

    private SpeedSymptoms() {}

    static void read(Results results, Symptoms to) {
        Speed speed = results.speed();
        if (speed != null) {
            to.put(DEVIATION, speed.deviation());
            TransportSpeed own = speed.transport();
            if (own == null) {
                put(speed.drift(), to);
                motion(results, speed.components(), speed.wowRms(), speed.flutterRms(), to);
            } else {
                put(own.drift(), to);
                motion(results, own.components(), own.wowRms(), own.flutterRms(), to);
            }
        }
        if (speed != null && speed.scrapeBandHz() != null) {
            to.put(SCRAPE, Math.max(LEAST_SCRAPE, Find.value(speed.scrapeFlutter()).orElse(0)), 0);
        }
        if (results.dropoutSummary() != null && results.dropoutSummary().perMinute().isKnown()) {
            double rate = results.dropoutSummary().perMinute().value();
            to.put(DROPOUTS, Math.max(LEAST_A_MINUTE, rate), 0);
        }
    }

    private static void put(Quantity drift, Symptoms to) {
        if (drift.isKnown()) {
            to.put(DRIFT, Math.max(LEAST_PERCENT, drift.value()), 0);
        }
    }

    private static void motion(
            Results results,
            List<SpeedComponent> lines,
            Quantity wow,
            Quantity flutter,
            Symptoms to) {
        rest(WOW, wow, lines, 0.2, FLUTTER_HZ, to);
        rest(FLUTTER, flutter, lines, FLUTTER_HZ, 200, to);
        Double speed = results.session().tapeSpeedMmPerS();
        if (speed == null || !wow.isKnown()) {
            return;
        }
        Map<SpeedLineKinds.Kind, Double> strongest = new SpeedLineKinds(lines, speed).strongest();
        put(CAPSTAN, strongest.get(SpeedLineKinds.Kind.CAPSTAN), to);
        put(ROLLER, strongest.get(SpeedLineKinds.Kind.ROLLER), to);
        put(REEL, strongest.get(SpeedLineKinds.Kind.REEL), to);
        put(MOTOR, strongest.get(SpeedLineKinds.Kind.MOTOR), to);
    }

    private static void put(Symptom symptom, Double peak, Symptoms to) {
        to.put(symptom, Math.max(LEAST_PERCENT, peak == null ? 0 : peak), 0);
    }

    /** What a band holds beside its lines. */
    private static void rest(
            Symptom symptom,
            Quantity rms,
            List<SpeedComponent> lines,
            double fromHz,
            double toHz,
            Symptoms to) {
        if (!rms.isKnown()) {
            return;
        }
        double inLines =
                lines.stream()
                        .filter(l -> l.middleHz() >= fromHz && l.middleHz() < toHz)
                        .mapToDouble(l -> l.peakPercent() * l.peakPercent() / 2)
                        .sum();
        double rest = Math.sqrt(Math.max(0, rms.value() * rms.value() - inLines));
        double value = Math.max(LEAST_PERCENT, rest);
        to.put(symptom, value, Math.min(value, rms.uncertainty() / 2));
    }
}

package offtape.report.measure.transport;

import java.util.EnumMap;
import java.util.Map;
import offtape.core.standard.FlutterBand;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.measure.speed.SpeedReader;

/**
 * The readings of an undone deviation. A mean square is that of the deviation as it was undone plus
 * what is expected of the motion that did not come through: together the expected power of the
 * motion itself. Peaks are enlarged alike.
 */
final class TransportReadings {

    private static final Sentences SAID = Sentences.near(TransportReadings.class);

    private static final String UNIT = "%";

    /** Share of a reading that filters and detector may err by, k = 2. */
    private static final double READING_ERROR = 0.01;

    private static final double LEAST = 0.0002;

    /**
     * How far motion that did not come through moves the highest reading, as a share of its rms:
     * the detector averages over it. Chosen on seeded motions of the kind the coverage study draws,
     * not derived.
     */
    private static final double PEAK_SHARE = 1.0 / 3;

    /** Share of a band's power that has to be recovered for a reading to be told. */
    private static final double ENOUGH = 0.7;

    private final SpeedReader reader;
    private final Map<FlutterBand, Recovery.Lack> lacks = new EnumMap<>(FlutterBand.class);

    /**
     * Reads a deviation.
     *
     * @param reader has read the whole undone deviation
     */
    TransportReadings(SpeedReader reader, Recovery recovery) {
        this.reader = reader;
        for (FlutterBand band : FlutterBand.values()) {
            if (band != FlutterBand.CHARTED) {
                lacks.put(band, recovery.of(band));
            }
        }
    }

    /** Share of a band's power in recovered bands. */
    double share(FlutterBand band) {
        return lacks.get(band).share();
    }

    /** Root mean square of a band. */
    Quantity rms(FlutterBand band) {
        return told(band, whole(band), deviation(band));
    }

    /** A quasi-peak reading of a band. */
    Quantity peak(FlutterBand band, double reading) {
        double value = reading * enlarged(band);
        double alike = value * share(deviation(band), whole(band));
        double missing = PEAK_SHARE * Math.sqrt(lacks.get(band).lost());
        return told(band, value, Math.hypot(alike, missing));
    }

    /** A statistic of a band over all of its time. */
    Quantity statistic(FlutterBand band, double reading) {
        double value = reading * enlarged(band);
        return told(band, value, value * share(deviation(band), whole(band)));
    }

    private double whole(FlutterBand band) {
        double rms = reader.rms(band);
        return Math.sqrt(rms * rms + lacks.get(band).lost());
    }

    private double enlarged(FlutterBand band) {
        double rms = reader.rms(band);
        return rms > 0 ? whole(band) / rms : 1;
    }

    /** Standard deviation of a root mean square. */
    private double deviation(FlutterBand band) {
        Recovery.Lack lack = lacks.get(band);
        double square = Math.hypot(lack.deviation(), lack.byDelay());
        double whole = whole(band);
        return whole > 0 ? Math.min(square / (2 * whole), Math.sqrt(square)) : Math.sqrt(square);
    }

    private static double share(double part, double whole) {
        return whole > 0 ? part / whole : 0;
    }

    private Quantity told(FlutterBand band, double value, double deviation) {
        if (share(band) < ENOUGH) {
            return Quantity.unknown(SAID.say("share-shown", 100 * share(band)));
        }
        return Quantity.known(
                value, UNIT, Math.hypot(READING_ERROR * value, 2 * deviation) + LEAST);
    }
}

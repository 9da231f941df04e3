package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * A peak or dip of the bass: where the recorded wavelength comes near the length of the head's face
 * (contour effect).
 *
 * @param kind {@code peak} or {@code dip}
 * @param frequency Hz
 * @param magnitude dB re 1 kHz
 * @param prominenceDb by how much it stands out of its surroundings
 * @param wavelengthMm recorded wavelength, or null if the tape speed is not known
 */
public record ContourPoint(
        String kind,
        Quantity frequency,
        Quantity magnitude,
        double prominenceDb,
        Double wavelengthMm) {}

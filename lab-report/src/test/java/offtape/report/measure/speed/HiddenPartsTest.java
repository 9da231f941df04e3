package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.transport.TransportDescription;
import offtape.core.unit.Quantity;
import offtape.report.result.RateBand;
import offtape.report.result.TransportSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HiddenPartsTest {

    private static final Quantity NO = Quantity.unknown("Not of interest here.");

    static TransportSpeed own(List<RateBand> bands) {
        return new TransportSpeed(
                NO,
                NO,
                NO,
                NO,
                NO,
                NO,
                NO,
                NO,
                NO,
                NO,
                List.of(),
                NO,
                null,
                bands,
                0.0,
                "",
                null,
                null,
                List.of("First."));
    }

    /** v/(π·D) = 190.5/(π·9.52) = 6.369 Hz lies where heads 157 ms apart hear alike; 4.1 Hz not. */
    @Test
    void aCapstanBetweenTheBandsIsNamed() {
        List<RateBand> bands = List.of(new RateBand(0.02, 6.34), new RateBand(6.4, 50));
        assertEquals(2, new HiddenParts(capstan(9.52), 190.5).notes(own(bands)).size(), "hidden");
        assertTrue(
                new HiddenParts(capstan(9.52), 190.5)
                        .notes(own(bands))
                        .get(1)
                        .startsWith("Capstan, 6.33 to 6.41 Hz: part of that lies"));
        assertEquals(List.of("First."), new HiddenParts(capstan(14.8), 190.5).notes(own(bands)));
        assertEquals(List.of("First."), new HiddenParts(capstan(9.52), null).notes(own(bands)));
    }

    /** 6.3696 Hz within 0.6 %, 6.3314 to 6.4078 Hz, has to lie in one band as a whole. */
    @ParameterizedTest
    @CsvSource({
        "0.02, 6.34, 6.34, 50, 1",
        "0.02, 6.34, 6.32, 50, 0",
        "0.02, 6.42, 6.42, 50, 0",
        "0.02, 6.30, 6.335, 50, 1",
        "0.02, 6.405, 6.41, 50, 1",
        "0.02, 5, 5.5, 6.4, 0"
    })
    void aPartIsTrueOnlyIfAllOfItsRateIsHeard(
            double from, double to, double again, double end, int more) {
        List<RateBand> bands = List.of(new RateBand(from, to), new RateBand(again, end));
        HiddenParts parts = new HiddenParts(capstan(9.52), 190.5);
        assertEquals(1 + more, parts.notes(own(bands)).size());
    }

    /** Harmonics and the mains do not turn: their lines alone are spoken of. */
    @Test
    void whatDoesNotTurnIsNotSaidTo() {
        TransportDescription parts =
                TransportDescription.fromJson(
                        """
                        {"format": "offtape-transport", "version": 1,
                         "capstan": {"diameterMm": 9.52}, "mainsHz": 50}
                        """);
        List<RateBand> bands =
                List.of(new RateBand(0.02, 12.7), new RateBand(12.75, 50), new RateBand(51, 99));
        assertEquals(
                List.of(
                        "First.",
                        "Capstan, 2nd harmonic, 12.66 to 12.82 Hz: part of that lies where both"
                                + " heads hear alike, so that its line may not show.",
                        "Mains, 49.70 to 50.30 Hz: part of that lies where both heads hear alike,"
                                + " so that its line may not show."),
                new HiddenParts(parts, 190.5).notes(own(bands)));
    }

    @Test
    void withoutAnyBandNothingIsSaid() {
        assertEquals(
                List.of("First."), new HiddenParts(capstan(9.52), 190.5).notes(own(List.of())));
    }

    @Test
    void theSpeedOfTheDescriptionServesIfTheRecordingHasNone() {
        List<RateBand> bands = List.of(new RateBand(0.02, 6.34), new RateBand(6.4, 50));
        TransportDescription parts =
                TransportDescription.fromJson(
                        """
                        {"format": "offtape-transport", "version": 1, "tapeSpeedMmPerS": 190.5,
                         "capstan": {"diameterMm": 9.52}}
                        """);
        assertEquals(2, new HiddenParts(parts, null).notes(own(bands)).size());
        assertEquals(1, new HiddenParts(parts, 381.0).notes(own(bands)).size());
    }

    private static TransportDescription capstan(double diameterMm) {
        return TransportDescription.fromJson(
                """
                {"format": "offtape-transport", "version": 1, "capstan": {"diameterMm": %s}}
                """
                        .formatted(diameterMm));
    }
}

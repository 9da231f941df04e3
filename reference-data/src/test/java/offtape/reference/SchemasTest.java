package offtape.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaId;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SchemasTest {

    private static final String PROGRAMME =
            """
            { "format": "offtape-programme", "version": 1, "sampleRate": 48000, "frames": 4800000,
              "referenceDbfs": -18.0, "extra": true,
              "cues": [
                { "id": "start", "kind": "marker", "channels": "both", "startFrame": 0, "frames": 4800 },
                { "id": "speed", "kind": "tone", "channels": "both", "startFrame": 96000,
                  "frames": 2880000, "frequencyHz": 3150.0, "levelDb": 0.0 },
                { "id": "low", "kind": "sweep", "channels": "left", "startFrame": 3000000,
                  "frames": 480000, "startHz": 20, "endHz": 22000, "levelDb": -20 },
                { "id": "ladder", "kind": "ladder", "channels": "right", "startFrame": 3600000,
                  "frames": 96000, "frequencyHz": 1000,
                  "steps": [ { "startFrame": 3600000, "frames": 48000, "levelDb": -20 } ] },
                { "id": "quiet", "kind": "silence", "channels": "both", "startFrame": 4000000,
                  "frames": 480000 } ] }
            """;

    private static final String RESULTS =
            """
            { "format": "offtape-results", "version": 1,
              "session": { "machineName": null, "tape": "old stock", "tapeSpeedMmPerS": 190.5,
                "mode": "two-pass", "madeAt": "2026-01-01T00:00:00Z", "note": null,
                "software": "offtape 0.1.0", "recordingSha256": "%s" },
              "timing": { "delay": KNOWN_ms, "headDelay": UNKNOWN, "headSpacing": UNKNOWN,
                "polarity": "normal", "recordingClockError": KNOWN_ppm },
              "speed": { "deviation": UNKNOWN, "drift": KNOWN_%%, "weightedPeak": KNOWN_%%,
                "weightedTwoSigma": KNOWN_%%, "weightedRms": KNOWN_%%, "unweightedPeak": KNOWN_%%,
                "unweightedRms": KNOWN_%%, "wowRms": KNOWN_%%, "flutterRms": KNOWN_%%,
                "components": [ { "frequencyHz": 9.55, "peakPercent": 0.03, "part": "capstan" } ] },
              "response": [ { "channel": "left", "levelDb": -20, "frequencyHz": [1000],
                "magnitudeDb": [0], "uncertaintyDb": [0.02], "lowerEdge": KNOWN_Hz,
                "upperEdge": KNOWN_Hz, "ripple": UNKNOWN } ],
              "distortion": [ { "channel": "right", "frequencyHz": 1000, "steps": [
                { "recordLevelDb": 0, "replayLevelDb": -0.1, "k2Percent": null, "k3Percent": 0.8,
                  "thdPercent": 0.9, "compressionDb": 0.1, "limitedByNoise": false } ],
                "levelAtK3OnePercent": KNOWN_dB, "levelAtK3ThreePercent": KNOWN_dB,
                "maximumOutputLevel": KNOWN_dB, "saturationOutputLevel": UNKNOWN } ],
              "noise": [ { "channel": "left", "unweighted": KNOWN_dB, "aWeighted": KNOWN_dB,
                "itu468": KNOWN_dB, "dynamicRange": UNKNOWN,
                "hum": [ { "frequencyHz": 50, "levelDb": -71 } ] } ],
              "channels": { "balance": KNOWN_dB, "crosstalkLeftToRight": KNOWN_dB,
                "crosstalkRightToLeft": KNOWN_dB, "interchannelDelay": KNOWN_µs,
                "azimuth": UNKNOWN, "monoLossAt10kHz": KNOWN_dB },
              "dropouts": [ { "channel": "left", "atSeconds": 1, "milliseconds": 12, "depthDb": 6 } ],
              "health": [ { "severity": "note", "code": "short", "message": "Short recording." } ],
              "verdict": { "decision": "service", "because": ["Flutter is high."],
                "checks": [ { "quantity": "speed.weightedPeak", "value": 0.3, "limit": "0.2 %% or less",
                  "outcome": "fail", "source": "DIN 45500 part 4" } ],
                "faults": [ { "code": "capstan", "likelihood": 0.7, "evidence": ["9.55 Hz line"],
                  "remedy": "Clean the capstan.", "caution": "Unplug the machine first." } ] } }
            """
                    .formatted("0".repeat(64))
                    .replaceAll(
                            "(?<!UN)KNOWN_([^,\\s]+)(?=[,\\s])",
                            "{\"value\":1,\"unit\":\"$1\",\"uncertainty\":0.1}")
                    .replace("UNKNOWN", "{\"value\":null,\"reason\":\"not in this recording\"}");

    @ParameterizedTest
    @CsvSource({
        "programme",
        "results",
        "transport",
        "tones",
        "toneReadings",
        "comparison",
        "history",
        "batch",
        "batchSession"
    })
    void areSchemasOfDraft202012(String name) {
        JsonSchema meta =
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(SchemaLocation.of(SchemaId.V202012));
        assertEquals(Set.of(), meta.validate(text(name), InputFormat.JSON));
    }

    @Test
    void acceptWhatFollowsThem() {
        assertEquals(Set.of(), faults("programme", PROGRAMME));
        assertEquals(Set.of(), faults("results", RESULTS));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"version\": 1|\"version\": 2",
                "\"sampleRate\": 48000|\"sampleRate\": 48000.5",
                "\"referenceDbfs\": -18.0|\"referenceDbfs\": 3",
                "\"kind\": \"silence\"|\"kind\": \"tone\"",
                "\"endHz\": 22000,|",
                "\"channels\": \"right\"|\"channels\": \"centre\"",
                "\"startFrame\": 96000|\"startFrame\": -1",
            })
    void refuseProgrammesThatDoNot(String right, String wrong) {
        assertRefused("programme", PROGRAMME, right, wrong);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"drift\": {\"value\":1,|\"drift\": {\"value\":null,",
                "\"value\":null,\"reason\":\"not in this recording\"|\"value\":null",
                "\"unit\":\"ppm\"|\"unit\":\"dB\"",
                "\"uncertainty\":0.1|\"uncertainty\":-0.1",
                "\"mode\": \"two-pass\"|\"mode\": \"guess\"",
                "\"decision\": \"service\"|\"decision\": \"perhaps\"",
                "\"outcome\": \"fail\"|\"outcome\": \"failed\"",
                "\"likelihood\": 0.7|\"likelihood\": 70",
                "\"polarity\": \"normal\"|\"polarity\": \"reversed\"",
            })
    void refuseResultsThatDoNot(String right, String wrong) {
        assertRefused("results", RESULTS, right, wrong);
    }

    private static final String BATCH =
            """
            { "format": "offtape-batch", "version": 1, "returns": [
              { "name": "a", "file": "a.wav", "state": "measured", "decision": "Keep it.",
                "limitsFailed": 0, "figures": [ { "name": "Speed", "unit": "%", "values": [
                  { "value": 0.1, "unit": "%", "uncertainty": 0.01 } ] } ] },
              { "name": "b", "file": "b.wav", "state": "refused", "reason": "No sound.",
                "figures": [] },
              { "name": "c", "file": "c.wav", "state": "not measured yet", "figures": [] } ] }
            """;

    @Test
    void batchesAreTold() {
        assertEquals(Set.of(), faults("batch", BATCH));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"version\": 1|\"version\": 2",
                "\"name\": \"c\",|",
                "\"state\": \"measured\"|\"state\": \"refused\"",
                "\"state\": \"refused\"|\"state\": \"unchanged\"",
                "\"state\": \"not measured yet\"|\"state\": \"refused\"",
                "\"state\": \"not measured yet\"|\"state\": \"done\"",
                "\"limitsFailed\": 0|\"limitsFailed\": -1",
                "\"unit\": \"%\", \"uncertainty\"|\"uncertainty\"",
                "\"value\": 0.1|\"value\": null",
                "\"values\": [|\"values\": [], \"others\": [",
            })
    void refuseBatchesThatDoNot(String right, String wrong) {
        assertRefused("batch", BATCH, right, wrong);
    }

    @Test
    void aSealHasThreeDigests() {
        String digest = "\"" + "0a".repeat(32) + "\"";
        String seal =
                "{\"format\": \"offtape-batch-session\", \"version\": 1, \"recordingSha256\": D,"
                        + " \"inputsSha256\": D, \"resultsSha256\": D}";
        assertEquals(Set.of(), faults("batchSession", seal.replace("D", digest)));
        assertEquals(3, faults("batchSession", seal.replace("D", "\"0A\"")).size());
    }

    private static void assertRefused(String schema, String good, String right, String wrong) {
        String bad = good.replace(right, wrong == null ? "" : wrong);
        assertFalse(bad.equals(good), "nothing was changed");
        assertFalse(faults(schema, bad).isEmpty());
    }

    private static Set<ValidationMessage> faults(String schema, String json) {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(text(schema))
                .validate(json, InputFormat.JSON);
    }

    private static String text(String name) {
        return switch (name) {
            case "programme" -> Schemas.programme();
            case "transport" -> Schemas.transport();
            case "tones" -> Schemas.tones();
            case "toneReadings" -> Schemas.toneReadings();
            case "comparison" -> Schemas.comparison();
            case "history" -> Schemas.history();
            case "batch" -> Schemas.batch();
            case "batchSession" -> Schemas.batchSession();
            default -> Schemas.results();
        };
    }
}

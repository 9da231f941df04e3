package offtape.reference;

/** The JSON Schemas (draft 2020-12) of the files that are exchanged. */
public final class Schemas {

    private Schemas() {}

    /** Text of the schema of {@code programme.json}. */
    public static String programme() {
        return Resources.text("schemas/programme.schema.json");
    }

    /** Text of the schema of {@code results.json}. */
    public static String results() {
        return Resources.text("schemas/results.schema.json");
    }

    /** Text of the schema of a transport's description. */
    public static String transport() {
        return Resources.text("schemas/transport.schema.json");
    }

    /** Text of the schema of a list of tones. */
    public static String tones() {
        return Resources.text("schemas/tones.schema.json");
    }

    /** Text of the schema of what {@code tones} writes. */
    public static String toneReadings() {
        return Resources.text("schemas/tone-readings.schema.json");
    }

    /** Text of the schema of {@code transfer.json}. */
    public static String transfer() {
        return Resources.text("schemas/transfer.schema.json");
    }

    /** Text of the schema of what {@code realign} writes beside a file. */
    public static String realign() {
        return Resources.text("schemas/realign.schema.json");
    }

    /** Text of the schema of {@code model.json}. */
    public static String model() {
        return Resources.text("schemas/model.schema.json");
    }

    /** Text of the schema of {@code comparison.json}. */
    public static String comparison() {
        return Resources.text("schemas/comparison.schema.json");
    }

    /** Text of the schema of {@code history.json}. */
    public static String history() {
        return Resources.text("schemas/history.schema.json");
    }

    /** Text of the schema of what {@code listen --json} prints. */
    public static String listen() {
        return Resources.text("schemas/listen.schema.json");
    }

    /** Text of the schema of {@code correction.json}. */
    public static String correction() {
        return Resources.text("schemas/correction.schema.json");
    }

    /** Text of the schema of what {@code measure --batch --json} prints. */
    public static String batch() {
        return Resources.text("schemas/batch.schema.json");
    }

    /** Text of the schema of {@code batch.json} in a session of a batch. */
    public static String batchSession() {
        return Resources.text("schemas/batch-session.schema.json");
    }
}

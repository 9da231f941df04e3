package offtape.reference;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import offtape.reference.ReferenceTable.Column;

/** Reads the JSON files of the tables. */
final class ReferenceTableReader {

    private ReferenceTableReader() {}

    static ReferenceTable read(String name) {
        try (InputStream in = Resources.open("tables/" + name + ".json")) {
            JsonNode json = JsonMapper.builder().build().readTree(in);
            return new ReferenceTable(
                    name,
                    text(json, "source"),
                    text(json, "clause"),
                    text(json, "seen"),
                    columns(json.path("columns")),
                    rows(json.path("rows")));
        } catch (IOException e) {
            throw new IllegalArgumentException("table " + name + " cannot be read", e);
        }
    }

    private static String text(JsonNode json, String member) {
        return json.path(member).textValue();
    }

    private static List<Column> columns(JsonNode json) {
        List<Column> columns = new ArrayList<>();
        json.forEach(c -> columns.add(new Column(text(c, "name"), text(c, "unit"))));
        return columns;
    }

    private static List<List<JsonNode>> rows(JsonNode json) {
        List<List<JsonNode>> rows = new ArrayList<>();
        for (JsonNode row : json) {
            List<JsonNode> cells = new ArrayList<>();
            row.forEach(cells::add);
            rows.add(cells);
        }
        return rows;
    }
}

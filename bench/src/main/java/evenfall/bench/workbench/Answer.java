package evenfall.bench.workbench;

import com.fasterxml.jackson.databind.JsonNode;
import evenfall.bench.report.Json;
import java.nio.charset.StandardCharsets;

/**
 * What goes back to a page.
 *
 * @param status of HTTP
 * @param type media type
 * @param text the body
 * @param allowed the method that is understood, with status 405; else empty
 */
public record Answer(int status, String type, String text, String allowed) {
    private static final String PLAIN = "text/plain; charset=utf-8";

    static Answer json(JsonNode json) {
        return new Answer(200, "application/json", Json.text(json), "");
    }

    static Answer html(String html) {
        return new Answer(200, "text/html; charset=utf-8", html, "");
    }

    static Answer sentence(int status, String sentence) {
        return new Answer(status, PLAIN, sentence + "\n", "");
    }

    static Answer only(String method) {
        return new Answer(405, PLAIN, "Only " + method + " is understood here.\n", method);
    }

    /** In UTF-8. */
    public byte[] bytes() {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Whether it is a page of its own, with its styles in it. */
    public boolean isPage() {
        return type.startsWith("text/html");
    }
}

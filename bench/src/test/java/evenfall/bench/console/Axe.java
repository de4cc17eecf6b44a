package evenfall.bench.console;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;

/**
 * The rules of axe-core (Deque Systems) for WCAG 2.0, 2.1 and 2.2, levels A and AA, run inside a page. A machine finds only part of
 * what bars a person; what it finds is wrong for certain.
 */
final class Axe {
    private static final String COORDINATES = "/META-INF/maven/org.webjars.npm/axe-core/pom.properties";
    private static final String SOURCE = source();

    /** Rules of WCAG 2.2 are off unless asked for by name. */
    private static final String RUN = """
            const done = arguments[arguments.length - 1];
            axe.run(document, {
              runOnly: {type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']},
              rules: {'target-size': {enabled: true}},
              resultTypes: ['violations']
            }).then((result) => done({
              passes: result.passes.length,
              violations: result.violations.map((rule) => ({
                id: rule.id, impact: rule.impact, help: rule.help,
                nodes: rule.nodes.map((node) => node.html.slice(0, 160) + '  ' + node.any.concat(node.all, node.none).map((c) => c.message).join('; '))
              }))
            }), (error) => done({error: String(error)}));
            """;

    private Axe() {}

    /**
     * What is wrong on the page that the browser shows, a line for each rule and element, with the gravest impact first in each line.
     *
     * @param page what to call it
     * @throws AssertionError when the rules did not run
     */
    @SuppressWarnings("unchecked")
    static List<String> violations(Browser browser, String page) {
        browser.js(SOURCE);
        Map<String, Object> result = (Map<String, Object>) browser.driver.executeAsyncScript(RUN);
        if (result.get("error") != null || ((Number) result.get("passes")).intValue() == 0) {
            throw new AssertionError(page + ": the rules did not run: " + result);
        }
        List<String> lines = new ArrayList<>();
        for (Map<String, Object> rule : (List<Map<String, Object>>) result.get("violations")) {
            for (Object node : (List<Object>) rule.get("nodes")) {
                lines.add(rule.get("impact") + "  " + rule.get("id") + " (" + rule.get("help") + ")  on " + page + "  "
                        + node);
            }
        }
        return lines;
    }

    private static String source() {
        Properties properties = new Properties();
        try (InputStream in = open(COORDINATES)) {
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        String file = "/META-INF/resources/webjars/axe-core/" + properties.getProperty("version") + "/axe.min.js";
        try (InputStream in = open(file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream open(String name) throws IOException {
        InputStream in = Axe.class.getResourceAsStream(name);
        if (in == null) {
            throw new IOException(name + " is not on the class path");
        }
        return in;
    }
}

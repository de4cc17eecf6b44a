package evenfall.bench.console;

import evenfall.bench.page.Page;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/** The packaged files of the console: these and no other path. */
final class Assets {
    /** A file with its media type. */
    static final class Asset {
        final String type;
        final byte[] bytes;

        Asset(String type, byte[] bytes) {
            this.type = type;
            this.bytes = bytes;
        }
    }

    private static final String HTML = "text/html; charset=utf-8";
    private static final String CSS = "text/css; charset=utf-8";
    private static final String JAVASCRIPT = "text/javascript; charset=utf-8";
    private static final String CHARTS = "/META-INF/maven/org.webjars.npm/uplot/pom.properties";

    private final Map<String, Asset> byPath = new HashMap<>();

    Assets() {
        own("/", "run.html", HTML);
        own("/choose", "choose.html", HTML);
        own("/bench", "bench.html", HTML);
        own("/console.css", "console.css", CSS);
        own("/choose.css", "choose.css", CSS);
        own("/bench.css", "bench.css", CSS);
        own("/icon.svg", "icon.svg", "image/svg+xml");
        for (String module : List.of(
                "words",
                "units",
                "run",
                "lane",
                "rear",
                "strip",
                "lines",
                "alerts",
                "controls",
                "link",
                "choose",
                "bench",
                "ask",
                "test",
                "signals",
                "cover",
                "kept")) {
            own("/" + module + ".js", module + ".js", JAVASCRIPT);
        }
        byPath.put("/page.css", new Asset(CSS, Page.css().getBytes(StandardCharsets.UTF_8)));
        String charts = "/META-INF/resources/webjars/uplot/" + chartsVersion() + "/dist/";
        byPath.put("/uplot.js", new Asset(JAVASCRIPT, read(charts + "uPlot.esm.js")));
        byPath.put("/uplot.css", new Asset(CSS, read(charts + "uPlot.min.css")));
    }

    @Nullable
    Asset at(String path) {
        return byPath.get(path);
    }

    private void own(String path, String name, String type) {
        byPath.put(path, new Asset(type, read(name)));
    }

    /** The library's own word, so that its version stands in one place only. */
    private static String chartsVersion() {
        Properties properties = new Properties();
        try (InputStream in = Assets.class.getResourceAsStream(CHARTS)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks the library for time lines");
            }
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return properties.getProperty("version");
    }

    private static byte[] read(String name) {
        try (InputStream in = Assets.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + name);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

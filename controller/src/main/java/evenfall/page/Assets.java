package evenfall.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The packaged files of the page: these few and no other path. */
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

    private static final String JAVASCRIPT = "text/javascript; charset=utf-8";

    private final Map<String, Asset> byPath = Map.of(
            "/", asset("cab.html", "text/html; charset=utf-8"),
            "/cab.css", asset("cab.css", "text/css; charset=utf-8"),
            "/cab.js", asset("cab.js", JAVASCRIPT),
            "/words.js", asset("words.js", JAVASCRIPT),
            "/icon.svg", asset("icon.svg", "image/svg+xml"));

    @Nullable
    Asset at(String path) {
        return byPath.get(path);
    }

    private static Asset asset(String name, String type) {
        try (InputStream in = Assets.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + name);
            }
            return new Asset(type, in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

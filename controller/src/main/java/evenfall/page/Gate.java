package evenfall.page;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import evenfall.rig.Rig;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who may come in. On loopback whoever names the board by a loopback name, so that no page from elsewhere reaches it through a name
 * that it controls; beyond loopback whoever has the token. What comes from another origin is refused in either case.
 */
final class Gate {
    /** Holds the token once the address has brought it. */
    static final String COOKIE = "evenfall";

    private static final Set<String> LOOPBACK_NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

    private final Rig.Page page;

    Gate(Rig.Page page) {
        this.page = page;
    }

    /** Null to let it in, else why not. */
    @Nullable
    String refusal(HttpExchange exchange) {
        Headers headers = exchange.getRequestHeaders();
        String host = headers.getFirst("Host");
        if (host == null) {
            return "The request names no host.";
        }
        String origin = headers.getFirst("Origin");
        if (origin != null && !origin.equals("http://" + host)) {
            return "The request comes from a page of another origin.";
        }
        if (page.token().isEmpty()) {
            return LOOPBACK_NAMES.contains(nameOf(host)) ? null : "This page is served on this machine only.";
        }
        return isToken(cookie(headers))
                        || isToken(tokenOf(exchange.getRequestURI().getRawQuery()))
                ? null
                : "Open this page by its whole address, with ?token= and the token of the rig file.";
    }

    /** Whether the address brings the right token, so that a cookie can take its place. */
    boolean bringsToken(HttpExchange exchange) {
        return page.token().isPresent()
                && isToken(tokenOf(exchange.getRequestURI().getRawQuery()));
    }

    private static String nameOf(String host) {
        int colon = host.lastIndexOf(':');
        return colon > host.lastIndexOf(']') ? host.substring(0, colon) : host;
    }

    private boolean isToken(@Nullable String given) {
        return given != null
                && page.token().isPresent()
                && MessageDigest.isEqual(
                        given.getBytes(StandardCharsets.UTF_8),
                        page.token().get().getBytes(StandardCharsets.UTF_8));
    }

    private static @Nullable String tokenOf(@Nullable String query) {
        if (query == null) {
            return null;
        }
        for (String part : query.split("&", -1)) {
            if (part.startsWith("token=")) {
                return part.substring("token=".length());
            }
        }
        return null;
    }

    private static @Nullable String cookie(Headers headers) {
        String all = headers.getFirst("Cookie");
        if (all == null) {
            return null;
        }
        for (String part : all.split(";", -1)) {
            String one = part.strip();
            if (one.startsWith(COOKIE + "=")) {
                return one.substring(COOKIE.length() + 1);
            }
        }
        return null;
    }
}

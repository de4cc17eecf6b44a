package evenfall.page;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who may come in. On loopback whoever names the board by a loopback name, so that no page from elsewhere reaches it through a name
 * that it controls; beyond loopback whoever has the token. What comes from another origin is refused in either case.
 */
public final class Gate {
    private static final Set<String> LOOPBACK_NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

    private final Optional<String> token;
    private final String tokenIs;
    private final String cookie;

    /**
     * @param token what everyone has to bring; empty on loopback, where none is needed
     * @param tokenIs where people find it, as {@code the token of the rig file}
     * @param cookie name of the cookie that holds it once an address has brought it; cookies know no ports
     */
    public Gate(Optional<String> token, String tokenIs, String cookie) {
        this.token = token;
        this.tokenIs = tokenIs;
        this.cookie = cookie;
    }

    /** Null to let it in, else why not. */
    public @Nullable String refusal(HttpExchange exchange) {
        Headers headers = exchange.getRequestHeaders();
        String host = headers.getFirst("Host");
        if (host == null) {
            return "The request names no host.";
        }
        String origin = headers.getFirst("Origin");
        if (origin != null && !origin.equals("http://" + host)) {
            return "The request comes from a page of another origin.";
        }
        if (token.isEmpty()) {
            return LOOPBACK_NAMES.contains(nameOf(host)) ? null : "This page is served on this machine only.";
        }
        return isToken(cookie(headers))
                        || isToken(tokenOf(exchange.getRequestURI().getRawQuery()))
                ? null
                : "Open this page by its whole address, with ?token= and " + tokenIs + ".";
    }

    /** Whether the address brings the right token, so that a cookie can take its place. */
    public boolean bringsToken(HttpExchange exchange) {
        return isToken(tokenOf(exchange.getRequestURI().getRawQuery()));
    }

    /** Lets the cookie take the token's place, so that it stands in no address that somebody might pass on. */
    public void handCookie(HttpExchange exchange) {
        exchange.getResponseHeaders()
                .set("Set-Cookie", cookie + "=" + token.orElse("") + "; HttpOnly; SameSite=Strict; Path=/");
    }

    private static String nameOf(String host) {
        int colon = host.lastIndexOf(':');
        return colon > host.lastIndexOf(']') ? host.substring(0, colon) : host;
    }

    private boolean isToken(@Nullable String given) {
        return given != null
                && token.isPresent()
                && MessageDigest.isEqual(
                        given.getBytes(StandardCharsets.UTF_8), token.get().getBytes(StandardCharsets.UTF_8));
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

    private @Nullable String cookie(Headers headers) {
        String all = headers.getFirst("Cookie");
        if (all == null) {
            return null;
        }
        for (String part : all.split(";", -1)) {
            String one = part.strip();
            if (one.startsWith(cookie + "=")) {
                return one.substring(cookie.length() + 1);
            }
        }
        return null;
    }
}

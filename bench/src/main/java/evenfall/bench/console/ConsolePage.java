package evenfall.bench.console;

import com.fasterxml.jackson.databind.JsonNode;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import evenfall.bench.report.Json;
import evenfall.bench.workbench.Answer;
import evenfall.bench.workbench.Workbench;
import evenfall.config.ConfigException;
import evenfall.page.Gate;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Serves the console by the JDK's own HTTP server: its files, what may be asked for ({@code /catalogue}), runs ({@code /sessions})
 * and the choice of outlets ({@code /choose/answer}). Frames of a run go out as server-sent events; what a page wants done comes in
 * as JSON by POST.
 */
public final class ConsolePage {
    private static final int THREADS = 24;
    private static final int LONGEST_BODY = 4000;
    private static final Pattern SESSION = Pattern.compile("/sessions/([0-9a-f-]{36})/(stream|do)");
    private static final String OWN = "default-src 'self'; frame-ancestors 'none'";

    /** A sheet brings its styles in itself, and no program. */
    private static final String SHEET =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'";

    private static final byte[] ALIVE = ": alive\n\n".getBytes(StandardCharsets.US_ASCII);

    private final Gate gate;
    private final Assets assets = new Assets();
    private final byte[] catalogue;
    private final Sessions sessions = new Sessions();
    private final Workbench workbench;
    private final Semaphore choosing = new Semaphore(2);
    private final HttpServer server;
    private final ThreadPoolExecutor threads;
    private final String host;
    private final Optional<String> token;

    /**
     * Binds, and serves nothing before {@link #start}.
     *
     * @param host name or address to listen at
     * @param port TCP port; 0 for any that is free
     * @param token what everyone has to bring; empty on loopback, where none is needed
     * @throws IOException when the address cannot be had
     */
    public ConsolePage(String host, int port, Optional<String> token) throws IOException {
        this(host, port, token, new Workbench(Optional.empty(), List.of(), Path.of("")));
    }

    /**
     * @param workbench what answers the bench page; closed with this one
     */
    public ConsolePage(String host, int port, Optional<String> token, Workbench workbench) throws IOException {
        this.workbench = workbench;
        this.host = host;
        this.token = token;
        this.gate = new Gate(token, "the token that the console was started with", "evenfall-console");
        try {
            this.catalogue = Frames.bytes(Catalogue.json());
        } catch (ConfigException e) {
            throw new IllegalStateException("a built-in scenario cannot be read: " + e.getMessage(), e);
        }
        this.server = HttpServer.create(new InetSocketAddress(host, port), THREADS);
        this.threads = new ThreadPoolExecutor(0, THREADS, 30, TimeUnit.SECONDS, new SynchronousQueue<>(), task -> {
            Thread thread = new Thread(task, "console");
            thread.setDaemon(true);
            return thread;
        });
        server.setExecutor(threads);
        server.createContext("/", this::serve);
    }

    public void start() {
        server.start();
    }

    /** The port that it listens on, also where any free one was asked for. */
    public int port() {
        return server.getAddress().getPort();
    }

    /** What to type into a browser. */
    public String address() {
        String name = host.contains(":") ? "[" + host + "]" : host;
        return "http://" + name + ":" + port() + "/"
                + token.map(word -> "?token=" + word).orElse("");
    }

    /** Ends all runs and pages and lets go of the port, at once. */
    public void close() {
        sessions.closeAll();
        workbench.close();
        server.stop(0);
        threads.shutdownNow();
    }

    private void serve(HttpExchange exchange) throws IOException {
        try (exchange) {
            try {
                String refusal = gate.refusal(exchange);
                if (refusal != null) {
                    throw new Refusal(403, refusal);
                }
                route(exchange, exchange.getRequestURI().getPath());
            } catch (Refusal e) {
                send(
                        exchange,
                        e.status(),
                        "text/plain; charset=utf-8",
                        (e.sentence() + "\n").getBytes(StandardCharsets.UTF_8));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void route(HttpExchange exchange, String path) throws IOException, Refusal, InterruptedException {
        Matcher session = SESSION.matcher(path);
        if (session.matches()) {
            if (session.group(2).equals("stream")) {
                only("GET", exchange);
                stream(exchange, sessions.find(session.group(1)));
            } else {
                only("POST", exchange);
                sessions.find(session.group(1)).order(body(exchange));
                exchange.sendResponseHeaders(204, -1);
            }
        } else if (path.equals("/sessions")) {
            only("POST", exchange);
            json(exchange, Json.object().put("id", sessions.open(body(exchange)).id()));
        } else if (Workbench.answers(path)) {
            byte[] body = exchange.getRequestMethod().equals("POST") ? bytes(exchange) : new byte[0];
            answer(exchange, workbench.answer(exchange.getRequestMethod(), path, body));
        } else if (path.equals("/choose/answer")) {
            only("POST", exchange);
            json(exchange, choose(body(exchange)));
        } else if (path.equals("/catalogue")) {
            only("GET", exchange);
            send(exchange, 200, "application/json", catalogue);
        } else {
            Assets.Asset asset = assets.at(path);
            if (asset == null) {
                throw new Refusal(404, "There is no such page here.");
            }
            only("GET", exchange);
            hand(exchange, path, asset);
        }
    }

    private static void only(String method, HttpExchange exchange) throws Refusal {
        if (!exchange.getRequestMethod().equals(method)) {
            exchange.getResponseHeaders().set("Allow", method);
            throw new Refusal(405, "Only " + method + " is understood here.");
        }
    }

    private static JsonNode body(HttpExchange exchange) throws IOException, Refusal {
        return Frames.read(bytes(exchange));
    }

    private static byte[] bytes(HttpExchange exchange) throws IOException, Refusal {
        byte[] body;
        try (InputStream in = exchange.getRequestBody()) {
            body = in.readNBytes(LONGEST_BODY + 1);
        }
        if (body.length > LONGEST_BODY) {
            throw new Refusal(413, "The request is too long; allowed: " + LONGEST_BODY + " bytes.");
        }
        return body;
    }

    private JsonNode choose(JsonNode asked) throws Refusal {
        if (!choosing.tryAcquire()) {
            throw new Refusal(503, "Two choices are being worked out already; try again.");
        }
        try {
            return ChooseAnswer.of(asked);
        } catch (ConfigException e) {
            throw new Refusal(400, String.valueOf(e.getMessage()));
        } finally {
            choosing.release();
        }
    }

    private void hand(HttpExchange exchange, String path, Assets.Asset asset) throws IOException {
        if (gate.bringsToken(exchange)) {
            gate.handCookie(exchange);
            exchange.getResponseHeaders().set("Location", path);
            exchange.sendResponseHeaders(303, -1);
            return;
        }
        send(exchange, 200, asset.type, asset.bytes);
    }

    private static void stream(HttpExchange exchange, Session session) throws IOException, InterruptedException {
        exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
        exchange.getResponseHeaders().set("Cache-Control", "no-store");
        exchange.sendResponseHeaders(200, 0);
        OutputStream out = exchange.getResponseBody();
        session.attend(frames -> write(out, frames));
    }

    private static void write(OutputStream out, List<byte[]> frames) throws IOException {
        for (byte[] frame : frames) {
            out.write("data: ".getBytes(StandardCharsets.US_ASCII));
            out.write(frame);
            out.write('\n');
            out.write('\n');
        }
        if (frames.isEmpty()) {
            out.write(ALIVE);
        }
        out.flush();
    }

    private static void answer(HttpExchange exchange, Answer answer) throws IOException {
        if (!answer.allowed().isEmpty()) {
            exchange.getResponseHeaders().set("Allow", answer.allowed());
        }
        send(exchange, answer.status(), answer.type(), answer.bytes(), answer.isPage() ? SHEET : OWN);
    }

    private static void json(HttpExchange exchange, @Nullable JsonNode json) throws IOException {
        send(exchange, 200, "application/json", json == null ? new byte[0] : Frames.bytes(json));
    }

    private static void send(HttpExchange exchange, int status, String type, byte[] bytes) throws IOException {
        send(exchange, status, type, bytes, OWN);
    }

    private static void send(HttpExchange exchange, int status, String type, byte[] bytes, String mayLoad)
            throws IOException {
        Map.of(
                        "Content-Type", type,
                        "Cache-Control", "no-cache",
                        "X-Content-Type-Options", "nosniff",
                        "Referrer-Policy", "no-referrer",
                        "Content-Security-Policy", mayLoad)
                .forEach(exchange.getResponseHeaders()::set);
        exchange.sendResponseHeaders(status, bytes.length == 0 ? -1 : bytes.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(bytes);
        }
    }
}

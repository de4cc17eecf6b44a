package evenfall.page;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import evenfall.message.Messages;
import evenfall.message.Publisher;
import evenfall.message.Topics;
import evenfall.rig.Rig;
import evenfall.wire.Acknowledgement;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Serves the cab view by the JDK's own HTTP server, with server-sent events. Give it every message that goes out ({@link #board}); it
 * relays them as they are. A page can read and can acknowledge an alert, nothing else.
 *
 * <p>Events of the stream {@code /live}: {@code rig} once, {@code live} and {@code alerts} as they change, and a remark at least every
 * two seconds.
 */
public final class CabPage {
    /** So many pages at once; the next is told so. Our choice: a phone for each in the cab, and some to spare. */
    static final int MOST_PAGES = 8;

    private static final int SPARE_THREADS = 4;
    private static final int LONGEST_BODY = 1000;
    private static final long REMARK_MS = 2000;
    private static final JsonFactory JSON = new JsonFactory();

    private final Topics topics;
    private final byte[] rigText;
    private final Gate gate;
    private final Assets assets = new Assets();
    private final Board board;
    private final Predicate<byte[]> cabPort;
    private final HttpServer server;
    private final ThreadPoolExecutor threads;
    private final AtomicInteger pages = new AtomicInteger();

    /**
     * Binds, and serves nothing before {@link #start}.
     *
     * @param page where to listen, and the token that is needed beyond loopback
     * @param cabPort gets a sentence for each alert that is acknowledged; gives false where it has no room
     * @throws IOException when the address cannot be had
     */
    public CabPage(Rig rig, Rig.Page page, Predicate<byte[]> cabPort) throws IOException {
        this.topics = new Topics(rig.name());
        this.rigText = new Messages(rig).machine();
        this.gate = new Gate(page.token(), "the token of the rig file", "evenfall");
        this.board = new Board(topics.live(), topics.alertsUnder());
        this.cabPort = cabPort;
        this.server = HttpServer.create(new InetSocketAddress(page.host(), page.port()), MOST_PAGES);
        this.threads = new ThreadPoolExecutor(
                0, MOST_PAGES + SPARE_THREADS, 30, TimeUnit.SECONDS, new SynchronousQueue<>(), task -> {
                    Thread thread = new Thread(task, "page");
                    thread.setDaemon(true);
                    return thread;
                });
        server.setExecutor(threads);
        server.createContext("/", this::serve);
    }

    /** Where every message has to go as well. */
    public Publisher board() {
        return (topic, payload, retained, delivery) -> {
            if (topic.equals(topics.acknowledged())) {
                String kind = text(payload.bytes(), "kind");
                String place = text(payload.bytes(), "place");
                if (kind != null && place != null) {
                    board.acknowledge(topics.alert(kind, place));
                }
            } else {
                board.publish(topic, payload, retained, delivery);
            }
        };
    }

    public void start() {
        server.start();
    }

    /** The port that it listens on, also where any free one was asked for. */
    public int port() {
        return server.getAddress().getPort();
    }

    /** Ends all pages and lets go of the port, at once. */
    public void close() {
        board.close();
        server.stop(0);
        threads.shutdownNow();
    }

    private void serve(HttpExchange exchange) throws IOException {
        try (exchange) {
            String refusal = gate.refusal(exchange);
            String path = exchange.getRequestURI().getPath();
            boolean get = exchange.getRequestMethod().equals("GET");
            if (refusal != null) {
                say(exchange, 403, refusal);
            } else if (path.equals("/live")) {
                if (get) {
                    stream(exchange);
                } else {
                    allowOnly(exchange, "GET");
                }
            } else if (path.equals("/acknowledge")) {
                if (exchange.getRequestMethod().equals("POST")) {
                    acknowledge(exchange);
                } else {
                    allowOnly(exchange, "POST");
                }
            } else {
                Assets.Asset asset = assets.at(path);
                if (asset == null) {
                    say(exchange, 404, "There is no such page here.");
                } else if (!get) {
                    allowOnly(exchange, "GET");
                } else {
                    hand(exchange, asset);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void allowOnly(HttpExchange exchange, String method) throws IOException {
        exchange.getResponseHeaders().set("Allow", method);
        say(exchange, 405, "Only " + method + " is understood here.");
    }

    private void hand(HttpExchange exchange, Assets.Asset asset) throws IOException {
        if (gate.bringsToken(exchange)) {
            gate.handCookie(exchange);
            exchange.getResponseHeaders().set("Location", "/");
            exchange.sendResponseHeaders(303, -1);
            return;
        }
        send(exchange, 200, asset.type, asset.bytes);
    }

    private void stream(HttpExchange exchange) throws IOException, InterruptedException {
        if (pages.incrementAndGet() > MOST_PAGES) {
            pages.decrementAndGet();
            exchange.getResponseHeaders().set("Retry-After", "5");
            say(exchange, 503, MOST_PAGES + " pages are open already; close one.");
            return;
        }
        try {
            exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
            exchange.getResponseHeaders().set("Cache-Control", "no-store");
            exchange.sendResponseHeaders(200, 0);
            OutputStream out = exchange.getResponseBody();
            event(out, "rig", rigText);
            long live = -1;
            long alerts = -1;
            while (true) {
                Board.News news = board.after(live, alerts, REMARK_MS);
                if (news.closed) {
                    return;
                }
                if (news.alerts != null) {
                    event(out, "alerts", news.alerts.getBytes(StandardCharsets.UTF_8));
                }
                if (news.live != null) {
                    event(out, "live", news.live);
                }
                if (news.alerts == null && news.live == null) {
                    out.write(": nothing new\n\n".getBytes(StandardCharsets.US_ASCII));
                }
                out.flush();
                live = news.liveNumber;
                alerts = news.alertsNumber;
            }
        } finally {
            pages.decrementAndGet();
        }
    }

    private static void event(OutputStream out, String name, byte[] json) throws IOException {
        out.write(("event: " + name + "\ndata: ").getBytes(StandardCharsets.US_ASCII));
        out.write(json);
        out.write('\n');
        out.write('\n');
    }

    private void acknowledge(HttpExchange exchange) throws IOException {
        byte[] body;
        try (InputStream in = exchange.getRequestBody()) {
            body = in.readNBytes(LONGEST_BODY + 1);
        }
        String kind = body.length > LONGEST_BODY ? null : text(body, "kind");
        String place = body.length > LONGEST_BODY ? null : text(body, "place");
        if (kind == null || place == null) {
            say(exchange, 400, "Send {\"kind\": ..., \"place\": ...} of an alert that stands.");
            return;
        }
        String topic = topics.alert(kind, place);
        if (!board.stands(topic)) {
            say(exchange, 404, "No such alert stands.");
            return;
        }
        if (!board.isAcknowledged(topic) && !cabPort.test(Acknowledgement.sentence(kind, place))) {
            say(exchange, 503, "The box is too busy to take this; try again.");
            return;
        }
        exchange.sendResponseHeaders(204, -1);
    }

    /** A text of the outermost object; null where it is not there, or where the body is not a JSON object. */
    private static @Nullable String text(byte[] body, String key) {
        try (JsonParser json = JSON.createParser(body)) {
            if (json.nextToken() != JsonToken.START_OBJECT) {
                return null;
            }
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                String name = json.currentName();
                JsonToken value = json.nextToken();
                if (name.equals(key)) {
                    return value == JsonToken.VALUE_STRING ? json.getText() : null;
                }
                json.skipChildren();
            }
            return null;
        } catch (IOException e) {
            return null;
        }
    }

    private static void say(HttpExchange exchange, int status, String sentence) throws IOException {
        send(exchange, status, "text/plain; charset=utf-8", (sentence + "\n").getBytes(StandardCharsets.UTF_8));
    }

    private static void send(HttpExchange exchange, int status, String type, byte[] bytes) throws IOException {
        Map.of(
                        "Content-Type", type,
                        "Cache-Control", "no-cache",
                        "X-Content-Type-Options", "nosniff",
                        "Referrer-Policy", "no-referrer",
                        "Content-Security-Policy", "default-src 'self'; frame-ancestors 'none'")
                .forEach(exchange.getResponseHeaders()::set);
        exchange.sendResponseHeaders(status, bytes.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(bytes);
        }
    }
}

package evenfall.page;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.message.Delivery;
import evenfall.message.Payload;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The page over real HTTP, on loopback. */
class CabPageTest {
    private static final String ALERT_TOPIC = "evenfall/example-36/alert/wing-low/left";

    private final HttpClient client = HttpClient.newHttpClient();
    private final List<String> handed = new CopyOnWriteArrayList<>();
    private volatile boolean room = true;
    private CabPage page;

    @BeforeEach
    void open() throws Exception {
        page = open(Optional.empty());
    }

    private CabPage open(Optional<String> token) throws Exception {
        Rig rig = RigFile.read(Path.of("docs", "example-rig.yaml"));
        CabPage opened = new CabPage(
                rig,
                new Rig.Page("127.0.0.1", 0, token),
                sentence -> room && handed.add(new String(sentence, StandardCharsets.US_ASCII)));
        opened.start();
        return opened;
    }

    @AfterEach
    void close() {
        page.close();
    }

    private HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + page.port() + path));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
        return client.send(request.build(), BodyHandlers.ofString());
    }

    private void live(String json) {
        page.board().publish("evenfall/example-36/live", Payload.of(bytes(json)), false, Delivery.LATEST);
    }

    private void alert(String json) {
        page.board().publish(ALERT_TOPIC, Payload.of(bytes(json)), true, Delivery.EVERY);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Reads events until one of that name, and gives its data. */
    private static String next(BufferedReader in, String name) throws IOException {
        String line = in.readLine();
        while (line != null && !line.equals("event: " + name)) {
            line = in.readLine();
        }
        String data = in.readLine();
        assertThat(data).startsWith("data: ");
        return data.substring("data: ".length());
    }

    private BufferedReader stream() throws Exception {
        HttpResponse<InputStream> response = client.send(to("/live").build(), BodyHandlers.ofInputStream());
        assertThat(response.statusCode()).isEqualTo(200);
        return new BufferedReader(new InputStreamReader(response.body(), StandardCharsets.UTF_8));
    }

    @Test
    void everyAssetIsServedAndSmall() throws Exception {
        int all = 0;
        for (String path : List.of("/", "/cab.css", "/cab.js", "/words.js", "/icon.svg")) {
            HttpResponse<String> response = send(to(path));
            assertThat(response.statusCode()).as(path).isEqualTo(200);
            assertThat(response.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
            assertThat(response.body())
                    .as("nothing from beyond the machine")
                    .doesNotContainPattern("(src|href)=.?http");
            all += response.body().length();
        }
        assertThat(all).as("bytes of the whole page").isLessThan(24_000);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/../cab.css", "/etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/page/cab.css", "/cab.html", "//"})
    void noOtherPathIsServed(String path) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", page.port())) {
            String request = "GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n";
            socket.getOutputStream().write(bytes(request));
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(answer).startsWith("HTTP/1.1 40").doesNotContain("root:");
        }
    }

    @Test
    void relaysMessagesAsTheyAre() throws Exception {
        BufferedReader in = stream();
        assertThat(next(in, "rig")).contains("\"rig\":\"example-36\"").contains("\"units\":\"metric\"");
        live("{\"at_s\":1.000}");
        assertThat(next(in, "live")).isEqualTo("{\"at_s\":1.000}");
        alert("{\"kind\":\"wing-low\"}");
        assertThat(next(in, "alerts")).isEqualTo("[{\"acknowledged\":false,\"alert\":{\"kind\":\"wing-low\"}}]");
        alert("");
        assertThat(next(in, "alerts")).isEqualTo("[]");
    }

    @Test
    void whoComesLaterSeesWhatStands() throws Exception {
        live("{\"at_s\":1.000}");
        alert("{\"kind\":\"wing-low\"}");
        BufferedReader in = stream();
        assertThat(next(in, "alerts")).contains("wing-low");
        assertThat(next(in, "live")).isEqualTo("{\"at_s\":1.000}");
    }

    @Test
    void anAlertCanBeAcknowledgedOnceItStandsAndEveryoneHearsOfIt() throws Exception {
        String body = "{\"kind\":\"wing-low\",\"place\":\"left\"}";
        assertThat(send(post(body)).statusCode()).isEqualTo(404);
        alert("{\"kind\":\"wing-low\"}");
        assertThat(send(post(body)).statusCode()).isEqualTo(204);
        assertThat(handed).containsExactly("$PEVFA,wing-low,left*11\r\n");
        assertThat(next(stream(), "alerts")).as("until the box says so").contains("\"acknowledged\":false");
        page.board()
                .publish(
                        "evenfall/example-36/acknowledged",
                        Payload.of(bytes("{\"kind\":\"wing-low\",\"place\":\"left\",\"at_s\":7.000}")),
                        false,
                        Delivery.EVERY);
        assertThat(next(stream(), "alerts")).contains("\"acknowledged\":true");
        assertThat(send(post(body)).statusCode()).isEqualTo(204);
        assertThat(handed).as("once is enough").hasSize(1);
        alert("");
        alert("{\"kind\":\"wing-low\"}");
        assertThat(next(stream(), "alerts")).as("a new one is new").contains("\"acknowledged\":false");
    }

    @Test
    void aBoxThatHasNoRoomForItSaysSo() throws Exception {
        alert("{\"kind\":\"wing-low\"}");
        room = false;
        HttpResponse<String> response = send(post("{\"kind\":\"wing-low\",\"place\":\"left\"}"));
        assertThat(response.statusCode()).isEqualTo(503);
        assertThat(response.body()).contains("try again");
    }

    private HttpRequest.Builder post(String body) {
        return to("/acknowledge").POST(HttpRequest.BodyPublishers.ofString(body));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[", "{}", "[1]", "{\"kind\":1,\"place\":\"left\"}", "null"})
    void aBadAcknowledgementGetsASentence(String body) throws Exception {
        HttpResponse<String> response = send(post(body));
        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(response.body()).startsWith("Send {");
    }

    @Test
    void nothingButReadingAndAcknowledgingIsUnderstood() throws Exception {
        assertThat(send(post("x".repeat(20_000))).statusCode()).isEqualTo(400);
        assertThat(send(to("/").PUT(HttpRequest.BodyPublishers.ofString("x"))).statusCode())
                .isEqualTo(405);
        assertThat(send(to("/live").DELETE()).statusCode()).isEqualTo(405);
        assertThat(send(to("/acknowledge")).statusCode()).isEqualTo(405);
    }

    @Test
    void anotherOriginIsRefused() throws Exception {
        assertThat(send(to("/live").header("Origin", "http://elsewhere.example"))
                        .statusCode())
                .isEqualTo(403);
        assertThat(send(to("/").header("Origin", "http://127.0.0.1:" + page.port()))
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void aNameFromElsewhereForLoopbackIsRefused() throws Exception {
        try (Socket socket = new Socket("127.0.0.1", page.port())) {
            socket.getOutputStream()
                    .write(bytes("GET / HTTP/1.1\r\nHost: rebound.example\r\nConnection: close\r\n\r\n"));
            assertThat(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
                    .startsWith("HTTP/1.1 403");
        }
    }

    @Test
    void withATokenNothingIsServedWithoutIt() throws Exception {
        page.close();
        page = open(Optional.of("abcdefghijkl"));
        assertThat(send(to("/")).statusCode()).isEqualTo(403);
        assertThat(send(to("/live?token=abcdefghijkm")).statusCode()).isEqualTo(403);
        HttpResponse<String> first = send(to("/?token=abcdefghijkl"));
        assertThat(first.statusCode()).isEqualTo(303);
        assertThat(first.headers().firstValue("Location")).contains("/");
        String cookie = first.headers().firstValue("Set-Cookie").orElseThrow();
        assertThat(cookie).isEqualTo("evenfall=abcdefghijkl; HttpOnly; SameSite=Strict; Path=/");
        assertThat(send(to("/").header("Cookie", "evenfall=abcdefghijkl")).statusCode())
                .isEqualTo(200);
    }

    @Test
    void pagesAreCappedAndTheNextIsTold() throws Exception {
        List<BufferedReader> open = new ArrayList<>();
        for (int i = 0; i < CabPage.MOST_PAGES; i++) {
            BufferedReader in = stream();
            next(in, "rig");
            open.add(in);
        }
        HttpResponse<String> one = send(to("/live"));
        assertThat(one.statusCode()).isEqualTo(503);
        assertThat(one.body()).contains("8 pages are open already");
        assertThat(send(to("/")).statusCode()).as("all else is still served").isEqualTo(200);
        live("{\"at_s\":2.000}");
        for (BufferedReader in : open) {
            assertThat(next(in, "live")).isEqualTo("{\"at_s\":2.000}");
        }
    }

    @Test
    void aSlowPageSkipsToTheNewest() throws Exception {
        BufferedReader in = stream();
        next(in, "rig");
        for (int i = 0; i < 20_000; i++) {
            live("{\"at_s\":" + i + "," + "\"pad\":\"" + "x".repeat(200) + "\"}");
        }
        live("{\"last\":true}");
        int read = 0;
        while (!next(in, "live").equals("{\"last\":true}")) {
            read++;
        }
        assertThat(read).as("messages on the way to the newest").isLessThan(20_000);
    }
}

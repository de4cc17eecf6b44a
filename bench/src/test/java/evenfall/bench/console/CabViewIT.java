package evenfall.bench.console;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.bench.run.ControllerProcess;
import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.replay.TraceReplay;
import evenfall.rig.RigFile;
import evenfall.sim.feed.FeedByPort;
import evenfall.sim.feed.RealTimePace;
import evenfall.sim.feed.VirtualPort;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import evenfall.sim.world.Emission;
import evenfall.sim.world.RowLedger;
import evenfall.sim.world.TruthSample;
import evenfall.sim.world.TruthSink;
import evenfall.sim.world.World;
import evenfall.trace.TraceSource;
import java.io.InputStream;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/** The cab view of the program for the board, in a real browser, over a simulated machine whose pump is too weak. */
class CabViewIT {
    /** From here on a drive of the scenario has pressure under its range for some ten seconds. */
    private static final long FROM_US = 10_000_000;

    private static Browser browser;

    @TempDir
    Path folder;

    private final Map<String, VirtualPort> ports = new LinkedHashMap<>();
    private Scenario scenario;
    private Path rig;
    private String address;
    private ControllerProcess monitor;
    private World world;
    private Thread machine;

    @BeforeAll
    static void openBrowser() {
        browser = Browser.open();
    }

    @AfterAll
    static void closeBrowser() {
        if (browser != null) {
            browser.close();
        }
    }

    @BeforeEach
    void startTheBox() throws Exception {
        scenario = Scenarios.find("weak-pump");
        Map<String, String> devices = new LinkedHashMap<>();
        for (String name : List.of("hub", "gnss")) {
            VirtualPort port = VirtualPort.open(folder.resolve(name));
            ports.put(name, port);
            devices.put(name, port.path().toString());
        }
        int free;
        try (ServerSocket socket = new ServerSocket(0)) {
            free = socket.getLocalPort();
        }
        address = "http://127.0.0.1:" + free + "/";
        String yaml = scenario.rigYaml(devices, "127.0.0.1", 1, Optional.empty());
        rig = Files.writeString(
                folder.resolve("rig.yaml"), yaml.replaceFirst("\\{", "{\"page\": {\"port\": " + free + "},"));
        world = new World(scenario, new Nowhere());
        while (world.timeUs() < FROM_US) {
            world.step(emission -> {});
        }
        monitor = boot(Optional.of(folder.resolve("trace.txt")));
    }

    private ControllerProcess boot(Optional<Path> trace) throws Exception {
        ControllerProcess started = ControllerProcess.start(rig, folder.resolve("log.txt"), trace);
        started.awaitOpen(ports.values().stream().map(VirtualPort::path).toList(), 15);
        return started;
    }

    /** Real bytes at the pace of the field, from the middle of the scenario on. */
    private void drive() {
        machine = new Thread(
                () -> {
                    FeedByPort feed = new FeedByPort(ports);
                    RealTimePace pace = new RealTimePace(1);
                    ArrayDeque<Emission> waiting = new ArrayDeque<>();
                    while (world.step(waiting::add)) {
                        for (Emission one = waiting.poll(); one != null; one = waiting.poll()) {
                            if (!pace.await(one.timeUs())) {
                                return;
                            }
                            feed.accept(one);
                        }
                    }
                },
                "machine");
        machine.start();
    }

    private void park() throws InterruptedException {
        machine.interrupt();
        machine.join();
    }

    @AfterEach
    void stopTheBox() throws Exception {
        if (machine != null) {
            park();
        }
        monitor.close();
        for (VirtualPort port : ports.values()) {
            port.close();
        }
    }

    @Test
    void aDriveFromTheFirstAlertToAFrozenPageAndBack() throws Exception {
        browser.phone(390, 844);
        browser.load(address);
        drive();
        browser.await("the alert", () -> card().isPresent());
        assertThat(inCard(".act")).as("what to do").endsWith(".");
        assertThat(inCard(".why")).as("why, with the number").contains("kPa");
        browser.await(
                "the rate is known", () -> browser.find("#rate-now").getText().matches("[0-9]+"));
        browser.shoot("cab-alert");
        nothingHangsOut();

        assertThat(browser.number("return document.querySelectorAll('input, select, textarea, form, a').length"))
                .as("nothing to set: the only control is the button of an alert")
                .isZero();
        assertThat(browser.number("return document.querySelectorAll('button:not(#alerts button)').length"))
                .isZero();
        card().orElseThrow().findElement(By.tagName("button")).click();
        browser.await("it is marked as seen", () -> inCard(".mark").contains("seen"));
        assertThat(card().orElseThrow().findElements(By.tagName("button"))).isEmpty();
        browser.shoot("cab-seen");

        park();
        browser.await(
                "the speed is not known", () -> browser.find("#speed").getText().equals("not known"));
        browser.await(
                "the rate is not known",
                () -> browser.find("#rate-now").getText().equals("not known"));
        assertThat(browser.find("#speed-why").getText()).as("and why").isNotEmpty();
        assertThat(browser.find("#rate-words").getText()).contains("not known");
        assertThat(browser.find("#parts .part-why").getText()).isNotEmpty();
        browser.shoot("cab-unknown");

        monitor.stop();
        theTraceSaysItAll();
        browser.await("the page is frozen and says so", () -> browser.shows("#lost"));
        browser.await("for how long", () -> browser.find("#lost-age").getText().matches("News is [2-9] s old"));
        assertThat(browser.number("return parseFloat(getComputedStyle(document.getElementById('lost-age')).fontSize)"))
                .as("large: CSS pixels")
                .isGreaterThanOrEqualTo(40);
        assertThat(browser.number("return document.querySelectorAll('#alerts button:enabled').length"))
                .as("what cannot work cannot be pressed")
                .isZero();
        browser.shoot("cab-frozen");
        nothingHangsOut();

        monitor = boot(Optional.empty());
        browser.await(
                "it says that the box is back",
                () -> browser.find("#back").getText().contains("The box is heard again."));
        assertThat(browser.shows("#lost")).isFalse();
        browser.shoot("cab-back");
    }

    /** What was done on the page stands in the trace, and the trace replays to every byte that the box said. */
    private void theTraceSaysItAll() throws Exception {
        Path trace = folder.resolve("trace.txt");
        assertThat(Files.readString(trace)).containsOnlyOnce(" cab $PEVFA,pressure-outside,boom*");
        List<String> acknowledged = new ArrayList<>();
        TraceReplay.Outcome replayed;
        try (InputStream in = Files.newInputStream(trace)) {
            replayed = TraceReplay.run(
                    RigFile.read(rig),
                    TraceSource.open(in, "trace.txt")::next,
                    (topic, payload, retained, delivery) -> {
                        if (topic.endsWith("/acknowledged")) {
                            acknowledged.add(new String(payload.bytes(), StandardCharsets.UTF_8));
                        }
                    },
                    new Unheard(),
                    (timeUs, unexpected) -> {
                        throw new AssertionError("no fault is due", unexpected);
                    });
        }
        assertThat(acknowledged).hasSize(1).first().asString().contains("\"pressure-outside\"", "\"boom\"");
        assertThat(monitor.lastWords())
                .contains(replayed.messages() + " messages, SHA-256 of them " + replayed.digest());
    }

    private static final class Unheard implements Outputs {
        @Override
        public void live(Live live) {}

        @Override
        public void raised(Alert alert) {}

        @Override
        public void cleared(Alert alert, long clearedUs) {}
    }

    /** The alert that this is about; on a busy machine others may come and go beside it. */
    private static Optional<WebElement> card() {
        return browser.driver.findElements(By.cssSelector("#alerts .alert")).stream()
                .filter(card -> card.getText().contains("Pressure outside its range"))
                .findFirst();
    }

    private static String inCard(String css) {
        return card().orElseThrow().findElement(By.cssSelector(css)).getText();
    }

    private static void nothingHangsOut() {
        assertThat(browser.number("return document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                .as("CSS pixels that hang out to the right")
                .isLessThanOrEqualTo(0);
    }

    /**
     * An old phone on a poor line: the processor four times slower, 150 ms to and fro, 1.6 Mbit/s. The three figures are those by
     * which Lighthouse imitates a slow phone (from memory).
     */
    @Test
    void itPaintsWithinASecondOnASlowPhoneAndWeighsAFewKilobytes() {
        browser.phone(360, 640);
        browser.cdp("Emulation.setCPUThrottlingRate", Map.of("rate", 4));
        browser.cdp("Network.enable", Map.of());
        browser.cdp("Network.setCacheDisabled", Map.of("cacheDisabled", true));
        browser.cdp(
                "Network.emulateNetworkConditions",
                Map.of("offline", false, "latency", 150, "downloadThroughput", 200_000, "uploadThroughput", 93_750));
        try {
            browser.load(address);
            browser.await("words are painted", () -> paintMs("first-contentful-paint") > 0);
            browser.await(
                    "values have come",
                    () -> browser.text().contains("Nothing to warn of") || browser.shows("#alerts .alert"));
            double bytes = browser.number("return performance.getEntriesByType('navigation')"
                    + ".concat(performance.getEntriesByType('resource').filter((e) => !e.name.endsWith('/live')))"
                    + ".reduce((sum, e) => sum + e.transferSize, 0)");
            System.out.printf(
                    "cab view on a slow phone: first paint %.0f ms, first words %.0f ms, %.0f bytes%n",
                    paintMs("first-paint"), paintMs("first-contentful-paint"), bytes);
            assertThat(paintMs("first-paint")).isLessThan(1000);
            assertThat(paintMs("first-contentful-paint")).isLessThan(1000);
            assertThat(bytes).isBetween(5_000.0, 24_000.0);
        } finally {
            browser.cdp(
                    "Network.emulateNetworkConditions",
                    Map.of("offline", false, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
            browser.cdp("Emulation.setCPUThrottlingRate", Map.of("rate", 1));
        }
    }

    private static double paintMs(String name) {
        return browser.number(
                "return performance.getEntriesByType('paint').find((e) => e.name === arguments[0])?.startTime ?? -1",
                name);
    }

    private static final class Nowhere implements TruthSink {
        @Override
        public void sample(TruthSample sample) {}

        @Override
        public void end(RowLedger ledger) {}
    }
}

package evenfall.bench.workbench;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.bench.console.Browser;
import evenfall.bench.console.ConsolePage;
import evenfall.bench.feed.Feeding;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sim.feed.FeedByPort;
import evenfall.sim.feed.VirtualPort;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The bench page in a real browser. What it shows is left in {@code target/screenshots} for a person to look at. */
class BenchPageIT {
    private static final Path SCREENSHOTS = Path.of("target", "screenshots");
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    @TempDir
    private static Path folder;

    private static VirtualPort hub;
    private static VirtualPort receiver;
    private static Thread feeding;
    private static ConsolePage page;
    private static Browser opened;
    private static ChromeDriver browser;

    @BeforeAll
    static void open() throws Exception {
        Scenario scenario = Scenarios.find("clean-hour");
        hub = VirtualPort.open();
        receiver = VirtualPort.open();
        Rig rig = RigFile.parse(
                "rig",
                scenario.rigYaml(
                        Map.of(
                                "hub",
                                hub.path().toString(),
                                "gnss",
                                receiver.path().toString()),
                        "127.0.0.1",
                        1883,
                        Optional.empty()),
                Path.of("."));
        FeedByPort feed = new FeedByPort(Map.of("hub", hub, "gnss", receiver));
        feeding = new Thread(
                () -> {
                    try {
                        Feeding.byTheClock(scenario, feed, 1, atS -> {});
                    } catch (InterruptedException e) {
                        // The tests are over.
                        Thread.currentThread().interrupt();
                    } catch (java.io.IOException e) {
                        throw new java.io.UncheckedIOException(e);
                    }
                },
                "hub");
        feeding.setDaemon(true);
        feeding.start();
        page = new ConsolePage("127.0.0.1", 0, Optional.empty(), new Workbench(Optional.of(rig), List.of(), folder));
        page.start();
        opened = Browser.open();
        browser = opened.driver;
        Files.createDirectories(SCREENSHOTS);
    }

    @AfterAll
    static void close() throws Exception {
        if (opened != null) {
            opened.close();
        }
        if (page != null) {
            page.close();
        }
        feeding.interrupt();
        feeding.join(2000);
        hub.close();
        receiver.close();
    }

    @BeforeEach
    void load() {
        browser.manage().window().setSize(new Dimension(1300, 1500));
        browser.get(page.address() + "bench");
        browser.executeScript("sessionStorage.clear(); localStorage.clear()");
        browser.get(page.address() + "bench");
        await(
                "the forms are built",
                () -> !browser.findElements(By.cssSelector("#begin-test select"))
                        .isEmpty());
    }

    private static void await(String what, BooleanSupplier condition) {
        new WebDriverWait(browser, PATIENCE)
                .ignoring(StaleElementReferenceException.class)
                .withMessage(() -> what + "; the page says: " + text())
                .until(driver -> condition.getAsBoolean());
    }

    private static String text() {
        return browser.findElement(By.tagName("body")).getText();
    }

    private static String question() {
        List<WebElement> found = browser.findElements(By.cssSelector("#test h3"));
        return found.isEmpty() ? "" : found.get(0).getText();
    }

    private static void shoot(String name, String section) throws Exception {
        browser.executeScript("document.querySelector(arguments[0]).scrollIntoView()", section);
        Files.write(SCREENSHOTS.resolve(name + ".png"), browser.getScreenshotAs(OutputType.BYTES));
    }

    private static void begin(String prover, String from) {
        List<WebElement> selects = browser.findElements(By.cssSelector("#begin-test select"));
        new Select(selects.get(0)).selectByValue(prover);
        new Select(selects.get(1)).selectByValue(from);
        browser.findElement(By.cssSelector("#begin-test button")).click();
        await("the first question", () -> !question().isEmpty());
    }

    /** What has the focus, as a keyboard has it. */
    private static WebElement focused() {
        return browser.switchTo().activeElement();
    }

    private static void answer(String typed) {
        String before = text();
        WebElement field = focused();
        if (typed != null) {
            field.sendKeys(Keys.chord(Keys.CONTROL, "a"), typed);
        }
        field.sendKeys(Keys.ENTER);
        await("something happens", () -> !text().equals(before));
    }

    private static void expect(String question) {
        await("it asks: " + question, () -> question().contains(question));
    }

    private static void run(String flow) {
        expect("which flow setting");
        answer(flow);
        expect("vessel empty");
        answer(null);
        expect("Let it flow");
        assertThat(focused().getText()).isEqualTo("Begin recording");
        focused().sendKeys(Keys.ENTER);
        await("it counts", () -> text().contains("pulses/s") && text().contains("running"));
    }

    private static void stop() {
        await("the valve is shut", () -> text().contains("pulses, at rest") && !text().contains("\n0 pulses, at rest"));
        focused().sendKeys(Keys.ENTER);
        expect("vessel full");
        answer(null);
    }

    @Test
    void aSimulatedFlowMeterIsProvedByTheKeyboardAloneToItsResult() throws Exception {
        begin("flow", "simulated");
        assertThat(text()).contains("Caution: liquid under pressure", "simulated, invented");
        shoot("bench-first-step", "#tests");
        expect("How is a catch measured?");
        answer(null);
        expect("How far off may the scale be");
        answer("nonsense");
        await("it says what is wrong", () -> text().contains("is not a number with a unit"));
        shoot("bench-refused", "#tests");
        answer("0.01 kg");
        expect("Smallest step");
        browser.findElements(By.cssSelector("#test .turns button")).stream()
                .filter(button -> button.getText().equals("Back one step"))
                .findFirst()
                .orElseThrow()
                .click();
        expect("How far off may the scale be");
        answer("0.01 kg");
        expect("Smallest step");
        answer(null);
        expect("Density of the liquid");
        answer(null);
        expect("How far off may that density");
        answer(null);
        expect("Temperature of the liquid");
        answer(null);
        run("low");
        shoot("bench-recording", "#tests");
        stop();
        for (int i = 2; i <= 3; i++) {
            expect("Another run?");
            assertThat(focused().getText()).isEqualTo("Yes");
            focused().sendKeys(Keys.ENTER);
            run("low");
            stop();
        }
        expect("Another run?");
        shoot("bench-another", "#tests");
        browser.findElements(By.cssSelector("#test .turns button")).stream()
                .filter(button -> button.getText().equals("No"))
                .findFirst()
                .orElseThrow()
                .click();
        await("a result", () -> text().contains("With 95 % confidence"));
        assertThat(text()).contains("pulses_per_L: ", "which holds it.", "it proves nothing about a real machine");
        shoot("bench-result", "#tests");
        await("it is listed", () -> browser.findElement(By.id("kept")).getText().contains("Flow meter"));
        browser.findElement(By.cssSelector("#test a.report")).click();
        await("the report", () -> text().contains("Proof: flow"));
        Files.write(SCREENSHOTS.resolve("bench-report.png"), browser.getScreenshotAs(OutputType.BYTES));
    }

    @Test
    void theUnitsOfTheQuestionChangeAndWhatIsTypedIsAskedInThem() {
        begin("flow", "by_hand");
        answer(null);
        expect("How far off may the scale be");
        assertThat(text()).contains("0.02 kg");
        browser.findElement(By.cssSelector("#units input[value=us]")).sendKeys(" ");
        await("pounds", () -> text().contains("For example 0.05 lb."));
        assertThat(new Select(browser.findElement(By.cssSelector("#test select")))
                        .getFirstSelectedOption()
                        .getText())
                .isEqualTo("lb");
    }

    @Test
    void theWiringTestListensToThePortsOneAfterAnother() throws Exception {
        begin("wiring", "simulated");
        focused().sendKeys(Keys.ENTER);
        await("it listens", () -> text().contains("bytes/s"));
        shoot("bench-wiring", "#tests");
        new WebDriverWait(browser, Duration.ofSeconds(60))
                .until(driver -> text().contains("limits met") || text().contains("limits not met"));
        assertThat(text()).contains("the sensor hub", "a GNSS receiver", "another baud rate");
        shoot("bench-wiring-result", "#tests");
    }

    private static WebElement row(String name) {
        return browser.findElements(By.cssSelector("table.signals tbody tr")).stream()
                .filter(row -> row.getText().startsWith(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row " + name));
    }

    private static void watch(String from) {
        new Select(browser.findElement(By.cssSelector("#watch select"))).selectByValue(from);
        browser.findElement(By.cssSelector("#watch button")).click();
        await(
                "rows",
                () -> !browser.findElements(By.cssSelector("table.signals tbody tr"))
                        .isEmpty());
    }

    @Test
    void signalsOfAHubAreLiveInBothUnitsAndNotKnownOnceItIsUnplugged() throws Exception {
        VirtualPort second = VirtualPort.open();
        Scenario scenario = Scenarios.find("level-field");
        Rig rig = RigFile.parse(
                "rig",
                scenario.rigYaml(
                        Map.of(
                                "hub",
                                second.path().toString(),
                                "gnss",
                                receiver.path().toString()),
                        "127.0.0.1",
                        1883,
                        Optional.empty()),
                Path.of("."));
        ConsolePage own =
                new ConsolePage("127.0.0.1", 0, Optional.empty(), new Workbench(Optional.of(rig), List.of(), folder));
        own.start();
        Thread thread = new Thread(() -> {
            try {
                Feeding.byTheClock(scenario, new FeedByPort(Map.of("hub", second)), 1, atS -> {});
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            } catch (java.io.IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
        thread.setDaemon(true);
        thread.start();
        try {
            browser.get(own.address() + "bench");
            await(
                    "the forms are built",
                    () -> !browser.findElements(By.cssSelector("#watch select")).isEmpty());
            watch("port " + second.path());
            await("a flow", () -> row("Flow meter").getText().contains("L/min"));
            await("a height", () -> row("Height, left-tip").getText().matches("(?s).*[0-9.]+ m.*"));
            assertThat(row("Receiver").getText()).contains("not known: nothing heard yet");
            shoot("bench-signals", "#signals");
            browser.findElement(By.cssSelector("#units input[value=us]")).sendKeys(" ");
            await(
                    "gallons and psi",
                    () -> row("Flow meter").getText().contains("US gal/min")
                            && row("Pressure").getText().contains("psi"));
            second.close();
            await("it says that the hub is gone", () -> text().contains("not open"));
            await("nothing of it is known", () -> row("Flow meter").getText().contains("not known: "));
            assertThat(row("Flow meter").getText()).contains("unplugged");
            shoot("bench-unplugged", "#signals");
        } finally {
            thread.interrupt();
            thread.join(2000);
            own.close();
            second.close();
        }
    }

    @Test
    void aBoardUnderEachSensorInTurnIsFollowed() throws Exception {
        watch("simulated");
        browser.findElement(By.cssSelector(".cover button")).click();
        await(
                "the first one answers",
                () -> browser.findElement(By.cssSelector(".cover")).getText().contains("✓ "));
        shoot("bench-cover", "#signals");
    }

    @Test
    void aNarrowPhoneShowsAllOfIt() throws Exception {
        browser.manage().window().setSize(new Dimension(500, 1100));
        browser.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", 360, "height", 780, "deviceScaleFactor", 2, "mobile", true));
        try {
            watch("rig");
            begin("flow", "simulated");
            answer(null);
            expect("How far off may the scale be");
            Long wide = (Long) browser.executeScript("return document.documentElement.scrollWidth");
            assertThat(wide).as("nothing hangs out to the right").isLessThanOrEqualTo(362);
            shoot("bench-narrow-step", "#tests");
            shoot("bench-narrow-signals", "#signals");
        } finally {
            browser.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
        }
    }

    @Test
    void everyControlHasAName() {
        watch("simulated");
        begin("flow", "simulated");
        answer(null);
        Object nameless = browser.executeScript("return [...document.querySelectorAll('input, select, button')]"
                + ".filter(one => !(one.textContent.trim() || one.labels?.length || one.getAttribute('aria-label')))"
                + ".map(one => one.outerHTML)");
        assertThat((List<?>) nameless).isEmpty();
    }
}

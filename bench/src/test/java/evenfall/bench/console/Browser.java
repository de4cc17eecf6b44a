package evenfall.bench.console;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Debian's Chromium without a window. What it shows is left in {@code target/screenshots} for a person to look at. */
public final class Browser implements AutoCloseable {
    private static final Path SCREENSHOTS = Path.of("target", "screenshots");
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    public final ChromeDriver driver;

    /** What Chromium keeps while it runs. It leaves some of it there, and its sockets want a short path, so not the build's folder. */
    private final Path scratch;

    private Browser(ChromeDriver driver, Path scratch) {
        this.driver = driver;
        this.scratch = scratch;
    }

    public static Browser open() {
        Path scratch;
        try {
            scratch = Files.createTempDirectory(Path.of("/tmp"), "evenfall-browser-");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(program("chromium").toString());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-quic",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--no-first-run",
                "--enable-precise-memory-info");
        return new Browser(
                new ChromeDriver(
                        new ChromeDriverService.Builder()
                                .usingDriverExecutable(program("chromedriver").toFile())
                                .withEnvironment(Map.of("TMPDIR", scratch.toString()))
                                .build(),
                        options),
                scratch);
    }

    private static Path program(String name) {
        for (String folder : List.of("/usr/bin", "/usr/lib/chromium", "/usr/local/bin")) {
            Path program = Path.of(folder, name);
            if (Files.isExecutable(program)) {
                return program;
            }
        }
        throw new AssertionError(
                "there is no " + name + " here; bench/verify installs Debian's chromium and chromium-driver");
    }

    void load(String address) {
        driver.get(address);
    }

    /** The screen of a desk. */
    void desk(int width, int height) {
        cdp("Emulation.clearDeviceMetricsOverride", Map.of());
        driver.manage().window().setSize(new Dimension(width, height));
    }

    /** The screen of a phone, CSS pixels: a window cannot be made so narrow. */
    void phone(int width, int height) {
        cdp(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", true));
    }

    Map<String, Object> cdp(String command, Map<String, Object> parameters) {
        return driver.executeCdpCommand(command, parameters);
    }

    /** Runs JavaScript; what it returns. */
    Object js(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    double number(String script, Object... arguments) {
        return ((Number) js(script, arguments)).doubleValue();
    }

    /** All that can be read in the page's main part. */
    String text() {
        return driver.findElement(By.tagName("main")).getText();
    }

    boolean shows(String css) {
        return driver.findElements(By.cssSelector(css)).stream().anyMatch(WebElement::isDisplayed);
    }

    WebElement find(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    void await(String what, BooleanSupplier condition) {
        new WebDriverWait(driver, PATIENCE, Duration.ofMillis(50))
                .withMessage(() -> what)
                .ignoreAll(List.of(WebDriverException.class, NoSuchElementException.class))
                .until(ignored -> condition.getAsBoolean());
    }

    void shoot(String name) {
        try {
            Files.createDirectories(SCREENSHOTS);
            Files.write(SCREENSHOTS.resolve(name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        driver.quit();
        // Chromium leaves links that lead nowhere, which count as not there for what follows them.
        try (Stream<Path> left = Files.walk(scratch)) {
            for (Path path : left.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

package evenfall.bench.console;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The console in a real browser. What it shows is left in {@code target/screenshots} for a person to look at. */
class ConsoleIT {
    private static final Path SCREENSHOTS = Path.of("target", "screenshots");

    private static ConsolePage page;
    private static ChromeDriver browser;

    @BeforeAll
    static void open() throws Exception {
        page = new ConsolePage("127.0.0.1", 0, Optional.empty());
        page.start();
        browser = Browser.open().driver;
        Files.createDirectories(SCREENSHOTS);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.quit();
        }
        if (page != null) {
            page.close();
        }
    }

    @BeforeEach
    void load() {
        browser.manage().window().setSize(new Dimension(1300, 1500));
        browser.get(page.address());
        await(
                "the page is built",
                () -> browser.findElement(By.id("go")).isDisplayed()
                        && !browser.findElements(By.cssSelector("#changes form"))
                                .isEmpty());
    }

    private static void await(String what, java.util.function.BooleanSupplier condition) {
        new WebDriverWait(browser, Duration.ofSeconds(20)).withMessage(what).until(driver -> condition.getAsBoolean());
    }

    private static String text() {
        return browser.findElement(By.tagName("main")).getText();
    }

    private static double atS() {
        return Double.parseDouble(text().replaceFirst("(?s).*?([0-9.]+) s of .*", "$1"));
    }

    private static void shoot(String name) throws Exception {
        Files.write(SCREENSHOTS.resolve(name + ".png"), browser.getScreenshotAs(OutputType.BYTES));
    }

    private static WebElement button(String words) {
        return browser.findElements(By.tagName("button")).stream()
                .filter(button -> button.getText().strip().equals(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no button says " + words));
    }

    @Test
    void aRunIsDrivenPausedRevealedAndChangedInTheMiddle() throws Exception {
        assertThat(browser.findElement(By.id("truth")).getText()).isEqualTo("Show the truth");
        browser.findElement(By.id("go")).click();
        await("it drives", () -> atS() > 2);
        assertThat(text()).as("nothing of the truth before it is asked for").contains("as the monitor knows it");
        browser.findElement(By.id("truth")).click();
        await("the truth is drawn", () -> text().contains("as it is"));
        shoot("console-run-truth");
        browser.findElement(By.id("truth")).click();
        await("the truth is hidden again", () -> text().contains("as the monitor knows it"));

        WebElement form = browser.findElements(By.cssSelector("#changes form")).get(0);
        new Select(form.findElement(By.tagName("select"))).selectByVisibleText("Streamer bar");
        double beforeS = atS();
        form.findElement(By.tagName("button")).click();
        await("the outlets are changed", () -> text().contains("A: Streamer bar"));
        await("it goes on from there", () -> atS() > beforeS);
        shoot("console-run-changed");
        browser.findElement(By.id("go")).click();
        await("it rests", () -> button("Go").isDisplayed());
    }

    @Test
    void anAlertSaysWhatToDo() throws Exception {
        browser.findElements(By.cssSelector("input[type=radio][value=max]"))
                .get(0)
                .sendKeys(" ");
        browser.findElement(By.id("go")).click();
        await(
                "a wing dives at the terrace",
                () -> text().contains("Wing too low") || text().contains("about to strike"));
        assertThat(text()).containsPattern("Raise the (left|right) wing");
        shoot("console-run-alert");
    }

    @Test
    void aNarrowScreenShowsAllOfIt() throws Exception {
        browser.manage().window().setSize(new Dimension(520, 1400));
        Long wide = (Long) browser.executeScript("return document.documentElement.scrollWidth");
        Long seen = (Long) browser.executeScript("return document.documentElement.clientWidth");
        assertThat(wide).as("nothing hangs out to the right").isLessThanOrEqualTo(seen + 2);
        shoot("console-run-narrow");
    }

    @Test
    void outletsAreChosenAsInputsChange() throws Exception {
        browser.get(page.address() + "choose");
        await("an answer", () -> text().contains("Streamer bar"));
        shoot("console-choose");
    }

    @Test
    void aBadRequestGetsASentenceAndNoPathLeadsOut() throws Exception {
        HttpClient client = HttpClient.newHttpClient();
        for (String path : List.of("nothing", "..%2f..%2fetc%2fpasswd", "run.html")) {
            HttpResponse<String> answer = client.send(
                    HttpRequest.newBuilder(URI.create(page.address() + path)).build(),
                    HttpResponse.BodyHandlers.ofString());
            assertThat(answer.statusCode()).as(path).isBetween(400, 499);
            assertThat(answer.body()).as(path).endsWith(".\n");
        }
        HttpResponse<String> elsewhere = client.send(
                HttpRequest.newBuilder(URI.create(page.address()))
                        .header("Origin", "http://elsewhere.example")
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        assertThat(elsewhere.statusCode()).isEqualTo(403);
    }

    @Test
    void aServerThatIsGoneIsSaidAndItsReturnIsSeen() throws Exception {
        ConsolePage first = new ConsolePage("127.0.0.1", 0, Optional.empty());
        first.start();
        String address = first.address();
        browser.get(address);
        await(
                "the page is built",
                () -> !browser.findElements(By.cssSelector("#changes form")).isEmpty());
        first.close();
        await(
                "it says that the server is gone",
                () -> browser.findElement(By.id("lost")).isDisplayed());
        shoot("console-lost");
        ConsolePage again = new ConsolePage("127.0.0.1", URI.create(address).getPort(), Optional.empty());
        again.start();
        try {
            await(
                    "it finds the server again",
                    () -> !browser.findElement(By.id("lost")).isDisplayed());
        } finally {
            again.close();
        }
    }
}

package evenfall.bench.console;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.Select;

/** The console in a real browser. What it shows is left in {@code target/screenshots} for a person to look at. */
class ConsoleIT extends ConsoleInBrowser {
    private static final Pattern DIVES =
            Pattern.compile("(Wing too low|about to strike)[\\s\\S]*Raise the (left|right) wing");

    @BeforeEach
    void load() {
        browser.desk(1300, 1500);
        browser.load(console.address());
        awaitRunPage();
    }

    private static double atS() {
        return Double.parseDouble(browser.text().replaceFirst("(?s).*?([0-9.]+) s of .*", "$1"));
    }

    private static WebElement button(String words) {
        return browser.driver.findElements(By.tagName("button")).stream()
                .filter(button -> button.getText().strip().equals(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no button says " + words));
    }

    @Test
    void aRunIsDrivenPausedRevealedAndChangedInTheMiddle() throws Exception {
        assertThat(browser.find("#truth").getText()).isEqualTo("Show the truth");
        browser.find("#go").click();
        browser.await("it drives", () -> atS() > 2);
        assertThat(browser.text())
                .as("nothing of the truth before it is asked for")
                .contains("as the monitor knows it");
        browser.find("#truth").click();
        browser.await("the truth is drawn", () -> browser.text().contains("as it is"));
        browser.shoot("console-run-truth");
        browser.find("#truth").click();
        browser.await("the truth is hidden again", () -> browser.text().contains("as the monitor knows it"));

        WebElement form =
                browser.driver.findElements(By.cssSelector("#changes form")).get(0);
        new Select(form.findElement(By.tagName("select"))).selectByVisibleText("Streamer bar");
        double beforeS = atS();
        form.findElement(By.tagName("button")).click();
        browser.await("the outlets are changed", () -> browser.text().contains("A: Streamer bar"));
        browser.await("it goes on from there", () -> atS() > beforeS);
        browser.shoot("console-run-changed");
        browser.find("#go").click();
        browser.await("it rests", () -> button("Go").isDisplayed());
    }

    @Test
    void anAlertSaysWhatToDo() throws Exception {
        browser.driver
                .findElements(By.cssSelector("input[type=radio][value=max]"))
                .get(0)
                .sendKeys(" ");
        browser.find("#go").click();
        // At this pace an alert may be gone at the next look: both are read off one.
        browser.await(
                "a wing dives at the terrace, and what to do stands beside it",
                () -> DIVES.matcher(browser.text()).find());
        browser.shoot("console-run-alert");
    }

    @Test
    void aNarrowScreenShowsAllOfIt() throws Exception {
        browser.desk(520, 1400);
        Long wide = (Long) browser.js("return document.documentElement.scrollWidth");
        Long seen = (Long) browser.js("return document.documentElement.clientWidth");
        assertThat(wide).as("nothing hangs out to the right").isLessThanOrEqualTo(seen + 2);
        browser.shoot("console-run-narrow");
    }

    @Test
    void outletsAreChosenAsInputsChange() throws Exception {
        browser.load(console.address() + "choose");
        browser.await("an answer", () -> browser.text().contains("Streamer bar"));
        browser.shoot("console-choose");
    }

    @Test
    void aBadRequestGetsASentenceAndNoPathLeadsOut() throws Exception {
        HttpClient client = HttpClient.newHttpClient();
        for (String path : List.of("nothing", "..%2f..%2fetc%2fpasswd", "run.html")) {
            HttpResponse<String> answer = client.send(
                    HttpRequest.newBuilder(URI.create(console.address() + path)).build(),
                    HttpResponse.BodyHandlers.ofString());
            assertThat(answer.statusCode()).as(path).isBetween(400, 499);
            assertThat(answer.body()).as(path).endsWith(".\n");
        }
        HttpResponse<String> elsewhere = client.send(
                HttpRequest.newBuilder(URI.create(console.address()))
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
        browser.load(address);
        browser.await(
                "the page is built",
                () -> !browser.driver
                        .findElements(By.cssSelector("#changes form"))
                        .isEmpty());
        first.close();
        browser.await(
                "it says that the server is gone", () -> browser.find("#lost").isDisplayed());
        browser.shoot("console-lost");
        ConsolePage again = new ConsolePage("127.0.0.1", URI.create(address).getPort(), Optional.empty());
        again.start();
        try {
            browser.await(
                    "it finds the server again", () -> !browser.find("#lost").isDisplayed());
        } finally {
            again.close();
        }
    }
}

package evenfall.bench.console;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.sim.scenario.Scenarios;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;

/** Every page in every state that a person may meet, by the rules of axe-core. */
class AccessibilityIT extends ConsoleInBrowser {
    private static final String RIGHT_OF = "return document.querySelector(arguments[0]).getBoundingClientRect().left"
            + " - document.querySelector(arguments[1]).getBoundingClientRect().right";
    private static final String HANGS_OUT =
            "return document.documentElement.scrollWidth - document.documentElement.clientWidth";

    private final List<String> found = new ArrayList<>();

    /** Wide as on a desk, and narrow as a phone is held. */
    private void look(String page) {
        browser.desk(1300, 1000);
        found.addAll(Axe.violations(browser, page + ", wide"));
        browser.shoot("look-" + page.replace(' ', '-'));
        browser.phone(390, 844);
        found.addAll(Axe.violations(browser, page + ", narrow"));
        browser.shoot("look-" + page.replace(' ', '-') + "-narrow");
        assertThat(browser.number(HANGS_OUT))
                .as("CSS pixels of %s that hang out of a phone", page)
                .isLessThanOrEqualTo(0);
        browser.desk(1300, 1000);
    }

    @AfterEach
    void nothingGraveWasFound() {
        found.forEach(System.out::println);
        assertThat(found).noneMatch(line -> line.startsWith("serious") || line.startsWith("critical"));
    }

    private void openConsole(String path) {
        browser.load(console.address() + path);
    }

    @Test
    void theConsolesRunPage() throws Exception {
        openConsole("");
        awaitRunPage();
        look("run idle");
        browser.find("#jump input")
                .sendKeys(Double.toString(CabOnDesk.firstAlertS(Scenarios.find("terrace-crossing"))), Keys.ENTER);
        browser.await("an alert stands", () -> browser.shows("#standing .alert"));
        look("run with an alert");
        browser.find("#truth").click();
        browser.await("the truth is drawn", () -> browser.text().contains("as it is"));
        browser.find("#past summary").click();
        look("run with the truth");
    }

    @Test
    void twoRunsSideBySide() {
        openConsole("");
        awaitRunPage();
        browser.find("#begin select[name=second] option[value=streamer-bar]").click();
        browser.find("#begin button").click();
        browser.await("two lanes", () -> browser.shows("#lane-B"));
        browser.find("#pace input[value=max]").sendKeys(" ");
        browser.find("#go").click();
        browser.await("it has driven to its end", () -> browser.text().contains("the end"));
        browser.find("#truth").click();
        browser.await("the truth is drawn", () -> browser.text().contains("as it is"));
        look("two runs");
        assertThat(browser.text())
                .as("a bar does not mind heights, and that is said as people say it")
                .contains("even at any height up to 2 m");
        for (int width : new int[] {1920, 1280, 800}) {
            browser.desk(width, 1000);
            assertThat(browser.number(RIGHT_OF, "#lane-B", "#lane-A"))
                    .as("B lies beside A on a screen of " + width)
                    .isPositive();
            assertThat(browser.number(HANGS_OUT)).isLessThanOrEqualTo(0);
        }
        browser.phone(390, 844);
        assertThat(browser.number(RIGHT_OF, "#lane-B", "#lane-A"))
                .as("and below it on a phone")
                .isNegative();
        assertThat(browser.number(HANGS_OUT)).isLessThanOrEqualTo(0);
    }

    @Test
    void theConsolesOtherPages() {
        openConsole("choose");
        browser.await("an answer", () -> browser.text().contains("Streamer bar"));
        look("choose");
        openConsole("bench");
        browser.await("the list", () -> browser.shows("#begin-test select"));
        browser.find("main summary").click();
        look("bench");
        browser.find("main summary").click();
        browser.find("#watch button").click();
        browser.await("signals", () -> browser.shows("table.signals tbody td"));
        browser.find("#begin-test button").click();
        browser.await("the first question", () -> browser.shows("#test input"));
        look("bench first question");
        browser.find("#test form button").click();
        browser.await("the second question", () -> browser.shows("#test .so-far li"));
        look("bench second question");
    }

    @Test
    void theConsoleWhenItsServerIsGone() throws Exception {
        ConsolePage gone = new ConsolePage("127.0.0.1", 0, Optional.empty());
        gone.start();
        browser.load(gone.address());
        awaitRunPage();
        gone.close();
        browser.await("it says so", () -> browser.shows("#lost"));
        look("run lost");
    }

    @Test
    void theCabView() throws Exception {
        try (CabOnDesk cab = new CabOnDesk(Scenarios.find("terrace-crossing"))) {
            browser.load(cab.address());
            browser.await("it waits", () -> browser.text().contains("Waiting"));
            look("cab waiting");
            cab.driveUntil(live -> live.timeUs() > 6_000_000 && live.rateM().isKnown());
            browser.await("quiet", () -> browser.text().contains("Nothing to warn of."));
            look("cab quiet");
            cab.driveUntil(live -> !live.standing().isEmpty());
            browser.await("an alert", () -> browser.shows("#alerts button"));
            look("cab with an alert");
            browser.find("#alerts button").click();
            browser.await("it is seen", () -> browser.shows("#alerts .seen"));
            look("cab with an alert seen");
            cab.deafFor(4);
            browser.await("not known", () -> browser.text().contains("not known"));
            look("cab with unknown values");
            cab.fallSilent();
            browser.await("it is frozen", () -> browser.shows("#lost"));
            look("cab frozen");
        }
    }
}

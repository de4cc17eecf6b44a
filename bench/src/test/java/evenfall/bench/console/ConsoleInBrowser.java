package evenfall.bench.console;

import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;

/** A console and a browser to look at it with, open for all tests of a class. */
abstract class ConsoleInBrowser {
    static ConsolePage console;
    static Browser browser;

    @BeforeAll
    static void openConsoleAndBrowser() throws Exception {
        console = new ConsolePage("127.0.0.1", 0, Optional.empty());
        console.start();
        browser = Browser.open();
    }

    @AfterAll
    static void closeConsoleAndBrowser() {
        if (browser != null) {
            browser.close();
            browser = null;
        }
        console.close();
    }

    /** Until the run page has asked for all that it shows. */
    static void awaitRunPage() {
        browser.await("the page is built", () -> browser.shows("#changes form"));
    }
}

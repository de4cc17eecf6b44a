package evenfall.bench.console;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.sim.scenario.Scenarios;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** The console without a mouse: what WCAG 2.2 asks for under 2.1.1, 2.1.2, 2.4.3, 2.4.7 and 2.4.11. */
class KeyboardIT extends ConsoleInBrowser {
    /** Numbers every control that Tab must reach, in the order of the document; of radio buttons one in a group is reached. */
    private static final String NUMBER = """
            let n = 0;
            for (const node of document.querySelectorAll('a[href], button, select, input, textarea, summary, [tabindex]')) {
              const box = node.getBoundingClientRect();
              if (node.disabled || !node.checkVisibility() || box.width === 0 || box.height === 0 || node.closest('[inert]')) continue;
              if (node.type === 'radio' && !node.checked) continue;
              node.dataset.stop = n++;
            }
            return n;
            """;

    private static final String FOCUSED = """
            const node = document.activeElement;
            if (!node || node === document.body) return null;
            const style = getComputedStyle(node);
            const box = node.getBoundingClientRect();
            const at = document.elementFromPoint(box.left + box.width / 2, box.top + Math.min(box.height, innerHeight - box.top) / 2);
            return {
              stop: node.dataset.stop ?? 'none', what: node.outerHTML.slice(0, 90),
              outline: style.outlineStyle === 'none' ? 0 : parseFloat(style.outlineWidth),
              seen: at !== null && (node.contains(at) || at.contains(node))
            };
            """;

    @BeforeEach
    void load() {
        browser.desk(1280, 800);
        browser.load(console.address());
        awaitRunPage();
    }

    private static void press(CharSequence... keys) {
        new Actions(browser.driver).sendKeys(keys).perform();
    }

    private static void pressShiftTab() {
        new Actions(browser.driver)
                .keyDown(Keys.SHIFT)
                .sendKeys(Keys.TAB)
                .keyUp(Keys.SHIFT)
                .perform();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> focused() {
        return (Map<String, Object>) browser.js(FOCUSED);
    }

    /** Where Tab comes by until it leaves the page. */
    private static List<Integer> walk(Runnable step, int atMost) {
        List<Integer> stops = new ArrayList<>();
        step.run();
        for (Map<String, Object> at = focused(); at != null; at = focused()) {
            assertThat((String) at.get("stop")).as("%s can be reached", at).isNotEqualTo("none");
            assertThat(((Number) at.get("outline")).doubleValue())
                    .as("an outline, CSS pixels, on %s", at)
                    .isGreaterThanOrEqualTo(2);
            assertThat((Boolean) at.get("seen")).as("nothing covers %s", at).isTrue();
            int stop = Integer.parseInt((String) at.get("stop"));
            if (!stops.isEmpty() && stop == stops.get(0)) {
                // A browser without a window has nothing around the page that Tab could go to.
                return stops;
            }
            stops.add(stop);
            assertThat(stops).as("Tab leaves the page in the end").hasSizeLessThanOrEqualTo(atMost);
            step.run();
        }
        return stops;
    }

    @Test
    void tabReachesEveryControlInOrderAndBackAndLeaves() {
        for (String path : List.of("", "choose", "bench")) {
            browser.load(console.address() + path);
            String last =
                    path.isEmpty() ? "#changes form" : path.equals("choose") ? "#answer table" : "#begin-test select";
            browser.await(path + " is built", () -> browser.shows(last));
            browser.await(
                    path + " knows its state",
                    () -> !path.isEmpty() || browser.find("#clock").getText().contains(" s of "));
            int controls = (int) browser.number(NUMBER);
            assertThat(controls).isGreaterThan(5);
            List<Integer> forth = walk(() -> press(Keys.TAB), controls);
            assertThat(forth).as("every control of %s", path).hasSize(controls).isSorted();
            List<Integer> back = walk(KeyboardIT::pressShiftTab, controls);
            assertThat(back).hasSize(controls).isSortedAccordingTo((a, b) -> b - a);
        }
    }

    private static void focus(String css) {
        browser.js("document.querySelector(arguments[0]).focus()", css);
    }

    @Test
    void enterAndSpaceOperateAll() {
        focus("#go");
        press(Keys.SPACE);
        browser.await("it drives", () -> browser.find("#go").getText().equals("Pause"));
        press(Keys.ENTER);
        browser.await("it rests", () -> browser.find("#go").getText().equals("Go"));
        focus("#pace input:checked");
        press(Keys.ARROW_RIGHT);
        browser.await(
                "twice the pace", () -> browser.find("#pace input[value='2']").isSelected());
        focus("#jump input");
        press("20", Keys.ENTER);
        browser.await("it jumps", () -> browser.find("#clock").getText().startsWith("20.0 s"));
        focus("#truth");
        press(Keys.SPACE);
        browser.await("the truth is shown", () -> browser.text().contains("as it is"));
        focus("canvas.strip");
        press(Keys.ARROW_LEFT);
        browser.await(
                "the strip is read", () -> browser.find(".readout").getText().contains("of the target"));
        focus("#past summary");
        press(Keys.ENTER);
        browser.await("the list is open", () -> browser.shows("#log"));
        focus("#changes select");
        press("Streamer", Keys.TAB, Keys.ENTER);
        browser.await("outlets are changed", () -> browser.text().contains("A: Streamer bar"));
        focus("#units input:checked");
        press(Keys.ARROW_RIGHT);
        browser.await("other units", () -> browser.text().contains("US gal/ac"));
        press(Keys.ARROW_LEFT);
    }

    /** What is told by a colour is told by a shape and a word as well. */
    @Test
    void withoutColoursAnAlertStillSaysHowSoon() throws Exception {
        browser.cdp("Emulation.setEmulatedVisionDeficiency", Map.of("type", "achromatopsia"));
        try (CabOnDesk cab = new CabOnDesk(Scenarios.find("terrace-crossing"))) {
            cab.driveUntil(live -> !live.standing().isEmpty());
            focus("#jump input");
            press(Double.toString(cab.timeS()), Keys.ENTER);
            browser.await("an alert stands", () -> browser.shows("#standing .alert"));
            browser.find("#truth").click();
            browser.await("the truth is drawn", () -> browser.text().contains("as it is"));
            browser.shoot("console-without-colours");
            assertThat(browser.find("#standing .alert .why").getText()).containsPattern("^(Act now|Act soon|Look)\\.");
            assertThat(browser.find("#standing .alert svg path").getAttribute("d"))
                    .isNotEmpty();

            browser.load(cab.address());
            browser.await("an alert", () -> browser.shows("#alerts button"));
            browser.shoot("cab-without-colours");
            press(Keys.TAB);
            assertThat(((Number) focused().get("outline")).doubleValue()).isGreaterThanOrEqualTo(2);
            press(Keys.SPACE);
            browser.await("it is seen", () -> browser.shows("#alerts .seen .mark"));
        } finally {
            browser.cdp("Emulation.setEmulatedVisionDeficiency", Map.of("type", "none"));
        }
    }
}

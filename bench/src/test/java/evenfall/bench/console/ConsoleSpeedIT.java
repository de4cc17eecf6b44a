package evenfall.bench.console;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * How fast the console is, as the browser itself measures it. Run on one machine with the server, and drawn by the processor alone:
 * Chromium without a window has no graphics card.
 */
class ConsoleSpeedIT extends ConsoleInBrowser {
    /** The longest run of memory, s; a longer one is asked for by {@code -Devenfall.memory.seconds}. */
    private static final int MEMORY_S = Integer.getInteger("evenfall.memory.seconds", 18);

    /** How often memory is looked at; a longer run looks oftener. */
    private static final int LOOKS = Math.max(3, MEMORY_S / 30);

    @BeforeAll
    static void measureThePage() {
        browser.desk(1300, 1500);
        // Processor time of the page's thread: what else this machine does is not the page's doing.
        browser.cdp("Performance.enable", Map.of("timeDomain", "threadTicks"));
    }

    private static void load() {
        browser.load(console.address());
        browser.await("it knows its run", () -> browser.find("#clock").getText().contains(" s of "));
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Double> metrics() {
        Map<String, Double> byName = new HashMap<>();
        for (Map<String, Object> one : (List<Map<String, Object>>)
                browser.cdp("Performance.getMetrics", Map.of()).get("metrics")) {
            byName.put((String) one.get("name"), ((Number) one.get("value")).doubleValue());
        }
        return byName;
    }

    @Test
    void itLoadsWithinFiveSeconds() {
        browser.cdp("Network.enable", Map.of());
        browser.cdp("Network.clearBrowserCache", Map.of());
        long beganNs = System.nanoTime();
        load();
        double allS = (System.nanoTime() - beganNs) / 1e9;
        double loadMs = browser.number("return performance.getEntriesByType('navigation')[0].loadEventEnd");
        double paintMs = browser.number("return performance.getEntriesByName('first-contentful-paint')[0].startTime");
        System.out.printf(
                "console: first words %.0f ms, loaded %.0f ms, run begun and its state shown within %.2f s%n",
                paintMs, loadMs, allS);
        assertThat(loadMs).isBetween(1.0, 5000.0);
        assertThat(allS).isLessThan(5);
    }

    private static void drive(String scenario, String pace) {
        load();
        begin(scenario, pace);
    }

    private static void begin(String scenario, String pace) {
        browser.find("#begin select[name=scenario] option[value=" + scenario + "]")
                .click();
        browser.find("#begin button").click();
        browser.await("a new run", () -> browser.find("#clock").getText().startsWith("0.0 s of 36"));
        browser.find("#pace input[value='" + pace + "']").sendKeys(" ");
        browser.find("#truth").click();
        browser.find("#go").click();
        browser.await("the truth is drawn", () -> browser.text().contains("as it is"));
    }

    /** Takes the time of every frame for so long; what the frames cost on the page's own thread, ms. */
    private static double frames(String what, double seconds) {
        Map<String, Double> before = metrics();
        double drawnBefore = browser.number("return evenfall.drawn()");
        browser.driver.manage().timeouts().scriptTimeout(java.time.Duration.ofSeconds(60));
        @SuppressWarnings("unchecked")
        List<Number> stamps = (List<Number>) browser.driver.executeAsyncScript("""
                const done = arguments[arguments.length - 1];
                const until = performance.now() + arguments[0];
                const stamps = [];
                const step = (now) => {
                  stamps.push(now);
                  if (performance.now() < until) requestAnimationFrame(step); else done(stamps);
                };
                requestAnimationFrame(step);
                """, seconds * 1000);
        Map<String, Double> after = metrics();
        double drawn = browser.number("return evenfall.drawn()") - drawnBefore;
        double[] gaps = new double[stamps.size() - 1];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = stamps.get(i + 1).doubleValue() - stamps.get(i).doubleValue();
        }
        Arrays.sort(gaps);
        double taskMs = 1000 * (after.get("TaskDuration") - before.get("TaskDuration")) / drawn;
        double scriptMs = 1000 * (after.get("ScriptDuration") - before.get("ScriptDuration")) / drawn;
        double styleMs = 1000
                * (after.get("LayoutDuration")
                        + after.get("RecalcStyleDuration")
                        - before.get("LayoutDuration")
                        - before.get("RecalcStyleDuration"))
                / drawn;
        System.out.printf(
                "%s: %.0f frames in %.1f s (%.0f rear views drawn), interval median %.1f ms, p95 %.1f ms; for each view drawn"
                        + " script %.2f ms, style and layout %.2f ms, all of the page's thread %.2f ms%n",
                what,
                (double) gaps.length,
                seconds,
                drawn,
                gaps[gaps.length / 2],
                gaps[(int) (0.95 * gaps.length)],
                scriptMs,
                styleMs,
                taskMs);
        assertThat(drawn).as("views drawn").isGreaterThan(5 * seconds);
        return taskMs;
    }

    @Test
    void theViewFromBehindFitsIntoAFrame() {
        for (String pace : List.of("1", "max")) {
            drive("clean-hour", pace);
            double perFrameMs = frames("72 five-stream outlets, pace " + pace, 4);
            assertThat(perFrameMs).as("ms for a frame, pace " + pace).isLessThan(1000 / 60.0);
        }
    }

    /**
     * What is held after everything that can be forgotten has been.
     *
     * @param drivenS of field, since the start, s
     * @param pageMb JavaScript heap of the page; without the arrays of fixed size that hold what it draws
     * @param nodes of the page
     * @param listeners of the page
     * @param serverMb heap of the server, which is this test's own
     */
    private record Held(double drivenS, double pageMb, double nodes, double listeners, double serverMb) {
        static Held now(double drivenS) {
            browser.cdp("HeapProfiler.collectGarbage", Map.of());
            browser.cdp("HeapProfiler.collectGarbage", Map.of());
            Map<String, Double> page = metrics();
            System.gc();
            Runtime runtime = Runtime.getRuntime();
            Held held = new Held(
                    drivenS,
                    page.get("JSHeapUsedSize") / 1e6,
                    page.get("Nodes"),
                    page.get("JSEventListeners"),
                    (runtime.totalMemory() - runtime.freeMemory()) / 1e6);
            System.out.printf(
                    "memory after %.0f s of field: page %.1f MB, %.0f nodes, %.0f listeners; server %.1f MB%n",
                    drivenS, held.pageMb, held.nodes, held.listeners, held.serverMb);
            return held;
        }
    }

    private static double clockS() {
        return Double.parseDouble(browser.find("#clock").getText().replaceFirst(" s.*", ""));
    }

    @Test
    void memoryStaysFlatOverHoursOfField() throws Exception {
        drive("clean-hour", "max");
        long beganNs = System.nanoTime();
        long looks = 0;
        double earlierS = 0;
        List<Held> held = new ArrayList<>();
        for (double at = 0; at < MEMORY_S; at = (System.nanoTime() - beganNs) / 1e9) {
            Thread.sleep(500);
            if (browser.find("#clock").getText().contains("the end")) {
                earlierS += clockS();
                begin("clean-hour", "max");
            }
            // Once warm, in the middle, at the end.
            if (at > (looks + 0.5) * MEMORY_S / LOOKS) {
                looks++;
                held.add(Held.now(earlierS + clockS()));
            }
        }
        Held first = held.get(0);
        Held last = held.get(held.size() - 1);
        assertThat(held.size()).isGreaterThanOrEqualTo(3);
        assertThat(last.drivenS).as("s of field").isGreaterThan(first.drivenS + 100);
        assertThat(last.pageMb - first.pageMb)
                .as("MB that the page has grown by")
                .isLessThan(5);
        assertThat(last.nodes - first.nodes).as("nodes more").isLessThan(1000);
        assertThat(last.listeners - first.listeners).as("listeners more").isLessThan(100);
        assertThat(last.serverMb - first.serverMb)
                .as("MB that the server has grown by; an hour on two tapes and in the ledger of truth is some 30")
                .isLessThan(45);
    }
}

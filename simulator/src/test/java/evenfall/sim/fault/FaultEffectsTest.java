package evenfall.sim.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.fault.Bench.Arrival;
import evenfall.sim.fault.Bench.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every fault on the bench from 5 to 10 s: it does what it says, in litres or in bytes; before it all is as without it; what it does
 * not touch is, byte for byte, as without it throughout; and when it is over all is as before, at once where nothing flowed otherwise.
 */
class FaultEffectsTest {
    private static final Bench CLEAN = Bench.run();

    /** Speed of sound at 15 °C, m/s: 331.3 √(1 + 15/273.15). */
    private static final double SOUND_MPS = 340.27;

    private static final Set<String> LIQUID = Set.of("truth", "Q", "P");
    private static final Set<String> HUB = Set.of("H", "Q", "P", "S", "W", "T", "I");
    private static final Set<String> GNSS = Set.of("RMC", "VTG", "GGA");
    private static final Set<String> NOTHING = Set.of();

    /** When it is over. */
    private enum After {
        /** All is, byte for byte, as it would have been, from a second after. */
        SAME,
        /** Litres are as they would have been within 1 %, from 4 s after. */
        CLOSE,
        /** Likewise within 10 %: the valve had been turned far and has to come back. */
        SLOW,
        /** A counter or a clock has lost or gained something for good. */
        MOVED
    }

    private interface Check {
        void of(Bench run);
    }

    private record Row(String id, String where, double howMuch, Set<String> touches, After after, Check check) {}

    private static final List<Row> TABLE = List.of(
            row("outlet-blocked", "17", 1, LIQUID, After.CLOSE, run -> {
                assertThat(run.litres(16, 5, 10)).isZero();
                assertThat(run.litres(30, 8, 10) / CLEAN.litres(30, 8, 10)).isBetween(1.005, 1.03);
            }),
            row("outlet-worn", "all", 0.15, LIQUID, After.CLOSE, run -> {
                assertThat(k(run, 16)).isCloseTo(1.15 * k(CLEAN, 16), within(1e-5));
                assertThat(run.at(10).feedPa() / CLEAN.at(10).feedPa()).isCloseTo(1 / 1.15 / 1.15, within(0.02));
            }),
            row("outlet-leaking", "17", 0.5, LIQUID, After.CLOSE, run -> {
                assertThat(run.leaked(16, 5, 10)).isCloseTo(0.5 * run.litres(16, 5, 10), within(1e-9));
                assertThat(run.leaked(16, 0, 5) + run.leaked(16, 10, 15)).isZero();
                assertThat(run.leaked(15, 5, 10)).isZero();
            }),
            row("outlet-lost", "17", 6, LIQUID, After.CLOSE, run -> {
                assertThat(k(run, 16)).isCloseTo(6 * k(CLEAN, 16), within(0.06 * k(CLEAN, 16)));
                assertThat(run.rightOf100).isZero();
            }),
            row("outlet-twisted", "17", 60, NOTHING, After.SAME, run -> {
                assertThat(run.rightOf100).isCloseTo(0.05, within(1e-12));
                assertThat(run.backOf100).isCloseTo(0.0866025, within(1e-6));
                assertThat(run.mounts.anyChanged()).isFalse();
            }),
            row(
                    "strainer-plugged",
                    "",
                    0.9,
                    LIQUID,
                    After.SLOW,
                    run -> assertThat(run.allLitres(8, 10) / CLEAN.allLitres(8, 10))
                            .isLessThan(0.9)),
            // Half of mesh over outlets at 0.8 shut is 2: a fifth of the pressure is left.
            row(
                    "section-strainer-plugged",
                    "2",
                    0.8,
                    LIQUID,
                    After.CLOSE,
                    run -> assertThat(run.at(9).outlet14Pa() / run.at(9).feedPa())
                            .isCloseTo(0.2, within(0.01))),
            row("section-stays-shut", "1", 1, LIQUID, After.CLOSE, run -> {
                assertThat(run.litres(5, 8, 10)).isLessThan(1e-9);
                assertThat(run.litres(12, 8, 10) / CLEAN.litres(12, 8, 10)).isCloseTo(1.2, within(0.02));
            }),
            row("section-stays-open", "6", 1, LIQUID, After.CLOSE, run -> {
                assertThat(CLEAN.litres(70, 7.2, 7.5)).isLessThan(0.1 * run.litres(70, 7.2, 7.5));
                assertThat(run.litres(70, 7.2, 7.5)).isGreaterThan(0.7 * run.litres(50, 7.2, 7.5));
            }),
            row("line-leaking", "", 10, LIQUID, After.CLOSE, run -> {
                double wanted = run.truths.stream()
                        .filter(t -> t.timeUs() > 5_000_000 && t.timeUs() <= 10_000_000)
                        .mapToDouble(t -> 10e-3 / 60 * Math.sqrt(t.feedPa() / 200_000) * 0.02)
                        .sum();
                assertThat(run.lineLeakM3).isCloseTo(wanted, within(0.002 * wanted));
                assertThat(run.plumbing.lineLeakM3()).as("it is mended").isEqualTo(run.lineLeakM3);
            }),
            row("air-in-line", "", 0.3, LIQUID, After.CLOSE, run -> {
                double perL = run.pulses("Q", 5, 10) / run.allLitres(5, 10);
                assertThat(perL).isBetween(150 * 1.08, 150 / 0.7);
                assertThat(CLEAN.pulses("Q", 5, 10) / CLEAN.allLitres(5, 10)).isCloseTo(150, within(4.0));
            }),
            row(
                    "pump-weak",
                    "",
                    0.5,
                    LIQUID,
                    After.SLOW,
                    run -> assertThat(run.at(10).feedPa()).isLessThan(0.25 * 600_000)),
            row("valve-hunting", "", 0.25, LIQUID, After.CLOSE, run -> {
                double most = 0;
                double least = 9;
                for (int i = 300; i <= 500; i++) {
                    double ratio =
                            run.truths.get(i).flowM3ps() / CLEAN.truths.get(i).flowM3ps();
                    most = Math.max(most, ratio);
                    least = Math.min(least, ratio);
                }
                assertThat(most).isBetween(1.06, 1.3);
                assertThat(least).isBetween(0.7, 0.94);
            }),
            row("valve-stuck", "", 1, LIQUID, After.CLOSE, run -> {
                // The valve stays where it is from 5 s on; at 6 s the speed is down by a tenth, and flow should be too.
                assertThat(run.at(6.2).flowM3ps()).isCloseTo(run.at(5.0).flowM3ps(), within(3e-5));
                assertThat(CLEAN.at(6.2).flowM3ps() / CLEAN.at(5.0).flowM3ps()).isLessThan(0.97);
            }),
            row(
                    "controller-meter-wrong",
                    "",
                    0.15,
                    LIQUID,
                    After.CLOSE,
                    run -> assertThat(run.allLitres(8.5, 10) / CLEAN.allLitres(8.5, 10))
                            .isCloseTo(1 / 1.15, within(0.02))),
            row(
                    "controller-speed-wrong",
                    "",
                    -0.2,
                    LIQUID,
                    After.CLOSE,
                    run -> assertThat(run.allLitres(8.5, 10) / CLEAN.allLitres(8.5, 10))
                            .isCloseTo(0.8, within(0.02))),
            row(
                    "meter-factor-wrong",
                    "",
                    0.15,
                    Set.of("Q"),
                    After.MOVED,
                    run -> assertThat(run.pulses("Q", 5.2, 9.9) / CLEAN.pulses("Q", 5.2, 9.9))
                            .isCloseTo(1.15, within(0.003))),
            row("meter-stuck", "", 1, Set.of("Q"), After.MOVED, run -> {
                assertThat(run.pulses("Q", 5.02, 10)).isZero();
                assertThat(run.pulses("Q", 11, 15)).isCloseTo(CLEAN.pulses("Q", 11, 15), within(2.0));
            }),
            row(
                    "meter-hum",
                    "",
                    60,
                    Set.of("Q"),
                    After.MOVED,
                    run -> assertThat(run.pulses("Q", 5.02, 9.95) - CLEAN.pulses("Q", 5.02, 9.95))
                            .isCloseTo(60 * 4.9, within(15.0))),
            row("height-foam", "left-mid", 1, Set.of("H"), After.SAME, run -> {
                assertThat(heights(run, 1)).containsOnly(Math.round(2e6 * 0.11 / SOUND_MPS));
                assertThat(heights(run, 2)).isEqualTo(heights(CLEAN, 2));
            }),
            row("height-deaf", "left-mid", 1, Set.of("H"), After.SAME, run -> {
                assertThat(heights(run, 1)).containsOnly(-1L);
                assertThat(heights(run, 0)).isEqualTo(heights(CLEAN, 0));
            }),
            row("height-stuck", "right-tip", 1, Set.of("H"), After.SAME, run -> {
                assertThat(new TreeSet<>(heights(run, 4))).hasSize(1);
                assertThat(new TreeSet<>(heights(CLEAN, 4))).hasSizeGreaterThan(50);
            }),
            row(
                    "height-loose",
                    "centre",
                    0.15,
                    Set.of("H"),
                    After.SAME,
                    run -> assertThat(rootMeanSquare(heights(run, 2), heights(CLEAN, 2)) * SOUND_MPS / 2e6)
                            .isCloseTo(0.15, within(0.03))),
            row("height-double-echo", "centre", 0.5, Set.of("H"), After.SAME, run -> {
                List<Long> found = heights(run, 2);
                List<Long> clean = heights(CLEAN, 2);
                int doubled = 0;
                for (int i = 0; i < found.size(); i++) {
                    assertThat(found.get(i)).isIn(clean.get(i), 2 * clean.get(i));
                    doubled += found.get(i).equals(clean.get(i)) ? 0 : 1;
                }
                assertThat(doubled / 100.0).isCloseTo(0.5, within(0.15));
            }),
            row(
                    "height-canopy",
                    "centre",
                    0.2,
                    Set.of("H"),
                    After.SAME,
                    run -> assertThat(last(heights(run, 2)) - last(heights(CLEAN, 2)))
                            .isCloseTo(Math.round(-2e6 * 0.2 / SOUND_MPS), within(2L))),
            row(
                    "height-mounted-wrong",
                    "centre",
                    0.15,
                    Set.of("H"),
                    After.SAME,
                    run -> assertThat(last(heights(run, 2)) - last(heights(CLEAN, 2)))
                            .isCloseTo(Math.round(2e6 * 0.15 / SOUND_MPS), within(2L))),
            // At 9 m to the right of the centre it sees what right-mid sees; noise and averaging are its own.
            row(
                    "height-misplaced",
                    "centre",
                    9,
                    Set.of("H"),
                    After.SAME,
                    run -> assertThat((double) last(heights(run, 2))).isCloseTo(last(heights(CLEAN, 3)), within(80.0))),
            row("height-pair-swapped", "right-mid", 1, Set.of("H"), After.SAME, run -> {
                for (int i = 0; i < 5; i++) {
                    int other = i == 1 || i == 3 ? 4 - i : i;
                    assertThat(heights(run, i)).isEqualTo(heights(CLEAN, other));
                }
            }),
            row("heights-swapped", "", 1, Set.of("H"), After.SAME, run -> {
                for (int i = 0; i < 5; i++) {
                    assertThat(heights(run, i)).isEqualTo(heights(CLEAN, 4 - i));
                }
            }),
            // 4 to 20 mA for 0 to 1000 kPa: 60 kPa is 960 µA.
            row(
                    "pressure-offset",
                    "",
                    60,
                    Set.of("P"),
                    After.SAME,
                    run -> assertThat(differences(run, "P")).allMatch(d -> Math.abs(d - 960) <= 1)),
            row("pressure-span", "", 0.3, Set.of("P"), After.SAME, run -> {
                List<Arrival> found = run.of("P", 5, 10);
                for (int i = 0; i < found.size(); i++) {
                    double clean = CLEAN.of("P", 5, 10).get(i).number(2) - 4000.0;
                    assertThat((found.get(i).number(2) - 4000.0) / clean).isCloseTo(1.3, within(0.01));
                }
            }),
            row(
                    "pressure-loop-broken",
                    "",
                    1,
                    Set.of("P"),
                    After.SAME,
                    run -> assertThat(run.of("P", 5, 10)).allMatch(a -> a.number(2) == 0)),
            row(
                    "pressure-plugged",
                    "",
                    1,
                    Set.of("P"),
                    After.SAME,
                    run -> assertThat(new TreeSet<>(run.of("P", 5, 10).stream()
                                    .map(a -> a.number(2))
                                    .toList()))
                            .hasSize(1)),
            row(
                    "air-thermometer-warm",
                    "",
                    15,
                    Set.of("T"),
                    After.SAME,
                    run -> assertThat(differences(run, "T")).containsOnly(1500L)),
            row("switch-dead", "2", 1, Set.of("S"), After.SAME, run -> {
                for (Arrival arrival : run.of("S", 5, 10)) {
                    assertThat(Long.parseLong(arrival.field(2), 16) & 0b10).isZero();
                }
            }),
            row(
                    "wheel-slipping",
                    "",
                    0.15,
                    Set.of("W"),
                    After.MOVED,
                    run -> assertThat(run.pulses("W", 5.2, 9.9) / CLEAN.pulses("W", 5.2, 9.9))
                            .isCloseTo(1.15, within(0.01))),
            row("hub-brown-out", "", 1, HUB, After.MOVED, run -> {
                for (String kind : HUB) {
                    assertThat(run.of(kind, 5, 10)).as(kind).isEmpty();
                }
                Arrival first = run.of("I", 10, 15).get(0);
                assertThat(first.number(1)).isCloseTo(5_000, within(10L));
                assertThat(first.number(2)).isEqualTo(2);
                Arrival flow = run.of("Q", 10, 15).get(0);
                assertThat(flow.number(2)).as("counted from 0").isLessThan(10);
                assertThat(run.of("H", 11, 15)).hasSize(CLEAN.of("H", 11, 15).size());
            }),
            row("hub-hung", "", 1, HUB, After.SAME, run -> {
                for (String kind : HUB) {
                    assertThat(run.of(kind, 5, 10)).as(kind).isEmpty();
                }
            }),
            row(
                    "port-unplugged",
                    "gnss",
                    1,
                    GNSS,
                    After.SAME,
                    run -> assertThat(run.of("RMC", 5.07, 10.06)).isEmpty()),
            row("cable-noise", "gnss", 0.02, withBroken(GNSS), After.SAME, run -> {
                List<Arrival> found = during(run);
                List<Arrival> clean = during(CLEAN);
                assertThat(found).hasSameSizeAs(clean);
                int bytes = 0;
                int wrong = 0;
                for (int i = 0; i < found.size(); i++) {
                    assertThat(found.get(i).timeUs()).isEqualTo(clean.get(i).timeUs());
                    assertThat(found.get(i).text()).hasSameSizeAs(clean.get(i).text());
                    for (int c = 0; c < found.get(i).text().length(); c++) {
                        int turned = found.get(i).text().charAt(c)
                                ^ clean.get(i).text().charAt(c);
                        assertThat(Integer.bitCount(turned)).isLessThanOrEqualTo(1);
                        bytes += clean.get(i).text().startsWith("$GN") ? 1 : 0;
                        wrong += turned == 0 ? 0 : 1;
                    }
                }
                assertThat((double) wrong / bytes).isCloseTo(0.02, within(0.006));
            }),
            row("sentences-dropped", "hub", 0.3, HUB, After.SAME, run -> {
                assertThat((double) run.of("H", 5, 10).size()).isCloseTo(70, within(15.0));
                assertThat(CLEAN.arrivals).containsAll(run.arrivals);
            }),
            row("gnss-trees", "", 0.8, GNSS, After.SAME, run -> {
                assertThat((double) run.of("RMC", 5, 10).size()).isCloseTo(10, within(8.0));
                assertThat(CLEAN.arrivals).containsAll(run.arrivals);
            }),
            row("gnss-fix-lost", "", 1, GNSS, After.SAME, run -> {
                assertThat(run.of("RMC", 5.06, 10.05))
                        .hasSize(50)
                        .allMatch(a -> a.text().matches("\\$GNRMC,[0-9.]+,V,,,,,,,060531,,,N\\*..\r\n"));
            }),
            row("gnss-jumpy", "", 0.6, GNSS, After.SAME, run -> {
                List<Arrival> found = run.of("RMC", 5.07, 10.06);
                List<Arrival> clean = CLEAN.of("RMC", 5.07, 10.06);
                double sum = 0;
                for (int i = 0; i < found.size(); i++) {
                    double difference = Double.parseDouble(found.get(i).field(7))
                            - Double.parseDouble(clean.get(i).field(7));
                    sum += difference * difference;
                }
                // 0.6 m/s is 1.166 knots.
                assertThat(Math.sqrt(sum / found.size())).isCloseTo(1.166, within(0.35));
            }),
            row("gnss-late", "", 0.5, GNSS, After.SAME, run -> {
                List<Arrival> found = run.of("RMC", 5.5, 10.06);
                List<Arrival> clean = CLEAN.of("RMC", 5.0 + 0.05, 9.56);
                for (int i = 0; i < found.size(); i++) {
                    assertThat(found.get(i).text()).isEqualTo(clean.get(i).text());
                    assertThat(found.get(i).timeUs() - clean.get(i).timeUs()).isEqualTo(500_000);
                }
            }),
            machine("wing-stuck", "right", 1, "wing right", 1),
            machine("height-control-dead", "", 1, "dead", 1),
            machine("height-control-slow", "", 0.7, "slow", 0.7),
            machine("boom-set-wrong", "", 0.25, "set", 0.25),
            machine("tyre-soft", "rear-left", 0.08, "tyre 2", 0.08));

    private static Row row(String id, String where, double howMuch, Set<String> touches, After after, Check check) {
        return new Row(id, where, howMuch, touches, after, check);
    }

    private static Row machine(String id, String where, double howMuch, String key, double expected) {
        return row(id, where, howMuch, NOTHING, After.SAME, run -> {
            assertThat(run.machine).containsOnlyKeys(key).containsEntry(key, 0.0);
            Bench standing = Bench.run(scripted(id, where, howMuch, 5, OptionalDouble.empty()));
            assertThat(standing.machine).containsEntry(key, expected);
        });
    }

    private static ScriptedFault scripted(String id, String where, double howMuch, double atS, OptionalDouble forS) {
        Fault fault = Faults.find(id).orElseThrow();
        List<Integer> places = fault.place() == PlaceKind.NOWHERE
                ? List.of(0)
                : Bench.PLACES.find(fault.place(), where).orElseThrow();
        return new ScriptedFault(fault, atS, forS, where, places, howMuch);
    }

    @TestFactory
    List<DynamicTest> everyFaultDoesWhatItSaysAndNothingElse() {
        return TABLE.stream()
                .map(row -> DynamicTest.dynamicTest(row.id(), () -> check(row)))
                .toList();
    }

    private static void check(Row row) {
        Bench run = Bench.run(scripted(row.id(), row.where(), row.howMuch(), 5, OptionalDouble.of(5)));
        row.check().of(run);
        assertThat(before(run)).as("before").isEqualTo(before(CLEAN));
        for (String kind : List.of("truth", "H", "Q", "P", "S", "W", "T", "I", "RMC", "VTG", "GGA")) {
            if (!row.touches().contains(kind)) {
                assertThat(all(run, kind, 0)).as(kind).isEqualTo(all(CLEAN, kind, 0));
            } else if (row.after() == After.SAME) {
                assertThat(all(run, kind, 11)).as(kind + " after").isEqualTo(all(CLEAN, kind, 11));
            }
        }
        if (!row.touches().isEmpty()) {
            assertThat(run.arrivals).as("it is felt").isNotEqualTo(CLEAN.arrivals);
        }
        if (row.after() == After.CLOSE || row.after() == After.SLOW) {
            double tolerance = row.after() == After.CLOSE ? 0.01 : 0.1;
            for (int i = 0; i < 72; i++) {
                assertThat(run.litres(i, 14, 15) / CLEAN.litres(i, 14, 15)).isCloseTo(1, within(tolerance));
            }
        }
    }

    /** Up to 5 s nothing, not even the last bit, is otherwise. */
    private static List<String> before(Bench run) {
        List<String> lines = new ArrayList<>();
        for (Arrival arrival : run.arrivals) {
            if (arrival.timeUs() < 5_000_000) {
                lines.add(arrival.timeUs() + arrival.text());
            }
        }
        for (Truth truth : run.truths) {
            if (truth.timeUs() <= 5_000_000) {
                lines.add(line(truth));
            }
        }
        return lines;
    }

    private static List<String> all(Bench run, String kind, double fromS) {
        if (kind.equals("truth")) {
            return run.truths.stream()
                    .filter(t -> t.timeUs() > fromS * 1e6)
                    .map(FaultEffectsTest::line)
                    .toList();
        }
        return run.of(kind, fromS, 99).stream().map(a -> a.timeUs() + a.text()).toList();
    }

    private static String line(Truth truth) {
        StringBuilder line = new StringBuilder().append(truth.timeUs());
        for (double litres : truth.litres()) {
            line.append(' ').append(Double.doubleToLongBits(litres));
        }
        return line.append(' ').append(Double.doubleToLongBits(truth.feedPa())).toString();
    }

    /** K of an outlet at 9 s, as litres in 20 ms over the root of the boom's pressure, times 1000. */
    private static double k(Bench run, int outlet) {
        return 1000 * run.at(9).litres()[outlet] / Math.sqrt(run.at(9).feedPa());
    }

    /** Echo times of one sensor while the fault is there; −1 where it heard none. */
    private static List<Long> heights(Bench run, int sensor) {
        return run.of("H", 5, 10).stream()
                .map(a -> a.field(2 + sensor).isEmpty() ? -1L : a.number(2 + sensor))
                .toList();
    }

    private static long last(List<Long> values) {
        return values.get(values.size() - 1);
    }

    private static double rootMeanSquare(List<Long> a, List<Long> b) {
        double sum = 0;
        for (int i = 0; i < a.size(); i++) {
            sum += (double) (a.get(i) - b.get(i)) * (a.get(i) - b.get(i));
        }
        return Math.sqrt(sum / a.size());
    }

    private static List<Long> differences(Bench run, String kind) {
        List<Arrival> found = run.of(kind, 5, 10);
        List<Arrival> clean = CLEAN.of(kind, 5, 10);
        List<Long> differences = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            differences.add(found.get(i).number(2) - clean.get(i).number(2));
        }
        return differences;
    }

    private static List<Arrival> during(Bench run) {
        return run.arrivals.stream()
                .filter(a -> a.timeUs() >= 5_000_000 && a.timeUs() < 10_000_000)
                .toList();
    }

    private static Set<String> withBroken(Set<String> kinds) {
        Set<String> all = new TreeSet<>(kinds);
        all.add("?");
        return all;
    }

    @Test
    void theTableHoldsEveryFault() {
        assertThat(TABLE.stream().map(Row::id))
                .containsExactlyInAnyOrderElementsOf(
                        Faults.all().stream().map(Fault::id).toList());
    }

    @Test
    void addingAFaultLeavesTheChanceOfAnotherAlone() {
        ScriptedFault loose = scripted("height-loose", "centre", 0.15, 5, OptionalDouble.of(5));
        ScriptedFault trees = scripted("gnss-trees", "", 0.5, 3, OptionalDouble.of(9));
        Bench one = Bench.run(loose);
        Bench two = Bench.run(trees, loose);
        assertThat(all(two, "H", 0)).isEqualTo(all(one, "H", 0));
        assertThat(all(two, "RMC", 0)).isEqualTo(all(Bench.run(trees), "RMC", 0));
    }

    @Test
    void aFaultMayFollowItselfWithoutAGap() {
        Bench run = Bench.run(
                scripted("outlet-blocked", "17", 1, 7, OptionalDouble.of(3)),
                scripted("outlet-blocked", "17", 1, 5, OptionalDouble.of(2)));
        assertThat(run.litres(16, 5, 10)).isZero();
        assertThat(run.litres(16, 10, 11)).isPositive();
    }

    @Test
    void aFaultFromTheStartIsThereFromTheFirstByte() {
        Bench run = Bench.run(scripted("outlet-blocked", "17-20", 1, 0, OptionalDouble.empty()));
        for (int i = 16; i < 20; i++) {
            assertThat(run.litres(i, 0, 15)).isZero();
        }
        assertThat(run.litres(20, 0, 15)).isPositive();
    }
}

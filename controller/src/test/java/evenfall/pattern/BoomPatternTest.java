package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.rig.BoomLayout;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BoomPatternTest {
    private static final double SG = 1.28;
    private final BoomLayout boom = new BoomLayout(
            72,
            0.508,
            0.1905,
            0.5,
            6,
            List.of(new BoomLayout.Section("1", 0, 36), new BoomLayout.Section("2", 36, 36)));
    private final double[] heightM = new double[72];
    private final boolean[] known = new boolean[72];
    private final boolean[] open = new boolean[72];

    BoomPatternTest() {
        Arrays.fill(known, true);
        Arrays.fill(open, true);
    }

    private BoomPattern pattern(String id) {
        OutletType type = OutletCatalogue.builtIn(id).fitted(0.508);
        BoomPattern pattern = new BoomPattern(boom, type, 0.5, SG);
        pattern.compute(heightM, known, open, type.speedFactor(200_000, SG));
        return pattern;
    }

    @ParameterizedTest
    @ValueSource(strings = {"three-stream", "five-stream", "six-stream", "seven-stream", "streamer-bar"})
    void aLevelBoomIsTheDesksPattern(String id) {
        OutletType type = OutletCatalogue.builtIn(id).fitted(0.508);
        for (double height : new double[] {0.05, 0.25, 0.5, 0.75}) {
            Arrays.fill(heightM, height);
            StaticPattern desk =
                    StaticPattern.of(type, new StaticPattern.Layout(72, 0.508, 0.1905, 0.5), height, 200_000, SG);
            double interiorM = desk.rows().get(desk.rows().size() - 1).atM() + 0.001;

            RowMeasures field = pattern(id).rowMeasures(-interiorM, interiorM);

            assertThat(field.rowCv()).isCloseTo(desk.rowMeasures().rowCv(), within(1e-9));
            assertThat(field.leastRow()).isCloseTo(desk.rowMeasures().leastRow(), within(1e-9));
        }
    }

    /** By drawing errors that outlets share over 8 m each, which is what neighbours do: the mean of the CV over them. */
    @ParameterizedTest
    @ValueSource(strings = {"three-stream", "five-stream", "seven-stream", "streamer-bar"})
    void throughUnsureHeightsTheRowCvIsWhatDrawingThemGives(String id) {
        OutletType type = OutletCatalogue.builtIn(id).fitted(0.508);
        double factor = type.speedFactor(200_000, SG);
        double sdM = 0.012;
        Random random = new Random(3);
        for (double height : new double[] {0.43, 0.5, 0.57}) {
            BoomPattern pattern = pattern(id);
            double mean = 0;
            int draws = 4000;
            for (int n = 0; n < draws; n++) {
                for (int outlet = 0; outlet < 72; outlet += 16) {
                    Arrays.fill(heightM, outlet, Math.min(72, outlet + 16), height + sdM * random.nextGaussian());
                }
                pattern.compute(heightM, known, open, factor);
                double cv = pattern.rowMeasures(-18, 18).rowCv();
                mean += cv / draws;
            }
            double[] sds = new double[72];
            Arrays.fill(sds, sdM);
            Arrays.fill(heightM, height);
            pattern.compute(heightM, new double[72], sds, known, open, factor, Double.NaN);

            double said = pattern.rowMeasures(-18, 18).rowCv();

            // Where one stretch meets the next the drawn heights jump, which real ones do not: 0.05 points.
            assertThat(said).isCloseTo(mean, within(Math.min(0.003, 0.05 * mean + 0.0005)));
        }
    }

    @Test
    void rowsAtTheEndsAreFedByTheMirroredNeighbour() {
        Arrays.fill(heightM, 0.5);
        BoomPattern pattern = pattern("five-stream");

        // Without the mirror image the outermost rows would get about half, and the whole boom's CV would be well above
        // 10 %.
        assertThat(pattern.rowMeasures(-20, 20).rowCv()).isLessThan(0.05);
    }

    @Test
    void ownLinesAndMirrorImagesMakeUpTheRowsAndNothingIsLost() {
        long seed = 21;
        Random random = new Random(seed);
        for (int round = 0; round < 50; round++) {
            for (int i = 0; i < 72; i++) {
                heightM[i] = random.nextDouble();
                known[i] = random.nextInt(8) > 0;
                open[i] = random.nextInt(8) > 0;
            }
            BoomPattern pattern = pattern("seven-stream");
            Fall fall = new BoomFall(pattern).compute(heightM, new double[72], known);
            double own = fall.beyond();
            int fallen = 0;
            for (int j = 0; j < fall.own().count(); j++) {
                own += fall.own().amount(j);
                int there = pattern.rows().firstAtOrRightOf(fall.own().rightM(j));
                if (Math.abs(fall.own().rightM(j)) < 18.288) {
                    assertThat(fall.own().amount(j) + fall.mirrored().amount(j))
                            .as("seed %d, round %d, row %d", seed, round, j)
                            .isCloseTo(pattern.rows().amount(there), within(1e-12));
                }
            }
            for (int i = 0; i < 72; i++) {
                fallen += open[i] && known[i] ? 1 : 0;
                assertThat(fall.fell(i)).isEqualTo(open[i] && known[i]);
            }
            assertThat(fall.fallen()).isEqualTo(fallen);
            assertThat(own).as("seed %d, round %d", seed, round).isCloseTo(fallen, within(1e-10));
        }
    }

    /** From heights 0.1 m apart, in air: against a pattern of the other heights; a millimetre beside the place is a two-hundredth of a line on a row. */
    @ParameterizedTest
    @ValueSource(strings = {"three-stream", "seven-stream", "streamer-bar"})
    void whatFallsFromHeightsNearbyLiesWhereItWouldFromThere(String id) {
        long seed = 23;
        Random random = new Random(seed);
        OutletType type = OutletCatalogue.builtIn(id).fitted(0.508);
        double factor = type.speedFactor(200_000, SG);
        double[] higherM = new double[72];
        double[] thereM = new double[72];
        BoomPattern here = new BoomPattern(boom, type, 0.5, SG);
        BoomPattern there = new BoomPattern(boom, type, 0.5, SG);
        for (int round = 0; round < 20; round++) {
            double tilt = 0.2 * random.nextDouble() - 0.1;
            for (int i = 0; i < 72; i++) {
                heightM[i] = 0.4 + 0.3 * random.nextDouble();
                higherM[i] = tilt * (i - 36) / 36;
                thereM[i] = heightM[i] + higherM[i];
            }
            here.compute(heightM, new double[72], known, open, factor, 5);
            there.compute(thereM, new double[72], known, open, factor, 5);
            Fall said = new BoomFall(here).compute(thereM, higherM, known);
            Fall wanted = new BoomFall(there).compute(thereM, new double[72], known);
            double most = 0;
            for (int j = 0; j < said.own().count(); j++) {
                most = Math.max(
                        most, Math.abs(said.own().amount(j) - wanted.own().amount(j)));
            }
            assertThat(most).as("seed %d, round %d", seed, round).isLessThan(0.01);
            assertThat(said.meanHeightM()).isEqualTo(wanted.meanHeightM());
        }
    }

    @Test
    void aTiltedBoomSeenFromBehindInAMirrorGivesTheMirrorImage() {
        long seed = 8;
        Random random = new Random(seed);
        for (int i = 0; i < 72; i++) {
            heightM[i] = 0.2 + 0.01 * i + 0.02 * random.nextDouble();
        }
        BoomPattern one = pattern("five-stream");
        RowMeasures left = one.rowMeasures(-20, -6);
        LineMeasures leftLines = one.lineMeasures(-20, -6);
        for (int i = 0; i < 36; i++) {
            double swap = heightM[i];
            heightM[i] = heightM[71 - i];
            heightM[71 - i] = swap;
        }
        BoomPattern mirrored = pattern("five-stream");

        assertThat(mirrored.rowMeasures(6, 20).rowCv()).as("seed %d", seed).isCloseTo(left.rowCv(), within(1e-9));
        assertThat(mirrored.lineMeasures(6, 20).widestGapM()).isCloseTo(leftLines.widestGapM(), within(1e-9));
        assertThat(mirrored.lineMeasures(6, 20).doubledShare()).isCloseTo(leftLines.doubledShare(), within(1e-9));
    }

    @Test
    void aSectionThatIsOffTakesItsRowsOutOfTheMeasures() {
        Arrays.fill(heightM, 0.5);
        Arrays.fill(open, 0, 36, false);
        BoomPattern pattern = pattern("five-stream");

        assertThat(pattern.rowMeasures(-20, -1)).isNull();
        assertThat(pattern.rowMeasures(-20, 20).rowCv()).isLessThan(0.05);
    }

    @Test
    void anUnknownHeightTakesOnlyTheRowsItCouldReach() {
        Arrays.fill(heightM, 0.5);
        heightM[20] = 99;
        known[20] = false;
        BoomPattern pattern = pattern("five-stream");

        assertThat(pattern.rowMeasures(-20, 20).rowCv()).isLessThan(0.05);
    }

    @Test
    void lowerOutletsReachLessFarAndOnlyThoseOfTheStretchThatFallCount() {
        Arrays.fill(heightM, 0.5);
        double atTargetM = pattern("three-stream").reachM(-20, 20);
        // Two of three streams to the thirds of the spacing, one straight down.
        assertThat(atTargetM).isCloseTo(2.0 / 3 * 0.5 / 3, within(0.004));
        Arrays.fill(heightM, 0, 36, 0.3);
        known[50] = false;
        BoomPattern half = pattern("three-stream");
        assertThat(half.reachM(-20, 0)).isLessThan(0.9 * atTargetM);
        assertThat(half.reachM(0, 20)).isCloseTo(atTargetM, within(1e-9));
        Arrays.fill(known, false);
        assertThat(pattern("three-stream").reachM(-20, 20)).isZero();
    }

    @Test
    void theLinesTellLowFromHigh() {
        Arrays.fill(heightM, 0.5);
        LineMeasures wanted = pattern("three-stream").lineMeasures(-20, 20);
        Arrays.fill(heightM, 0.3);
        LineMeasures low = pattern("three-stream").lineMeasures(-20, 20);
        Arrays.fill(heightM, 0.75);
        LineMeasures high = pattern("three-stream").lineMeasures(-20, 20);

        assertThat(wanted.doubledShare())
                .as("three streams land at thirds of the spacing")
                .isLessThan(0.05);
        assertThat(low.doubledShare()).isLessThan(0.05);
        assertThat(low.widestGapM()).isGreaterThan(1.3 * wanted.widestGapM());
        assertThat(high.doubledShare()).as("at one and a half times the height").isGreaterThan(0.6);
    }

    @Test
    void theWindowOfATypeIsWhereItsRowsHold() {
        OutletType three = OutletCatalogue.builtIn("three-stream").fitted(0.508);
        HeightWindow window = HeightWindow.around(three, 0.508, 0.1905, 200_000, SG, 0.5, 0.15);

        assertThat(PhysicsTableTest.meanCvPercent("three-stream", window.lowM()))
                .isLessThan(16);
        assertThat(PhysicsTableTest.meanCvPercent("three-stream", window.lowM() - 0.02))
                .isGreaterThan(14);
        assertThat(PhysicsTableTest.meanCvPercent("three-stream", window.highM()))
                .isLessThan(16);
        assertThat(PhysicsTableTest.meanCvPercent("three-stream", window.highM() + 0.02))
                .isGreaterThan(14);
    }

    @Test
    void widerWindowsInTheOrderThatPracticeKnows() {
        // Three-stream least, then five and six, seven to the rear, bar most (common practice, no source).
        double before = 0;
        for (String id : List.of("three-stream", "five-stream", "seven-stream", "streamer-bar")) {
            OutletType type = OutletCatalogue.builtIn(id).fitted(0.508);
            HeightWindow window = HeightWindow.around(type, 0.508, 0.1905, 200_000, SG, 0.5, 0.15);
            assertThat(window.highM() - window.lowM()).as(id).isGreaterThan(before);
            before = window.highM() - window.lowM();
        }
        OutletType bar = OutletCatalogue.builtIn("streamer-bar").fitted(0.508);
        assertThat(HeightWindow.around(bar, 0.508, 0.1905, 200_000, SG, 0.5, 0.15)
                        .isOpen())
                .isTrue();
        assertThat(HeightWindow.around(bar, 0.508, 0.1905, 200_000, SG, 0.5, 0.05))
                .isNull();
    }
}

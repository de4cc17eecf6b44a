package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StaticPatternTest {
    private static final StaticPattern.Layout LAYOUT = new StaticPattern.Layout(72, 0.508, 0.1905, 0.5);

    @Test
    void rowsKeepTheMassOfWhatFalls() {
        long seed = 11;
        Random random = new Random(seed);
        for (int run = 0; run < 200; run++) {
            Rows rows = new Rows(0.05 + random.nextDouble(), random.nextDouble(), 20);
            double fallen = 0;
            for (int i = 0; i < 500; i++) {
                double quantity = random.nextDouble();
                fallen += quantity;
                rows.add(40 * random.nextDouble() - 20, quantity);
            }
            double onRows = 0;
            for (int j = 0; j < rows.count(); j++) {
                onRows += rows.amount(j);
            }
            assertThat(onRows).as("seed %d run %d", seed, run).isCloseTo(fallen, within(1e-9));
            assertThat(onRows + rows.beyond()).isCloseTo(fallen, within(1e-9));
        }
    }

    @Test
    void aLineHalfwayBetweenRowsFeedsBothAlike() {
        Rows rows = new Rows(0.2, 0.5, 1);
        rows.add(0.0, 1);

        assertThat(rows.amount(rows.firstAtOrRightOf(-0.1))).isCloseTo(0.5, within(1e-12));
        assertThat(rows.amount(rows.firstAtOrRightOf(0.1))).isCloseTo(0.5, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.05, 0.3, 0.5, 0.9, 1.5})
    void aBarsRowsDoNotDependOnHeight(double heightM) {
        OutletType bar = OutletCatalogue.builtIn("streamer-bar").fitted(0.508);
        RowMeasures low = StaticPattern.of(bar, LAYOUT, 0.5, 200_000, 1.28).rowMeasures();

        assertThat(StaticPattern.of(bar, LAYOUT, heightM, 200_000, 1.28).rowMeasures())
                .isEqualTo(low);
    }

    @Test
    void theMirrorImageOfAnOutletGivesTheMirrorImageOfTheRows() {
        long seed = 77;
        Random random = new Random(seed);
        for (int run = 0; run < 50; run++) {
            List<Stream> streams = new ArrayList<>();
            List<Stream> mirrored = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                double offset = random.nextDouble() - 0.5;
                double splay = random.nextDouble() - 0.5;
                double tilt = 2 * random.nextDouble();
                streams.add(new Stream(0.25, offset, splay, tilt, 4));
                mirrored.add(new Stream(0.25, -offset, -splay, tilt, 4));
            }
            double phase = random.nextDouble();
            double heightM = random.nextDouble();
            StaticPattern one = StaticPattern.of(type(streams), layout(phase), heightM, 200_000, 1.28);
            // Rows at (j + phase) w become rows at -(j + phase) w, which are rows of phase 1 - phase.
            StaticPattern other = StaticPattern.of(type(mirrored), layout(1 - phase), heightM, 200_000, 1.28);
            assertThat(other.rows()).hasSameSizeAs(one.rows());
            for (int j = 0; j < one.rows().size(); j++) {
                StaticPattern.Row left = one.rows().get(j);
                StaticPattern.Row right = other.rows().get(one.rows().size() - 1 - j);
                assertThat(right.atM()).as("seed %d run %d", seed, run).isCloseTo(-left.atM(), within(1e-9));
                assertThat(right.share()).as("seed %d run %d", seed, run).isCloseTo(left.share(), within(1e-9));
            }
        }
    }

    @Test
    void belowTheGroundEveryStreamLandsAtItsOwnHole() {
        OutletType five = OutletCatalogue.builtIn("five-stream").fitted(0.508);

        for (StaticPattern.Line line :
                StaticPattern.of(five, LAYOUT, -0.1, 200_000, 1.28).lines()) {
            assertThat(line.rightM()).isZero();
            assertThat(line.backM()).isZero();
        }
    }

    @Test
    void designIntentsAreMetAtTheDesignPoint() {
        // Three-stream: thirds of the spacing. Seven-stream: 0.86 of it.
        OutletType three = OutletCatalogue.builtIn("three-stream").fitted(0.508);
        OutletType seven = OutletCatalogue.builtIn("seven-stream").fitted(0.75);

        var threeLines = StaticPattern.of(three, LAYOUT, 0.5, 200_000, 1.28).lines();
        var sevenLines = StaticPattern.of(seven, LAYOUT, 0.5, 200_000, 1.28).lines();

        assertThat(threeLines.get(0).rightM()).isCloseTo(-0.508 / 3, within(1e-6));
        assertThat(threeLines.get(2).rightM()).isCloseTo(0.508 / 3, within(1e-6));
        assertThat(sevenLines.get(6).rightM()).isCloseTo(0.86 * 0.75, within(1e-6));
        assertThat(sevenLines.get(3).backM()).isPositive();
    }

    @Test
    void tooFewRowsGiveNoMeasures() {
        OutletType three = OutletCatalogue.builtIn("three-stream").fitted(0.508);
        StaticPattern tiny =
                StaticPattern.of(three, new StaticPattern.Layout(1, 0.508, 0.1905, 0.5), 0.5, 200_000, 1.28);

        assertThat(tiny.rowMeasures()).isNull();
        assertThat(tiny.lineMeasures()).isNull();
    }

    private static StaticPattern.Layout layout(double phase) {
        return new StaticPattern.Layout(40, 0.508, 0.1905, phase);
    }

    private static OutletType type(List<Stream> streams) {
        return new OutletType("probe", "Probe", 200_000, 4e-5, 1e5, 4e5, streams);
    }
}

package evenfall.bench.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ShareScaleTest {
    private static double distance(double[] one, double[] other) {
        double squares = 0;
        for (int i = 0; i < 3; i++) {
            squares += (one[i] - other[i]) * (one[i] - other[i]);
        }
        return Math.sqrt(squares);
    }

    /** sRGB primaries in CIELAB with D65, as tables and converters print them (from memory: red 53.24, 80.09, 67.20). */
    @Test
    void primariesLieWhereTheStandardPutsThem() {
        assertThat(ShareScale.lab(0xff0000)).containsExactly(new double[] {53.24, 80.09, 67.20}, within(0.02));
        assertThat(ShareScale.lab(0x00ff00)).containsExactly(new double[] {87.73, -86.18, 83.18}, within(0.02));
        assertThat(ShareScale.lab(0x0000ff)).containsExactly(new double[] {32.30, 79.19, -107.86}, within(0.02));
        assertThat(ShareScale.lab(0xffffff)).containsExactly(new double[] {100, 0, 0}, within(0.02));
        assertThat(ShareScale.lab(0x000000)).containsExactly(new double[] {0, 0, 0}, within(0.02));
    }

    /** A step of a tenth of the share is the same step to the eye wherever it is taken, to the rounding of eight bits. */
    @Test
    void equalStepsLookEqualOnEachSide() {
        for (int side = 0; side < 2; side++) {
            double whole = distance(ShareScale.lab(ShareScale.rgb(2 * side)), ShareScale.lab(ShareScale.rgb(1)));
            for (int i = 0; i < 10; i++) {
                double step = distance(
                        ShareScale.lab(ShareScale.rgb(side + i / 10.0)),
                        ShareScale.lab(ShareScale.rgb(side + (i + 1) / 10.0)));
                assertThat(step).isCloseTo(whole / 10, within(1.5));
            }
        }
    }

    @Test
    void darkensToBothSidesAndBothEndsAreEquallyDark() {
        for (int percent = 0; percent < 100; percent += 2) {
            assertThat(light(percent / 100.0)).isLessThan(light((percent + 2) / 100.0));
            assertThat(light(2 - percent / 100.0)).isLessThan(light(2 - (percent + 2) / 100.0));
        }
        assertThat(light(0)).isCloseTo(light(2), within(8.0));
        assertThat(ShareScale.rgb(7)).isEqualTo(ShareScale.rgb(2));
    }

    private static double light(double share) {
        return ShareScale.lab(ShareScale.rgb(share))[0];
    }

    /**
     * Half the mean and one and a half times it stay far apart for those who lack the red or the green cones: simulated by the
     * matrices of Machado, Oliveira and Fernandes (2009), severity 1, on linear light (from memory; rows sum to 1). A distance of 20
     * is seen at a glance; 2.3 is just noticeable (Mahy, 1994, from memory).
     */
    @Test
    void littleAndMuchDifferForTheColourBlind() {
        double[][] noRed = {
            {0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}
        };
        double[][] noGreen = {
            {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
        };
        for (double[][] matrix : new double[][][] {noRed, noGreen}) {
            double[] little = ShareScale.lab(seen(ShareScale.rgb(0.5), matrix));
            double[] much = ShareScale.lab(seen(ShareScale.rgb(1.5), matrix));
            assertThat(distance(little, much)).isGreaterThan(20);
        }
    }

    private static int seen(int rgb, double[][] matrix) {
        double[] light = new double[3];
        for (int i = 0; i < 3; i++) {
            double share = (rgb >> 16 - 8 * i & 255) / 255.0;
            light[i] = share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
        }
        int out = 0;
        for (double[] row : matrix) {
            double value = Math.max(0, Math.min(1, row[0] * light[0] + row[1] * light[1] + row[2] * light[2]));
            double share = value <= 0.0031308 ? 12.92 * value : 1.055 * Math.pow(value, 1 / 2.4) - 0.055;
            out = out << 8 | (int) Math.round(255 * share);
        }
        return out;
    }
}

package evenfall.bench.compare;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ShareColourTest {
    /** Relative luminance by the weights of ITU-R BT.709, without the curve: enough to compare. */
    private static double light(double share) {
        int rgb = ShareColour.rgb(share);
        return 0.2126 * (rgb >> 16 & 255) + 0.7152 * (rgb >> 8 & 255) + 0.0722 * (rgb & 255);
    }

    @Test
    void darkensEvenlyToBothSidesOfTheMean() {
        for (int percent = 0; percent < 100; percent++) {
            assertThat(light(percent / 100.0)).isLessThan(light((percent + 1) / 100.0));
            assertThat(light(2 - percent / 100.0)).isLessThan(light(2 - (percent + 1) / 100.0));
        }
    }

    @Test
    void lessIsWarmAndMoreIsCool() {
        assertThat(ShareColour.rgb(0.2) >> 16 & 255).isGreaterThan(ShareColour.rgb(0.2) & 255);
        assertThat(ShareColour.rgb(1.8) >> 16 & 255).isLessThan(ShareColour.rgb(1.8) & 255);
        assertThat(ShareColour.rgb(7)).isEqualTo(ShareColour.rgb(2));
    }
}

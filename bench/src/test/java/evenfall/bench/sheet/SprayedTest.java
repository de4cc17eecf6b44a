package evenfall.bench.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.score.GroundMap;
import org.junit.jupiter.api.Test;

class SprayedTest {
    /** Four cells of two rows; in the second nothing fell, so over all the sprayed ones look 4/3 fed. By hand. */
    @Test
    void whereNothingFellDoesNotMakeTheRestLookOverfed() {
        float fed = (float) (4 / 3.0);
        GroundMap map = GroundMap.kept(new double[] {0, 2, 4, 6}, new double[] {-0.1, 0.1}, new float[] {
            fed, fed, 0, 0, fed, fed, 0.5f * fed, 1.5f * fed
        });
        Sprayed sprayed = new Sprayed(map);
        assertThat(sprayed.isSprayed(0)).isTrue();
        assertThat(sprayed.isSprayed(1)).isFalse();
        assertThat(sprayed.share(0, 1)).isCloseTo(1, within(1e-6));
        assertThat(sprayed.share(1, 0)).isZero();
        assertThat(sprayed.share(3, 0)).isCloseTo(0.5, within(1e-6));
        assertThat(sprayed.share(3, 1)).isCloseTo(1.5, within(1e-6));
    }
}

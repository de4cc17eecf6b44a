package evenfall.sim.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChanceTest {

    @Test
    void xoshiro256PlusPlusGivesThePublishedNumbers() {
        // Source: reference test of the crate rand_xoshiro, "produced with the reference implementation
        // xoshiro.di.unimi.it/xoshiro256plusplus.c", state words 1, 2, 3, 4.
        String[] expected = {
            "41943041",
            "58720359",
            "3588806011781223",
            "3591011842654386",
            "9228616714210784205",
            "9973669472204895162",
            "14011001112246962877",
            "12406186145184390807",
            "15849039046786891736",
            "10450023813501588000"
        };
        Chance chance = new Chance(1, 2, 3, 4);
        for (String number : expected) {
            assertThat(chance.nextLong()).isEqualTo(Long.parseUnsignedLong(number));
        }
    }

    @Test
    void splitMix64GivesThePublishedNumbers() {
        // Source: Rosetta Code, "Pseudo-random numbers/Splitmix64", seed 1234567.
        String[] expected = {
            "6457827717110365317",
            "3203168211198807973",
            "9817491932198370423",
            "4593380528125082431",
            "16408922859458223821"
        };
        long state = 1234567;
        for (String number : expected) {
            state += 0x9e3779b97f4a7c15L;
            assertThat(Chance.mix(state)).isEqualTo(Long.parseUnsignedLong(number));
        }
    }

    @Test
    void fnv1aGivesThePublishedHashes() {
        // Source: test vectors of IETF draft-eastlake-fnv.
        assertThat(Chance.fnv1a64("")).isEqualTo(0xcbf29ce484222325L);
        assertThat(Chance.fnv1a64("a")).isEqualTo(0xaf63dc4c8601ec8cL);
        assertThat(Chance.fnv1a64("foobar")).isEqualTo(0x85944171f73967e8L);
    }

    @Test
    void theSameSeedAndNameGiveTheSameNumbers() {
        Chance one = Chance.stream(42, "height/left");
        Chance other = Chance.stream(42, "height/left");
        for (int i = 0; i < 1000; i++) {
            assertThat(one.nextLong()).isEqualTo(other.nextLong());
        }
    }

    @Test
    void aStreamIsAsItWasTheDayScenariosWereRecorded() {
        // Not an outside value: it fails when a change of ours would change every recorded scenario.
        Chance chance = Chance.stream(1, "ground");
        // The two numbers were computed by a second implementation, in Python.
        assertThat(new long[] {chance.nextLong(), chance.nextLong()})
                .containsExactly(0x2a6a224cca2628edL, 0xa55e19780a8bca05L);
    }

    @Test
    void streamsOfNeighbouringSeedsAndNamesAreUncorrelated() {
        Chance[] streams = {
            Chance.stream(1, "a"),
            Chance.stream(2, "a"),
            Chance.stream(1, "b"),
            Chance.stream(2, "b"),
            Chance.stream(0, ""),
            Chance.stream(-1, "a")
        };
        int n = 20_000;
        double[][] drawn = new double[streams.length][n];
        for (int s = 0; s < streams.length; s++) {
            for (int i = 0; i < n; i++) {
                drawn[s][i] = streams[s].nextGaussian();
            }
        }
        // The sample correlation of independent streams has standard deviation 1/√n = 0.007.
        for (int a = 0; a < streams.length; a++) {
            for (int b = 0; b < a; b++) {
                for (int lag = 0; lag <= 4; lag++) {
                    double sum = 0;
                    for (int i = 0; i < n - lag; i++) {
                        sum += drawn[a][i + lag] * drawn[b][i];
                    }
                    assertThat(sum / n)
                            .as("streams %d and %d at lag %d", a, b, lag)
                            .isBetween(-0.032, 0.032);
                }
            }
        }
    }

    @Test
    void uniformNumbersFillTheUnitIntervalEvenly() {
        Chance chance = Chance.stream(7, "uniform");
        int n = 200_000;
        int[] bins = new int[20];
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double u = chance.nextDouble();
            assertThat(u).isGreaterThanOrEqualTo(0.0).isLessThan(1.0);
            bins[(int) (u * bins.length)]++;
            sum += u;
        }
        assertThat(sum / n).isCloseTo(0.5, within(4 * Math.sqrt(1.0 / 12 / n)));
        assertThat(chiSquare(bins, n))
                .as("chi-square with 19 degrees of freedom")
                .isBetween(5.0, 44.0);
    }

    @Test
    void gaussianNumbersHaveTheMomentsOfTheNormalDistribution() {
        Chance chance = Chance.stream(7, "gauss");
        int n = 400_000;
        double sum = 0;
        double square = 0;
        double cube = 0;
        double fourth = 0;
        int beyondTwo = 0;
        for (int i = 0; i < n; i++) {
            double g = chance.nextGaussian();
            sum += g;
            square += g * g;
            cube += g * g * g;
            fourth += g * g * g * g;
            if (Math.abs(g) > 2) {
                beyondTwo++;
            }
        }
        // Four standard errors: variances of g, g², g³, g⁴ are 1, 2, 15, 96.
        assertThat(sum / n).isCloseTo(0, within(4 * Math.sqrt(1.0 / n)));
        assertThat(square / n).isCloseTo(1, within(4 * Math.sqrt(2.0 / n)));
        assertThat(cube / n).isCloseTo(0, within(4 * Math.sqrt(15.0 / n)));
        assertThat(fourth / n).isCloseTo(3, within(4 * Math.sqrt(96.0 / n)));
        // Two-sided tail beyond 2, 0.0455 (standard normal table).
        assertThat(beyondTwo / (double) n).isCloseTo(0.0455, within(0.0014));
    }

    @Test
    void wholeNumbersAreEvenAndWithinTheirBound() {
        Chance chance = Chance.stream(7, "int");
        int n = 140_000;
        int[] bins = new int[7];
        for (int i = 0; i < n; i++) {
            bins[chance.nextInt(7)]++;
        }
        assertThat(chiSquare(bins, n))
                .as("chi-square with 6 degrees of freedom")
                .isBetween(0.3, 22.5);
        for (int i = 0; i < 1000; i++) {
            assertThat(chance.nextInt(1)).isZero();
            assertThat(chance.nextInt(Integer.MAX_VALUE)).isBetween(0, Integer.MAX_VALUE - 1);
        }
        assertThatThrownBy(() -> chance.nextInt(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("bound 0 is not allowed, at least 1 is");
    }

    private static double chiSquare(int[] bins, int n) {
        double expected = n / (double) bins.length;
        double sum = 0;
        for (int bin : bins) {
            sum += (bin - expected) * (bin - expected) / expected;
        }
        return sum;
    }
}

package evenfall.sim.chance;

import java.nio.charset.StandardCharsets;

/**
 * A stream of random numbers that is the same on every machine for the same seed and name.
 *
 * <p>The generator is xoshiro256++ 1.0 (D. Blackman and S. Vigna, "Scrambled linear pseudorandom number
 * generators", ACM TOMS 47(4), 2021; public-domain code at prng.di.unimi.it), its four words of state
 * filled by SplitMix64 (G. Steele, D. Lea and C. Flood, "Fast splittable pseudorandom number
 * generators", OOPSLA 2014) as its authors advise. It is written out here so that no change of a
 * library or of the JDK can change a scenario.
 *
 * <p>Not safe for use by two threads; a stream has one owner.
 */
public final class Chance {

    private static final long FNV_OFFSET_BASIS = 0xcbf29ce484222325L;
    private static final long FNV_PRIME = 0x100000001b3L;
    private static final long GOLDEN_GAMMA = 0x9e3779b97f4a7c15L;

    private long s0;
    private long s1;
    private long s2;
    private long s3;

    /** State words as given, not all zero. */
    Chance(long s0, long s1, long s2, long s3) {
        this.s0 = s0;
        this.s1 = s1;
        this.s2 = s2;
        this.s3 = s3;
    }

    /**
     * The stream of this name in the scenario of this seed. Each sensor, fault and ground takes its own
     * name, so that adding one leaves the numbers of all the others as they were.
     *
     * @param scenarioSeed any value
     * @param name any text, compared by its UTF-8 bytes
     */
    public static Chance stream(long scenarioSeed, String name) {
        // The seed is mixed before the name is laid over it: seeds 1, 2, 3 and names that differ by one
        // letter must not meet.
        long start = mix(scenarioSeed + GOLDEN_GAMMA) ^ fnv1a64(name);
        long[] words = new long[4];
        for (int i = 0; i < words.length; i++) {
            start += GOLDEN_GAMMA;
            words[i] = mix(start);
        }
        return new Chance(words[0], words[1], words[2], words[3]);
    }

    /** The next 64 bits, all equally likely. */
    public long nextLong() {
        long result = Long.rotateLeft(s0 + s3, 23) + s0;
        long t = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = Long.rotateLeft(s3, 45);
        return result;
    }

    /** The next number of [0, 1), a multiple of 2⁻⁵³. */
    public double nextDouble() {
        return (nextLong() >>> 11) * 0x1.0p-53;
    }

    /**
     * The next number of the normal distribution with mean 0 and standard deviation 1, by Marsaglia's
     * polar method (G. Marsaglia and T. Bray, SIAM Review 6(3), 1964). The second number that the method
     * yields is thrown away: a number kept for later would let one call change the next.
     */
    public double nextGaussian() {
        while (true) {
            double u = 2.0 * nextDouble() - 1.0;
            double v = 2.0 * nextDouble() - 1.0;
            double s = u * u + v * v;
            if (s > 0.0 && s < 1.0) {
                return u * Math.sqrt(-2.0 * StrictMath.log(s) / s);
            }
        }
    }

    /**
     * The next whole number of 0 … bound − 1, all equally likely (D. Lemire, "Fast random integer
     * generation in an interval", ACM TOMACS 29(1), 2019).
     *
     * @param bound at least 1
     * @throws IllegalArgumentException when bound is below 1
     */
    public int nextInt(int bound) {
        if (bound < 1) {
            throw new IllegalArgumentException("bound " + bound + " is not allowed, at least 1 is");
        }
        long product = (nextLong() >>> 32) * bound;
        long low = product & 0xffffffffL;
        if (low < bound) {
            long unfair = (0x100000000L - bound) % bound;
            while (low < unfair) {
                product = (nextLong() >>> 32) * bound;
                low = product & 0xffffffffL;
            }
        }
        return (int) (product >>> 32);
    }

    /**
     * FNV-1a, 64 bits, of the text's UTF-8 bytes (G. Fowler, L. Noll, K. Vo and others, IETF
     * draft-eastlake-fnv).
     */
    static long fnv1a64(String text) {
        long hash = FNV_OFFSET_BASIS;
        for (byte b : text.getBytes(StandardCharsets.UTF_8)) {
            hash ^= b & 0xff;
            hash *= FNV_PRIME;
        }
        return hash;
    }

    /** The output function of SplitMix64. */
    static long mix(long state) {
        long z = (state ^ (state >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}

package evenfall.sense;

/**
 * What is made of the sensors' heights at each outlet, or at any other places along a boom. Whoever asks owns one and has it filled again at
 * each moment.
 *
 * @param heightM height over the ground, m; 0 where it is not known
 * @param variance its variance, m²; where it is not known that is why
 * @param known whether it is
 * @param rateMps how fast it changes or, by the boom's motion, how fast the boom itself rises there, m/s; means nothing where the height is not known
 * @param rateVariance its variance, (m/s)²
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
public record OutletHeights(
        double[] heightM, double[] variance, boolean[] known, double[] rateMps, double[] rateVariance) {

    /** Of so many places, of which nothing is known yet. */
    public static OutletHeights of(int places) {
        return new OutletHeights(
                new double[places], new double[places], new boolean[places], new double[places], new double[places]);
    }
}

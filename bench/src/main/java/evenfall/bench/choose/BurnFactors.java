package evenfall.bench.choose;

import org.jspecify.annotations.Nullable;

/**
 * What product and weather do to leaves, beside the geometry: the same for every outlet type, so they move no rank. That they raise
 * burn is reported; the size of each factor is a choice of ours.
 *
 * @param product 1 for plain UAN; more with thiosulphate, 0 for water
 * @param productWhy in words
 * @param weather 1 in the cool; null where the temperature is not given
 * @param weatherWhy in words
 */
public record BurnFactors(
        double product, String productWhy, @Nullable Double weather, String weatherWhy) {
    /**
     * UAN with sulphur as 20-0-0-4, about 15 % thiosulphate, burned wheat at growth stage 32 significantly more than UAN alone
     * (trials 1999 to 2002 in Virginia, abstract of "Foliar burn and wheat grain yield responses following topdress-applied
     * nitrogen and sulfur fertilizers"). By how much it does not say; half as much again is our choice.
     */
    private static final double SHARE_OF_ONE_HALF_MORE = 0.15;

    /** Above it adviser's caution begins: "cool 50s to 60s °F" keep a thin film (NDSU Crop and Pest Report no. 10, 2005). */
    private static final double COOL_TO_C = 16;

    /** "About 75 °F" with wind: high risk at any rate (Oklahoma State University small grains, 2021-03-08). */
    private static final double HOT_FROM_C = 24;

    static BurnFactors of(Job job) {
        boolean salt = job.product().nitrogenKgpM3() > 0;
        double product = salt ? 1 + 0.5 * job.thiosulphateShare() / SHARE_OF_ONE_HALF_MORE : 0;
        String productWhy = !salt
                ? "no fertiliser in it"
                : job.thiosulphateShare() > 0 ? "thiosulphate raises it" : "UAN without thiosulphate";
        Double airC = job.airC();
        if (airC == null) {
            return new BurnFactors(product, productWhy, null, "the air's temperature is not given");
        }
        if (airC <= COOL_TO_C) {
            return new BurnFactors(product, productWhy, 1.0, "cool");
        }
        return airC < HOT_FROM_C
                ? new BurnFactors(product, productWhy, 1.5, "mild to warm")
                : new BurnFactors(product, productWhy, 2.0, "hot: better not by day");
    }
}

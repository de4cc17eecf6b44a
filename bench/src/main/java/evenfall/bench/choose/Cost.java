package evenfall.bench.choose;

import org.jspecify.annotations.Nullable;

/**
 * What a choice costs to buy, or why that is not known.
 *
 * @param amount in {@code currency}; null where not known
 * @param currency as the price file says; null where not known
 * @param note what the price file says of its prices, such as that they are invented; null where it says nothing
 * @param why why it is not known; null where it is
 */
public record Cost(
        @Nullable Double amount,
        @Nullable String currency,
        @Nullable String note,
        @Nullable String why) {
    static Cost unknown(String why) {
        return new Cost(null, null, null, why);
    }
}

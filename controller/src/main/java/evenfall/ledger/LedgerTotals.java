package evenfall.ledger;

import evenfall.sense.Unknown;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Sums over a stretch of work. Every litre of the meter is somewhere: {@code metered = on rows + beside + not placed}.
 *
 * @param meteredM3 through the meter while its flow was known, m³
 * @param onRowsM3 on the rows under the boom's own width, m³
 * @param besideM3 on or beyond the rows beside it, the edge account, m³
 * @param nitrogenKg in what fell on rows and beside, kg
 * @param wayM driven with sections on, as far as speed was known, m
 * @param treatedM2 that way times the width that was on, m²
 * @param knownM2 ground of which it is known what it got, m²; the totals since the start count ground once that was driven twice
 * @param belowM2 of it, under 80 % of the target rate, m²
 * @param aboveM2 of it, over 120 %, m²
 * @param unknownM2 ground of which it is not known, m²
 * @param lookedM of the way, as much as fixes were good enough for to look for earlier passes, m
 * @param overlapM2 ground on that way that an earlier pass had treated already, m²
 * @param missedM2 ground left out between two passes on that way, m²; part of the known ground
 * @param notPlaced what could not be put on rows, by its reason
 * @param leaf mean leaf contact; null where it is known nowhere
 */
public record LedgerTotals(
        double meteredM3,
        double onRowsM3,
        double besideM3,
        double nitrogenKg,
        double wayM,
        double treatedM2,
        double knownM2,
        double belowM2,
        double aboveM2,
        double unknownM2,
        double lookedM,
        double overlapM2,
        double missedM2,
        List<NotPlaced> notPlaced,
        @Nullable LeafContact leaf) {

    public LedgerTotals {
        notPlaced = List.copyOf(notPlaced);
    }

    /**
     * Time, way, ground and liquid that no row stands for.
     *
     * @param reason why
     * @param seconds s
     * @param wayM m; nothing where the speed is what is missing
     * @param groundM2 m², likewise
     * @param volumeM3 m³, as far as the flow was known
     */
    public record NotPlaced(Unknown reason, double seconds, double wayM, double groundM2, double volumeM3) {}

    /** Share of the known ground that got less than 80 % of the target; empty where none is known. */
    public OptionalDouble below80Share() {
        return share(belowM2, knownM2);
    }

    /** Share of the known ground that got more than 120 %; empty where none is known. */
    public OptionalDouble above120Share() {
        return share(aboveM2, knownM2);
    }

    /** Share of all ground of which it is not known what it got; empty where there is none. */
    public OptionalDouble unknownShare() {
        return share(unknownM2, knownM2 + unknownM2);
    }

    /** All that is not placed, m³. */
    public double notPlacedM3() {
        double sum = 0;
        for (NotPlaced part : notPlaced) {
            sum += part.volumeM3();
        }
        return sum;
    }

    private static OptionalDouble share(double part, double whole) {
        // Ground that is judged anew is taken back by the new cell's measure, which may differ by a row from the old
        // one's.
        return whole > 0 ? OptionalDouble.of(Math.max(0, Math.min(1, part / whole))) : OptionalDouble.empty();
    }
}

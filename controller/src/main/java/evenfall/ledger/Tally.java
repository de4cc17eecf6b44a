package evenfall.ledger;

import evenfall.rig.Rig;
import evenfall.sense.Unknown;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Running sums of {@link LedgerTotals}. */
final class Tally {
    double meteredM3;
    double onRowsM3;
    double besideM3;
    double wayM;
    double treatedM2;
    double lookedM;
    double overlapM2;
    double missedM2;
    private double knownM2;
    private double belowM2;
    private double aboveM2;
    private double unknownM2;
    private double wettedM2;
    private double wettedOverM;
    private final Map<Unknown, Gap> gaps = new EnumMap<>(Unknown.class);

    private static final class Gap {
        private double seconds;
        private double wayM;
        private double groundM2;
        private double volumeM3;
    }

    void clear() {
        meteredM3 = 0;
        onRowsM3 = 0;
        besideM3 = 0;
        wayM = 0;
        treatedM2 = 0;
        lookedM = 0;
        overlapM2 = 0;
        missedM2 = 0;
        knownM2 = 0;
        belowM2 = 0;
        aboveM2 = 0;
        unknownM2 = 0;
        wettedM2 = 0;
        wettedOverM = 0;
        gaps.clear();
    }

    /** Time, way and liquid of a moment that no row stands for. */
    void notPlaced(Unknown reason, double s, double m, double m3) {
        Gap gap = gap(reason);
        gap.seconds += s;
        gap.wayM += m;
        gap.volumeM3 += m3;
    }

    /** Ground that a reason leaves without an answer. */
    void notKnown(Unknown reason, double m2) {
        gap(reason).groundM2 += m2;
    }

    private Gap gap(Unknown reason) {
        return gaps.computeIfAbsent(reason, r -> new Gap());
    }

    void add(GroundState state, double m2) {
        switch (state) {
            case NONE -> {}
            case NOT_KNOWN -> addGround(0, 0, 0, m2);
            case BELOW -> addGround(m2, m2, 0, 0);
            case ABOVE -> addGround(m2, 0, m2, 0);
            case WITHIN -> addGround(m2, 0, 0, 0);
        }
    }

    /** Ground by what it got: known, of that below and above, and not known. */
    void addGround(double known, double below, double above, double unknown) {
        knownM2 += known;
        belowM2 += below;
        aboveM2 += above;
        unknownM2 += unknown;
    }

    void wetted(double share, double overM) {
        wettedM2 += share * overM;
        wettedOverM += overM;
    }

    @Nullable
    LeafContact leaf(double referenceShare, Rig.Ledger factors) {
        if (!(wettedOverM > 0)) {
            return null;
        }
        double share = wettedM2 / wettedOverM;
        return new LeafContact(share, share / referenceShare, factors.productFactor(), factors.weatherFactor());
    }

    LedgerTotals totals(double nitrogenKgpM3, @Nullable LeafContact leaf) {
        List<LedgerTotals.NotPlaced> parts = new ArrayList<>();
        gaps.forEach((reason, gap) -> {
            if (gap.seconds > 0 || gap.groundM2 > 0 || gap.volumeM3 > 0) {
                parts.add(new LedgerTotals.NotPlaced(reason, gap.seconds, gap.wayM, gap.groundM2, gap.volumeM3));
            }
        });
        return new LedgerTotals(
                meteredM3,
                onRowsM3,
                besideM3,
                (onRowsM3 + besideM3) * nitrogenKgpM3,
                wayM,
                treatedM2,
                knownM2,
                belowM2,
                aboveM2,
                unknownM2,
                lookedM,
                overlapM2,
                missedM2,
                parts,
                leaf);
    }
}

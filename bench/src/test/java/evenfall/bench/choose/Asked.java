package evenfall.bench.choose;

import evenfall.liquid.Liquid;
import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletDesign;
import evenfall.quantity.TradeUnits;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Jobs for tests, all invented. */
final class Asked {
    static final double SPACING_M = 0.508;
    static final Wander SD_10_CM = new Wander(Wander.Kind.STANDARD_DEVIATION, 0.1);

    private Asked() {}

    static Span lpha(double low, double high) {
        return new Span(low * TradeUnits.LPHA_M, high * TradeUnits.LPHA_M);
    }

    static Span galpac(double low, double high) {
        return new Span(low * TradeUnits.GPA_M, high * TradeUnits.GPA_M);
    }

    static Span kmh(double low, double high) {
        return new Span(low * TradeUnits.KMPH_MPS, high * TradeUnits.KMPH_MPS);
    }

    static Span mph(double low, double high) {
        return new Span(low * TradeUnits.MPH_MPS, high * TradeUnits.MPH_MPS);
    }

    static Span kPa(double low, double high) {
        return new Span(low * 1000, high * 1000);
    }

    static Job job(Span ratesM, Span speedsMps, @Nullable Span pressuresPa) {
        return job(ratesM, speedsMps, pressuresPa, SPACING_M, Liquids.UAN_28, SD_10_CM);
    }

    static Job job(
            Span ratesM, Span speedsMps, @Nullable Span pressuresPa, double spacingM, Liquid product, Wander wander) {
        return new Job(72, spacingM, 0.1905, ratesM, speedsMps, product, 0, pressuresPa, 0.5, wander, 0.15, null);
    }

    static Job usual() {
        return job(lpha(150, 250), kmh(8, 14), null);
    }

    static List<OutletDesign> all() {
        return OutletCatalogue.ids().stream().map(OutletCatalogue::builtIn).toList();
    }

    static Candidate candidate(Job job, String outlet) {
        return Candidate.of(job, OutletCatalogue.builtIn(outlet), Prices.none());
    }
}

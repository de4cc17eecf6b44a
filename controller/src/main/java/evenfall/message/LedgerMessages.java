package evenfall.message;

import evenfall.ledger.GroundState;
import evenfall.ledger.LeafContact;
import evenfall.ledger.LedgerCell;
import evenfall.ledger.LedgerTotals;
import evenfall.ledger.PassSummary;
import evenfall.quantity.TradeUnits;
import evenfall.rig.Rig;
import evenfall.sense.Unknown;
import java.io.IOException;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** The payloads of the row ledger, each with a JSON Schema in the controller's {@code docs}. */
public final class LedgerMessages {
    private static final String NO_GROUND = "no ground of which it is known what it got";
    private static final String NO_FACTOR = "not given in the rig file; counts as 1";
    private static final String NEVER_LOOKED = "no fix was good enough to lay passes beside one another";
    private static final String NO_LEAF = "nothing fell, or heights or pressure are not known";

    /** A share beyond this is written as this: some ten times of what anybody wants. */
    private static final double MOST_SHARE = 99.999;

    private final Rig rig;

    public LedgerMessages(Rig rig) {
        this.rig = rig;
    }

    /** {@code ledger.schema.json}: one finished distance cell. */
    public byte[] cell(LedgerCell cell) {
        LedgerCell.Span span = cell.span();
        return JsonText.document(json -> {
            json.seconds("at_s", span.finishedUs());
            json.count("pass", span.pass());
            json.count("cell", span.cell());
            json.number("from_m", span.fromM(), 2);
            json.number("length_m", span.lengthM(), 3);
            json.object("ages", ages -> ages(ages, cell.ages()));
            json.object("place", place -> place(place, cell));
            json.object("beside", beside -> beside(beside, cell.beside()));
            json.number("target_Lpha", rig.target().rateM() / TradeUnits.LPHA_M, 1);
            json.number("first_row_right_m", cell.rowRightM(0), 4);
            json.number("row_m", rig.boom().rowM(), 4);
            json.list("rows_on", list -> rowsOn(list, cell));
            json.list("row_share_permille", list -> {
                for (int row = 0; row < cell.rows(); row++) {
                    boolean known = cell.state(row) != GroundState.NOT_KNOWN;
                    list.element(known ? Math.round(1000 * Math.min(MOST_SHARE, cell.share(row))) : null);
                }
            });
            if (cell.rowsUnknown() != null) {
                json.text("rows_why", cell.rowsUnknown().words());
            }
            json.object("leaf_contact", leaf -> leaf(leaf, cell.leaf()));
            json.object("total", total -> brief(total, cell.totals()));
        });
    }

    private static void ages(JsonText json, LedgerCell.Ages ages) throws IOException {
        json.age("flow_s", ages.flowUs());
        json.age("speed_s", ages.speedUs());
        json.age("heights_s", ages.heightsUs());
        json.age("place_s", ages.placeUs());
    }

    private static void place(JsonText json, LedgerCell cell) throws IOException {
        LedgerCell.CellPlace place = cell.place();
        json.number("latitude_deg", place == null ? null : place.latitudeDeg(), 6);
        json.number("longitude_deg", place == null ? null : place.longitudeDeg(), 6);
        json.number("course_deg", place == null ? null : place.courseDeg(), 1);
        if (place == null) {
            Unknown why = cell.placeUnknown();
            json.text("why", why == null ? "no reason was given" : why.words());
        }
    }

    private static void beside(JsonText json, LedgerCell.Beside beside) throws IOException {
        boolean known = beside.unknown() == null;
        json.text("left", beside.leftDriven() ? "driven" : "mirrored");
        json.text("right", beside.rightDriven() ? "driven" : "mirrored");
        json.number("overlap_m", known ? beside.overlapM() : null, 2);
        json.number("missed_m", known ? beside.missedM() : null, 2);
        if (beside.unknown() != null) {
            json.text("why", beside.unknown().words());
        }
    }

    /** First and last row of each run of rows whose section was on. */
    private static void rowsOn(JsonText json, LedgerCell cell) throws IOException {
        int from = -1;
        for (int row = 0; row <= cell.rows(); row++) {
            boolean on = row < cell.rows() && cell.state(row) != GroundState.NONE;
            if (on && from < 0) {
                from = row;
            } else if (!on && from >= 0) {
                int first = from;
                int last = row - 1;
                json.entry(run -> {
                    run.count("first", first);
                    run.count("last", last);
                });
                from = -1;
            }
        }
    }

    private static void leaf(JsonText json, @Nullable LeafContact leaf) throws IOException {
        json.number("index", leaf == null ? null : leaf.index(), 3);
        json.number("geometry", leaf == null ? null : leaf.relative(), 3);
        json.number("wetted_m_per_m", leaf == null ? null : leaf.wettedShare(), 4);
        factor(json, "product_factor", leaf == null ? OptionalDouble.empty() : leaf.productFactor());
        factor(json, "weather_factor", leaf == null ? OptionalDouble.empty() : leaf.weatherFactor());
        if (leaf == null) {
            json.text("why", NO_LEAF);
        } else if (leaf.productFactor().isEmpty() || leaf.weatherFactor().isEmpty()) {
            json.text("why", NO_FACTOR);
        }
        json.text("caveat", LeafContact.CAVEAT);
    }

    private static void factor(JsonText json, String key, OptionalDouble value) throws IOException {
        json.number(key, value.isPresent() ? value.getAsDouble() : null, 2);
    }

    private static void brief(JsonText json, LedgerTotals totals) throws IOException {
        json.number("metered_L", totals.meteredM3() / TradeUnits.LITRE_M3, 2);
        json.number("nitrogen_kg", totals.nitrogenKg(), 3);
        json.number("way_m", totals.wayM(), 1);
        json.number("treated_ha", totals.treatedM2() / TradeUnits.HECTARE_M2, 4);
        shares(json, totals);
    }

    private static void shares(JsonText json, LedgerTotals totals) throws IOException {
        number(json, "below_80_share", totals.below80Share());
        number(json, "above_120_share", totals.above120Share());
        number(json, "unknown_share", totals.unknownShare());
        if (totals.below80Share().isEmpty()) {
            json.text("why", NO_GROUND);
        }
    }

    private static void number(JsonText json, String key, OptionalDouble value) throws IOException {
        json.number(key, value.isPresent() ? value.getAsDouble() : null, 4);
    }

    /** {@code pass.schema.json}: a pass that has ended. */
    public byte[] pass(PassSummary pass) {
        return JsonText.document(json -> {
            json.seconds("at_s", pass.endedUs());
            json.count("pass", pass.number());
            json.seconds("began_s", pass.beganUs());
            json.text("ended_because", pass.end().words());
            json.flag("turning", pass.turning());
            json.count("cells", pass.cells());
            json.object("ages", ages -> ages(ages, pass.ages()));
            json.number("target_Lpha", rig.target().rateM() / TradeUnits.LPHA_M, 1);
            json.object("of_pass", sums -> full(sums, pass.pass()));
            json.object("total", sums -> full(sums, pass.totals()));
            json.count("cells_kept", pass.cellsKept());
            json.count("cells_forgotten", pass.cellsForgotten());
        });
    }

    private static void full(JsonText json, LedgerTotals totals) throws IOException {
        json.number("metered_L", totals.meteredM3() / TradeUnits.LITRE_M3, 3);
        json.number("on_rows_L", totals.onRowsM3() / TradeUnits.LITRE_M3, 3);
        json.number("beside_L", totals.besideM3() / TradeUnits.LITRE_M3, 3);
        json.number("not_placed_L", totals.notPlacedM3() / TradeUnits.LITRE_M3, 3);
        json.number("nitrogen_kg", totals.nitrogenKg(), 3);
        json.number("way_m", totals.wayM(), 2);
        json.number("treated_ha", totals.treatedM2() / TradeUnits.HECTARE_M2, 4);
        json.number("known_ha", totals.knownM2() / TradeUnits.HECTARE_M2, 4);
        json.number("unknown_ha", totals.unknownM2() / TradeUnits.HECTARE_M2, 4);
        boolean looked = totals.lookedM() > 0;
        json.number("beside_known_m", totals.lookedM(), 2);
        json.number("overlap_ha", looked ? totals.overlapM2() / TradeUnits.HECTARE_M2 : null, 4);
        json.number("missed_ha", looked ? totals.missedM2() / TradeUnits.HECTARE_M2 : null, 4);
        if (!looked) {
            json.text("beside_why", NEVER_LOOKED);
        }
        shares(json, totals);
        json.list("not_placed", list -> {
            for (LedgerTotals.NotPlaced part : totals.notPlaced()) {
                list.entry(entry -> {
                    entry.text("why", part.reason().words());
                    entry.number("for_s", part.seconds(), 1);
                    entry.number("way_m", part.wayM(), 1);
                    entry.number("ground_ha", part.groundM2() / TradeUnits.HECTARE_M2, 4);
                    entry.number("volume_L", part.volumeM3() / TradeUnits.LITRE_M3, 3);
                });
            }
        });
        json.object("leaf_contact", leaf -> leaf(leaf, totals.leaf()));
    }
}

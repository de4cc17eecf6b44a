package evenfall.message;

import evenfall.ledger.GroundState;
import evenfall.ledger.LeafContact;
import evenfall.ledger.LedgerCell;
import evenfall.ledger.LedgerTotals;
import evenfall.ledger.PassSummary;
import evenfall.quantity.TradeUnits;
import evenfall.rig.Rig;
import evenfall.sense.Unknown;
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

    /** Of the cell that is being written; kept for the next. */
    private int[] permille = {};

    public LedgerMessages(Rig rig) {
        this.rig = rig;
    }

    /** {@code ledger.schema.json}: one finished distance cell. */
    void cell(JsonText json, LedgerCell cell) {
        LedgerCell.Span span = cell.span();
        json.seconds("at_s", span.finishedUs());
        json.count("pass", span.pass());
        json.count("cell", span.cell());
        json.number("from_m", span.fromM(), 2);
        json.number("length_m", span.lengthM(), 3);
        ages(json, cell.ages());
        place(json, cell);
        beside(json, cell.beside());
        json.number("target_Lpha", rig.target().rateM() / TradeUnits.LPHA_M, 1);
        json.number("first_row_right_m", cell.rowRightM(0), 4);
        json.number("row_m", rig.boom().rowM(), 4);
        rowsOn(json, cell);
        rowShares(json, cell);
        if (cell.rowsUnknown() != null) {
            json.text("rows_why", cell.rowsUnknown().words());
        }
        leaf(json, cell.leaf());
        json.beginObject("total");
        brief(json, cell.totals());
        json.endObject();
    }

    private void rowShares(JsonText json, LedgerCell cell) {
        int rows = cell.rows();
        if (permille.length < rows) {
            permille = new int[rows];
        }
        for (int row = 0; row < rows; row++) {
            permille[row] = cell.state(row) == GroundState.NOT_KNOWN
                    ? JsonText.UNKNOWN
                    : (int) (1000 * Math.min(MOST_SHARE, cell.share(row)) + 0.5);
        }
        json.list("row_share_permille", permille, rows);
    }

    private static void ages(JsonText json, LedgerCell.Ages ages) {
        json.beginObject("ages");
        json.age("flow_s", ages.flowUs());
        json.age("speed_s", ages.speedUs());
        json.age("heights_s", ages.heightsUs());
        json.age("place_s", ages.placeUs());
        json.endObject();
    }

    private static void place(JsonText json, LedgerCell cell) {
        json.beginObject("place");
        LedgerCell.CellPlace place = cell.place();
        if (place == null) {
            json.unknown("latitude_deg", "longitude_deg", "course_deg");
            Unknown why = cell.placeUnknown();
            json.text("why", why == null ? "no reason was given" : why.words());
        } else {
            json.number("latitude_deg", place.latitudeDeg(), 6);
            json.number("longitude_deg", place.longitudeDeg(), 6);
            json.number("course_deg", place.courseDeg(), 1);
        }
        json.endObject();
    }

    private static void beside(JsonText json, LedgerCell.Beside beside) {
        boolean known = beside.unknown() == null;
        json.beginObject("beside");
        json.text("left", beside.leftDriven() ? "driven" : "mirrored");
        json.text("right", beside.rightDriven() ? "driven" : "mirrored");
        json.number("overlap_m", known, beside.overlapM(), 2);
        json.number("missed_m", known, beside.missedM(), 2);
        if (beside.unknown() != null) {
            json.text("why", beside.unknown().words());
        }
        json.endObject();
    }

    /** First and last row of each run of rows whose section was on. */
    private static void rowsOn(JsonText json, LedgerCell cell) {
        json.beginList("rows_on");
        int from = -1;
        for (int row = 0; row <= cell.rows(); row++) {
            boolean on = row < cell.rows() && cell.state(row) != GroundState.NONE;
            if (on && from < 0) {
                from = row;
            } else if (!on && from >= 0) {
                json.beginEntry();
                json.count("first", from);
                json.count("last", row - 1);
                json.endObject();
                from = -1;
            }
        }
        json.endList();
    }

    private static void leaf(JsonText json, @Nullable LeafContact leaf) {
        json.beginObject("leaf_contact");
        if (leaf == null) {
            json.unknown("index", "geometry", "wetted_m_per_m", "product_factor", "weather_factor");
            json.text("why", NO_LEAF);
        } else {
            json.number("index", leaf.index(), 3);
            json.number("geometry", leaf.relative(), 3);
            json.number("wetted_m_per_m", leaf.wettedShare(), 4);
            factor(json, "product_factor", leaf.productFactor());
            factor(json, "weather_factor", leaf.weatherFactor());
            if (leaf.productFactor().isEmpty() || leaf.weatherFactor().isEmpty()) {
                json.text("why", NO_FACTOR);
            }
        }
        json.text("caveat", LeafContact.CAVEAT);
        json.endObject();
    }

    private static void factor(JsonText json, String key, OptionalDouble value) {
        json.number(key, value.isPresent(), value.orElse(0), 2);
    }

    private static void brief(JsonText json, LedgerTotals totals) {
        json.number("metered_L", totals.meteredM3() / TradeUnits.LITRE_M3, 2);
        json.number("nitrogen_kg", totals.nitrogenKg(), 3);
        json.number("way_m", totals.wayM(), 1);
        json.number("treated_ha", totals.treatedM2() / TradeUnits.HECTARE_M2, 4);
        shares(json, totals);
    }

    private static void shares(JsonText json, LedgerTotals totals) {
        number(json, "below_80_share", totals.below80Share());
        number(json, "above_120_share", totals.above120Share());
        number(json, "unknown_share", totals.unknownShare());
        if (totals.below80Share().isEmpty()) {
            json.text("why", NO_GROUND);
        }
    }

    private static void number(JsonText json, String key, OptionalDouble value) {
        json.number(key, value.isPresent(), value.orElse(0), 4);
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
            ages(json, pass.ages());
            json.number("target_Lpha", rig.target().rateM() / TradeUnits.LPHA_M, 1);
            json.beginObject("of_pass");
            full(json, pass.pass());
            json.endObject();
            json.beginObject("total");
            full(json, pass.totals());
            json.endObject();
            json.count("cells_kept", pass.cellsKept());
            json.count("cells_forgotten", pass.cellsForgotten());
        });
    }

    private static void full(JsonText json, LedgerTotals totals) {
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
        json.number("overlap_ha", looked, totals.overlapM2() / TradeUnits.HECTARE_M2, 4);
        json.number("missed_ha", looked, totals.missedM2() / TradeUnits.HECTARE_M2, 4);
        if (!looked) {
            json.text("beside_why", NEVER_LOOKED);
        }
        shares(json, totals);
        json.beginList("not_placed");
        for (LedgerTotals.NotPlaced part : totals.notPlaced()) {
            json.beginEntry();
            json.text("why", part.reason().words());
            json.number("for_s", part.seconds(), 1);
            json.number("way_m", part.wayM(), 1);
            json.number("ground_ha", part.groundM2() / TradeUnits.HECTARE_M2, 4);
            json.number("volume_L", part.volumeM3() / TradeUnits.LITRE_M3, 3);
            json.endObject();
        }
        json.endList();
        leaf(json, totals.leaf());
    }
}

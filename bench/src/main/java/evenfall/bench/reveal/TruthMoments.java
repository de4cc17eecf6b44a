package evenfall.bench.reveal;

import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.quantity.TradeUnits;
import evenfall.sim.world.RowFigures;
import evenfall.sim.world.RowLedger;
import evenfall.sim.world.TruthSample;
import evenfall.sim.world.TruthSink;
import evenfall.sim.world.World;
import java.util.Base64;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Turns samples of the truth into JSON, five a second, as they come. */
public final class TruthMoments implements TruthSink {
    /** Stands for a row that nothing is known of, since the machine stands. */
    private static final int NO_SHARE = 255;

    private static final int MOST_SHARE = 250;

    private final double targetRateM;
    private final double rowM;
    private final Taker taker;

    /** Takes what has been written. */
    @FunctionalInterface
    public interface Taker {
        /**
         * @param timeUs µs since the start of the run
         * @param json {@code t} s, {@code x} m, {@code v} m/s, {@code h}, {@code lo}, {@code hi} heights in m, {@code rate} L/ha,
         *     {@code err} %, {@code p} kPa, {@code cv} of the rows, {@code row0} place of the leftmost row in m, {@code rows}: a byte
         *     for each row in base64, percent of the target, 255 where the machine stands
         */
        void take(long timeUs, ObjectNode json);
    }

    /**
     * @param targetRateM rate that rows are held against, as a depth, m
     * @param rowM distance between rows, m
     */
    public TruthMoments(double targetRateM, double rowM, Taker taker) {
        this.targetRateM = targetRateM;
        this.rowM = rowM;
        this.taker = taker;
    }

    @Override
    public void sample(TruthSample sample) {
        ObjectNode json = Json.object();
        json.set("t", Json.number(sample.timeUs() * 1e-6, 2));
        json.set("x", Json.number(sample.xM(), 2));
        json.set("v", Json.number(sample.speedMps(), 3));
        json.set("h", Json.number(sample.boom().meanHeightM(), 3));
        json.set("lo", Json.number(sample.boom().lowestHeightM(), 3));
        json.set("hi", Json.number(sample.boom().highestHeightM(), 3));
        json.set("rate", Json.number(rateLpha(sample), 1));
        json.set(
                "err",
                Json.number(
                        sample.rateError().isPresent()
                                ? 100 * sample.rateError().getAsDouble()
                                : null,
                        1));
        json.set("p", Json.number(sample.pressurePa() / TradeUnits.KPA_PA, 1));
        Optional<RowFigures> rows = sample.boom().rows();
        json.set("cv", Json.number(rows.isPresent() ? rows.get().rowCv() : null, 4));
        json.set("row0", Json.number(sample.rowRightM(0), 4));
        json.put("rows", Base64.getEncoder().encodeToString(shares(sample)));
        taker.take(sample.timeUs(), json);
    }

    private static @Nullable Double rateLpha(TruthSample sample) {
        return sample.speedMps() < World.LEAST_RATE_SPEED_MPS || !(sample.widthOnM() > 0)
                ? null
                : sample.flowM3ps() / (sample.speedMps() * sample.widthOnM()) / TradeUnits.LPHA_M;
    }

    private byte[] shares(TruthSample sample) {
        byte[] shares = new byte[sample.rows()];
        double wantedM3ps = sample.speedMps() * rowM * targetRateM;
        boolean drives = sample.speedMps() >= World.LEAST_RATE_SPEED_MPS;
        for (int row = 0; row < shares.length; row++) {
            long percent = drives ? Math.round(100 * sample.rowAmount(row) / wantedM3ps) : NO_SHARE;
            shares[row] = (byte) (drives ? Math.min(MOST_SHARE, percent) : NO_SHARE);
        }
        return shares;
    }

    @Override
    public void end(RowLedger ledger) {
        // The page has seen it all come.
    }
}

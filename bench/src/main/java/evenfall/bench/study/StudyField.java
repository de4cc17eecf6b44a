package evenfall.bench.study;

import evenfall.config.ConfigException;
import evenfall.liquid.Liquids;
import evenfall.quantity.TradeUnits;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;

/** Writes the scenario of a case: one invented machine, straight on over ground without features. */
final class StudyField {
    private static final String TEXT = read();

    /** Between outlets, as in the text, m. */
    private static final double SPACING_M = 0.5;

    private StudyField() {}

    private static String read() {
        try (InputStream in = StudyField.class.getResourceAsStream("field.yaml")) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file field.yaml");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The metering size is the one that gives the target rate at this speed at the type's rated pressure: a machine that drives
     * faster is fitted with larger ones, so that studies compare streams and not pressures out of their window.
     */
    static Scenario scenario(Case one, Grid grid) throws ConfigException {
        double speedMps = one.speedKmh() * TradeUnits.KMPH_MPS;
        double flowM3ps = grid.rateLpha() * TradeUnits.LPHA_M * speedMps * SPACING_M;
        // With water, which leaves faster at the same pressure by the root of the density.
        double ratedM3ps = flowM3ps * Math.sqrt(Liquids.UAN_28.specificGravity());
        String text = TEXT.replace("@title@", "A study of class " + one.ground())
                .replace("@seconds@", number(grid.seconds()))
                .replace("@roughness@", one.ground())
                .replace("@speed_mps@", number(speedMps))
                .replace("@height_m@", number(one.heightM()))
                .replace("@rate_Lpha@", number(grid.rateLpha()))
                .replace("@rated_flow_Lpm@", number(ratedM3ps / TradeUnits.LPM_M3PS))
                .replace("@outlet@", "five-stream");
        return Scenarios.written("study", text).withOutlet(one.outlet()).withSeed(one.seed());
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value).setScale(6, RoundingMode.HALF_UP).toPlainString();
    }
}

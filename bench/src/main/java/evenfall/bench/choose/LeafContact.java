package evenfall.bench.choose;

import evenfall.outlet.OutletType;
import evenfall.sim.jet.Air;
import evenfall.sim.jet.JetLiquid;
import evenfall.sim.jet.StreamFlight;
import evenfall.sim.jet.Touchdown;

/**
 * How much leaf the streams wet, from geometry alone: the width of the prints of all streams over the width of the boom, at the
 * middle of the range. It grows with the number of streams, with the way they fly broken up, and with their speed and so with
 * pressure.
 *
 * <p>Print of one stream: {@code D · We^¼}, as far as a drop spreads that strikes a surface, {@code We = ρ u² D / σ} with the speed at
 * the ground (Clanet, Béguin, Richard and Quéré, Journal of Fluid Mechanics 517, 2004; from memory); longer across the rows where the
 * stream comes in at a slant. D goes from the jet's diameter to that of its drops by the share of the way flown as drops. That a jet
 * prints as its drops would is a simplification of ours.
 *
 * <p>Relative and nothing more: it puts types beside each other. It predicts neither burn nor yield.
 *
 * @param wettedMpM metres of print on a metre of boom
 * @param pressurePa pressure it is for, Pa
 * @param speedMps speed of travel it is for, m/s
 */
public record LeafContact(double wettedMpM, double pressurePa, double speedMps) {

    /** The caution that stands wherever the figure does. */
    public static final String CAVEAT =
            "Leaf contact compares outlet types by the width their streams wet. It predicts neither leaf"
                    + " burn nor yield; those depend on crop, dew, product, weather and time of day. The product's label and local advice stand above"
                    + " it.";

    /**
     * @param type as fitted
     * @param sizeM3ps metering size: flow with water at the rated pressure, m³/s
     */
    static LeafContact of(Job job, OutletType type, double sizeM3ps, double pressurePa) {
        OutletType sized = type.withRatedFlow(sizeM3ps);
        JetLiquid liquid = JetLiquid.of(job.product());
        double factor = sized.speedFactor(pressurePa, job.specificGravity());
        double speedMps = job.speedsMps().middle();
        double sumM = 0;
        for (int i = 0; i < sized.streams().size(); i++) {
            StreamFlight flight = new StreamFlight(sized, i, liquid, Air.AT_20C);
            sumM += printM(flight, flight.land(job.heightM(), factor, speedMps, 0), liquid);
        }
        return new LeafContact(sumM / job.spacingM(), pressurePa, speedMps);
    }

    private static double printM(StreamFlight flight, Touchdown down, JetLiquid liquid) {
        double brokenShare = 1 - down.jetM() / down.pathM();
        double diameterM = flight.diameterM() + brokenShare * (flight.dropDiameterM() - flight.diameterM());
        double squared =
                down.rightMps() * down.rightMps() + down.backMps() * down.backMps() + down.downMps() * down.downMps();
        double weber = liquid.densityKgpM3() * squared * diameterM / liquid.surfaceTensionNpm();
        double slant = down.rightMps() / down.downMps();
        return diameterM * Math.sqrt(Math.sqrt(weber)) * Math.sqrt(1 + slant * slant);
    }
}

package evenfall.ledger;

import evenfall.liquid.Liquid;
import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.pattern.Flight;

/**
 * Wetted width of an outlet's streams by their geometry: streams × width of a stream, growing with break-up and pressure. It is for
 * comparing heights, pressures and outlets, and made so that it never falls as any of these grows.
 *
 * <ul>
 *   <li>A stream is as thick as its flow and speed make it: {@code d = √(4 q / (π u))} (continuity).
 *   <li>It is whole over {@code L = 8.51 We^0.32 d} of its way, {@code We = ρ u² d / σ} (R. Grant and S. Middleman, AIChE Journal 12,
 *       1966, turbulent jets; from memory), and then falls into drops of {@code 1.89 d} (Lord Rayleigh, 1878; from memory). How far
 *       it has done so goes with the logarithm of way over L and is complete at 4 L: a choice of ours, slow enough that a faster
 *       stream, which breaks up later, still never wets less.
 *   <li>What meets a leaf spreads to {@code D We_D^¼} (C. Clanet, C. Béguin, D. Richard and D. Quéré, Journal of Fluid Mechanics 517,
 *       2004, drops on what does not drink them; from memory).
 * </ul>
 */
final class WettedWidth {
    private static final double LENGTH_FACTOR = 8.51;
    private static final double LENGTH_POWER = 0.32;
    private static final double DROP_RATIO = 1.89;
    private static final double ALL_DROPS_AT_LENGTHS = 4;
    private static final double LN_ALL_DROPS = StrictMath.log(ALL_DROPS_AT_LENGTHS);

    /** Against air, N/m: a little below water's 0.073, for what keeps the product from rusting steel. Our choice; the relative figure hardly depends on it. */
    private static final double TENSION_NPM = 0.069;

    private final OutletType type;
    private final double densityKgpM3;
    private final int[] like;

    /** Filled anew for each outlet that is asked for. */
    private final double[] ofStreamM;

    WettedWidth(OutletType type, Liquid liquid) {
        this.type = type;
        this.densityKgpM3 = liquid.densityKgpM3();
        this.like = new int[type.streams().size()];
        this.ofStreamM = new double[like.length];
        for (int i = 0; i < like.length; i++) {
            like[i] = firstLike(i);
        }
    }

    /**
     * @param heightM height of the outlet over what the streams meet, m
     * @param speedFactor exit speed over the rated one, above 0
     * @return of one outlet, m
     */
    double ofOutletM(double heightM, double speedFactor) {
        double sumM = 0;
        for (int i = 0; i < like.length; i++) {
            ofStreamM[i] =
                    like[i] < i ? ofStreamM[like[i]] : ofStreamM(type.streams().get(i), heightM, speedFactor);
            sumM += ofStreamM[i];
        }
        return sumM;
    }

    /** The first stream that is as thick and flies as far, perhaps to the other side: most outlets are alike left and right. */
    private int firstLike(int stream) {
        Stream one = type.streams().get(stream);
        for (int i = 0; i < stream; i++) {
            Stream other = type.streams().get(i);
            if (other.share() == one.share()
                    && other.exitMps() == one.exitMps()
                    && other.downPart() == one.downPart()
                    && other.backPart() == one.backPart()
                    && Math.abs(other.rightPart()) == Math.abs(one.rightPart())) {
                return i;
            }
        }
        return stream;
    }

    private double ofStreamM(Stream stream, double heightM, double speedFactor) {
        double speedMps = stream.exitMps() * speedFactor;
        // Flow and speed go with the square root of the pressure alike.
        double thickM = Math.sqrt(4 * stream.share() * type.ratedFlowM3ps() / (StrictMath.PI * stream.exitMps()));
        double wholeM = LENGTH_FACTOR * StrictMath.pow(weber(speedMps, thickM), LENGTH_POWER) * thickM;
        double broken = StrictMath.log(wayM(stream, heightM, speedMps) / wholeM) / LN_ALL_DROPS;
        double dropM = thickM * StrictMath.pow(DROP_RATIO, Math.max(0, Math.min(1, broken)));
        return dropM * Math.sqrt(Math.sqrt(weber(speedMps, dropM)));
    }

    private double weber(double speedMps, double thickM) {
        return densityKgpM3 * speedMps * speedMps * thickM / TENSION_NPM;
    }

    /** Way through the air, by the straight line for what gravity adds: enough for a logarithm. */
    private static double wayM(Stream stream, double heightM, double speedMps) {
        double flightS = Flight.timeS(speedMps * stream.downPart(), heightM);
        double acrossM = speedMps * flightS * stream.rightPart();
        double backM = speedMps * flightS * stream.backPart();
        return Math.max(1e-9, Math.sqrt(heightM * heightM + acrossM * acrossM + backM * backM));
    }
}

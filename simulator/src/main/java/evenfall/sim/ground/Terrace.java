package evenfall.sim.ground;

/**
 * A broad-base terrace, farmed on all its slopes: met from below it is a back slope up to the ridge, a
 * front slope down into the channel, and a cut slope back up to the land above. A skew of 180° turns it
 * round.
 *
 * @param crossing where the back slope begins
 * @param ridgeM height of the ridge over the land, m, 0 or above
 * @param channelM depth of the channel under the land, m, 0 or above
 * @param backSlopeM length of the back slope, m, above 0
 * @param frontSlopeM length from ridge to channel, m, above 0
 * @param cutSlopeM length from channel to the land above, m, above 0
 */
public record Terrace(
        Crossing crossing, double ridgeM, double channelM, double backSlopeM, double frontSlopeM, double cutSlopeM)
        implements Feature {

    public Terrace {
        Smooth.requireNotNegative(ridgeM, "ridge of a terrace, m,");
        Smooth.requireNotNegative(channelM, "channel of a terrace, m,");
        Smooth.requirePositive(backSlopeM, "back slope of a terrace, m,");
        Smooth.requirePositive(frontSlopeM, "front slope of a terrace, m,");
        Smooth.requirePositive(cutSlopeM, "cut slope of a terrace, m,");
    }

    /** One of ordinary size: ridge 0.30 m, channel 0.20 m, slopes of 5 m. Invented. */
    public static Terrace broadBase(Crossing crossing) {
        return new Terrace(crossing, 0.30, 0.20, 5.0, 5.0, 5.0);
    }

    @Override
    public double heightM(double xM, double yM) {
        double past = crossing.pastM(xM, yM);
        if (past <= 0 || past >= backSlopeM + frontSlopeM + cutSlopeM) {
            return 0.0;
        }
        double profile = ridgeM * Smooth.step(past / backSlopeM)
                - (ridgeM + channelM) * Smooth.step((past - backSlopeM) / frontSlopeM)
                + channelM * Smooth.step((past - backSlopeM - frontSlopeM) / cutSlopeM);
        return crossing.share(xM, yM) * profile;
    }
}

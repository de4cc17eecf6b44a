package evenfall.sim.plumbing;

import evenfall.sim.chance.Chance;

/**
 * What can go wrong with the plumbing. Each kind of trouble is a state of its own: setting one leaves the others as they are, and
 * 0 (or {@code false}, or a factor of 1) makes it whole again.
 */
public interface PlumbingTrouble {
    /** @param share of the outlet's hole that is blocked, 0 to 1 */
    void blockOutlet(int outlet, double share);

    /** @param share by which the outlet's K has grown, 0 or above */
    void wearOutlet(int outlet, double share);

    /** @param share of the outlet's flow that leaves beside its streams, over and above them, 0 or above */
    void leakOutlet(int outlet, double share);

    /** @param times what runs from the bare hole over what the outlet let through, above 1; 0 and the outlet is there again */
    void loseOutlet(int outlet, double times);

    /** @param share of the mesh of a section's strainer that is shut, 0 to 1 */
    void plugSectionStrainer(int section, double share);

    /** @param share of the mesh of the main strainer that is shut, 0 to 1 */
    void plugStrainer(double share);

    /**
     * A leak of the line between meter and outlets.
     *
     * @param flowM3ps how much at that pressure, m³/s
     * @param atPa pressure, Pa, above 0
     */
    void leakLine(double flowM3ps, double atPa);

    /**
     * @param share of the volume that is air while a slug passes, 0 to below 1
     * @param chance for when slugs pass
     */
    void drawAir(double share, Chance chance);

    /** @param share of its speed that the pump has lost: pressure falls with the square (affinity laws), 0 to below 1 */
    void weakenPump(double share);

    /** The section's valve goes shut and stays so, whatever its switch says. */
    void holdShut(int section, boolean on);

    /** The section's valve does not shut. One that is shut stays so until it is switched on. */
    void holdOpen(int section, boolean on);

    /** @param share of its opening by which the regulating valve swings to and fro */
    void swingValve(double share);

    /** The regulating valve stays where it is. */
    void holdValve(boolean on);

    /** @param factor what the rate controller's own meter shows over what it showed before */
    void controllerMeter(double factor);

    /** @param factor what the rate controller's own speed shows over what it showed before */
    void controllerSpeed(double factor);
}

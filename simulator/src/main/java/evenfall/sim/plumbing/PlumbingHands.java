package evenfall.sim.plumbing;

import evenfall.sim.chance.Chance;

/** The hands that trouble has on the parts of a {@link Plumbing}. */
final class PlumbingHands implements PlumbingTrouble {
    private final Plumbing plumbing;
    private final OutletSet outlets;
    private final Supply supply;
    private final RateController controller;

    PlumbingHands(Plumbing plumbing, OutletSet outlets, Supply supply, RateController controller) {
        this.plumbing = plumbing;
        this.outlets = outlets;
        this.supply = supply;
        this.controller = controller;
    }

    @Override
    public void blockOutlet(int outlet, double share) {
        plumbing.change(() -> outlets.block(outlet, share));
    }

    @Override
    public void wearOutlet(int outlet, double share) {
        plumbing.change(() -> outlets.wear(outlet, share));
    }

    @Override
    public void leakOutlet(int outlet, double share) {
        plumbing.change(() -> outlets.leak(outlet, share));
    }

    @Override
    public void loseOutlet(int outlet, double times) {
        plumbing.change(() -> outlets.lose(outlet, times));
    }

    @Override
    public void plugSectionStrainer(int section, double share) {
        // The mesh's K is twice its outlets' at half shut: p_outlet/p = 1 / (1 + (share / (1 − share) / 2)²).
        double ratio = 0.5 * share / Math.max(1 - share, 1e-6);
        plumbing.change(() -> plumbing.strainer(section, 1 / Math.sqrt(1 + ratio * ratio)));
    }

    @Override
    public void plugStrainer(double share) {
        supply.plug(share);
    }

    @Override
    public void leakLine(double flowM3ps, double atPa) {
        plumbing.leak(flowM3ps / Math.sqrt(atPa));
    }

    @Override
    public void drawAir(double share, Chance chance) {
        plumbing.air(share > 0 ? new AirSlugs(share, chance) : null);
    }

    @Override
    public void weakenPump(double share) {
        supply.weaken(share);
    }

    @Override
    public void holdShut(int section, boolean on) {
        plumbing.holdShut(section, on);
    }

    @Override
    public void holdOpen(int section, boolean on) {
        plumbing.holdOpen(section, on);
    }

    @Override
    public void swingValve(double share) {
        controller.swing(share);
    }

    @Override
    public void holdValve(boolean on) {
        controller.stuck(on);
    }

    @Override
    public void controllerMeter(double factor) {
        controller.meterFactor(factor);
    }

    @Override
    public void controllerSpeed(double factor) {
        controller.speedFactor(factor);
    }
}

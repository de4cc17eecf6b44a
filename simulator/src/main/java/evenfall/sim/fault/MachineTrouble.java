package evenfall.sim.fault;

import evenfall.sim.boom.Boom;
import evenfall.sim.vehicle.Chassis;

/** What can go wrong with boom and chassis; 0 makes each whole again. */
public interface MachineTrouble {
    /** @param lost share of its speed that a wing's actuator has lost: 1 and it is stuck */
    void slowWing(boolean left, double lost);

    /** @param lost share of its speed that the whole height control has lost, 0 to below 1 */
    void slowControl(double lost);

    /** The height control moves nothing. */
    void stopControl(boolean on);

    /** @param wrongM how much higher than it should be the boom is set, m */
    void setWrong(double wrongM);

    /**
     * @param wheel 0 front left, 1 front right, 2 rear left, 3 rear right
     * @param sunkM how much lower its end of the axle sits, m
     */
    void softenTyre(int wheel, double sunkM);

    /** The trouble of a real boom and chassis. */
    static MachineTrouble of(Boom boom, Chassis chassis) {
        return new MachineTrouble() {
            private double slow;
            private boolean dead;

            @Override
            public void slowWing(boolean left, double lost) {
                boom.driveWing(left, 1 - lost);
            }

            @Override
            public void slowControl(double lost) {
                slow = lost;
                boom.driveControl(dead ? 0 : 1 - slow);
            }

            @Override
            public void stopControl(boolean on) {
                dead = on;
                boom.driveControl(dead ? 0 : 1 - slow);
            }

            @Override
            public void setWrong(double wrongM) {
                boom.setWrong(wrongM);
            }

            @Override
            public void softenTyre(int wheel, double sunkM) {
                chassis.soften(wheel, sunkM);
            }
        };
    }
}

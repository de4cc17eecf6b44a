package evenfall.sim.sensor;

/** The truth that sensors look at, as it is at the end of the step. */
public interface Scene {
    /** Height of the outlets over the ground at a place on the boom, m; negative when in the ground. */
    double heightAtM(double rightM);

    /** Pressure where the transmitter sits, Pa. */
    double pressurePa();

    /** Section switches: bit 0 is the leftmost, 1 is on. */
    long sectionMask();

    /** Air temperature, °C. */
    double airC();

    /** What has left the tank since the start, m³; nothing where no tank is looked at. */
    default double tankGoneM3() {
        return 0;
    }

    /** Ground speed, m/s. */
    double speedMps();

    /** Distance driven, m along the pass. */
    double xM();

    /** Where the boom's centre is, m ahead of the place where the first pass begins; on one straight pass the distance driven. */
    default double aheadM() {
        return xM();
    }

    /** Where the boom's centre is, m to the right of the first pass. */
    default double asideM() {
        return 0;
    }

    /** Which way the machine looks against the first pass, rad, positive to the right. */
    default double headingRad() {
        return 0;
    }
}

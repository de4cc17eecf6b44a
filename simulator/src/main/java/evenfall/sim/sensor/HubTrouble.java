package evenfall.sim.sensor;

import evenfall.sim.chance.Chance;

/**
 * What can go wrong with the sensor hub and what is wired to it. Each kind of trouble is a state of its own: setting one leaves the
 * others as they are, and 0 or {@code false} makes it whole again. Height sensors count from 0 at the left.
 */
public interface HubTrouble {
    /** Foam or dirt on the face: it gives a short echo that never changes. */
    void foam(int height, boolean on);

    /** Water on the face, or a broken lead: no echo. */
    void deafen(int height, boolean on);

    /** It gives the last echo again and again. */
    void stick(int height, boolean on);

    /**
     * A loose bracket.
     *
     * @param shakeM standard deviation of its shaking, m
     */
    void shake(int height, double shakeM, Chance chance);

    /** @param share of the echoes that are second echoes, twice as long */
    void doubleEcho(int height, double share, Chance chance);

    /** @param asideM how far right of where it should be it is mounted, m */
    void move(int height, double asideM);

    /** @param raisedM how much higher than it should be it is mounted, m */
    void raise(int height, double raisedM);

    /** @param canopyM height of the crop that it takes for the ground, m */
    void canopy(int height, double canopyM);

    /** The leads of the height sensors are changed over, left for right. */
    void swap(boolean on);

    /** The leads of one sensor and of its counterpart on the other side are changed over; the others are right. */
    void swapPair(int height, boolean on);

    /** The switch of a section tells the hub that it is off, whatever it is. */
    void switchDead(int section, boolean on);

    /** The hub has hung: it says nothing, but its clock and counters go on. */
    void hang(boolean on);

    /** The hub has no power. When it has again, it starts anew: one boot more, clock and counters from 0. */
    void darken(boolean on);
}

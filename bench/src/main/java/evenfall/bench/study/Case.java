package evenfall.bench.study;

import evenfall.quantity.FixedDecimals;

/**
 * One run of a study.
 *
 * @param ground class of roughness, or {@code level}
 * @param outlet id of a built-in type, or an outlet file
 * @param speedKmh km/h
 * @param heightM target height of the outlets, m
 * @param seed of all random streams: cases that share it share the ground
 */
public record Case(String ground, String outlet, double speedKmh, double heightM, long seed) {
    @Override
    public String toString() {
        return "ground " + ground + ", " + outlet + ", " + FixedDecimals.text(speedKmh, 1) + " km/h, "
                + FixedDecimals.text(heightM, 2) + " m, seed " + seed;
    }
}

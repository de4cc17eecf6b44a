package evenfall.bench.workbench;

/**
 * Where signals come from.
 *
 * @param kind which sort
 * @param device path of the port; empty but for {@link Kind#PORT}
 * @param baud bits per second of that port
 */
record Source(Kind kind, String device, int baud) {
    enum Kind {
        /** A yard that is invented. */
        SIMULATED,
        /** One port. */
        PORT,
        /** The ports of the rig file. */
        RIG,
        /** None: what was read off is typed. The wiring test listens to all ports of this computer. */
        BY_HAND
    }
}

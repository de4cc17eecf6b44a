package evenfall.bench.run;

/** How a scenario is driven. */
public enum Pace {
    /** The monitor as its own process on serial ports and a broker; its time is the arrival of bytes. */
    REAL,
    /** The same bytes with the scenario's time stamps, as fast as they go. */
    MAX
}

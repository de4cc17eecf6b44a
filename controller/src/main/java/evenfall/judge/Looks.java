package evenfall.judge;

/** How often the sequential tests look, and how seldom one may be wrong. */
final class Looks {
    /** Looks a second: the monitor's grid. */
    static final double PER_S = 5;

    /**
     * Mean number of looks between false alarms of one kind of alert: 100 h of work, a season of one machine. Our choice, from what crews
     * forgive.
     */
    static final double BETWEEN_FALSE_ALARMS = 100 * 3600 * PER_S;

    private Looks() {}
}

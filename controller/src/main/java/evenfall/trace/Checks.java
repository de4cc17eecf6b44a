package evenfall.trace;

import org.jspecify.annotations.Nullable;

/** What every event must keep to. */
final class Checks {

    static final String PORT_FORM =
            "a letter or digit, then up to 31 more letters, digits, dots, dashes or underscores";

    /**
     * The monitor judges five times a second, also where nothing happens, so a time far off is a long wait for nothing and most
     * likely a damaged digit. A box that is left on in the shed from one weekend to the next stays within it.
     */
    static final long LONGEST_GAP_US = 7 * 86_400_000_000L;

    /** A recording goes from switch-on to switch-off; at some 5 s of computing a day one of this length is through in minutes. */
    static final long LATEST_US = 31 * 86_400_000_000L;

    static final String GAP_ALLOWED = "at most 7 days (" + LONGEST_GAP_US + " µs) from one event to the next";

    static final String LATEST_ALLOWED = "at most 31 days (" + LATEST_US + " µs) in one recording";

    private static final int LONGEST_PORT = 32;

    private Checks() {}

    static void time(long timeUs) {
        if (timeUs < 0) {
            throw new IllegalArgumentException("time " + timeUs + " µs; 0 or more is allowed");
        }
    }

    /** Returns what would be allowed where a time is too far from the one before or from the start, or null where it is not. */
    static @Nullable String allowedInsteadOf(long timeUs, long beforeUs) {
        if (timeUs > LATEST_US) {
            return LATEST_ALLOWED;
        }
        return timeUs - beforeUs > LONGEST_GAP_US ? GAP_ALLOWED : null;
    }

    static void port(String port) {
        if (!isPort(port)) {
            throw new IllegalArgumentException("port name '" + port + "'; allowed: " + PORT_FORM);
        }
    }

    static boolean isPort(String port) {
        if (port.isEmpty() || port.length() > LONGEST_PORT) {
            return false;
        }
        for (int i = 0; i < port.length(); i++) {
            char c = port.charAt(i);
            boolean plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
            boolean joiner = c == '.' || c == '-' || c == '_';
            if (!plain && !(joiner && i > 0)) {
                return false;
            }
        }
        return true;
    }
}

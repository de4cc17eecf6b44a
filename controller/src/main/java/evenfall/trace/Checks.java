package evenfall.trace;

/** What every event must keep to. */
final class Checks {

    static final String PORT_FORM =
            "a letter or digit, then up to 31 more letters, digits, dots, dashes or underscores";

    private static final int LONGEST_PORT = 32;

    private Checks() {}

    static void time(long timeUs) {
        if (timeUs < 0) {
            throw new IllegalArgumentException("time " + timeUs + " µs; 0 or more is allowed");
        }
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

package evenfall.app;

import java.util.Locale;

/** What hub and receiver of the documented example say on a level field: figures invented. */
final class Sentences {
    private Sentences() {}

    /** One round of the hub at its own time, µs. */
    static String hub(long tickUs) {
        return sentence("PEVFH," + tickUs + ",3560,3560,3560,3560,3560")
                + sentence("PEVFP," + tickUs + ",7200")
                + sentence("PEVFS," + tickUs + ",3F");
    }

    static String receiver(int second) {
        return sentence(String.format(
                Locale.ROOT, "GPRMC,1200%02d.00,A,5200.0000,N,00100.0000,E,010.70,090.0,251126,,,A", second % 60));
    }

    private static String sentence(String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++) {
            sum ^= body.charAt(i);
        }
        return String.format(Locale.ROOT, "$%s*%02X\r\n", body, sum);
    }
}

package evenfall.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Locale;
import java.util.SplittableRandom;
import net.sf.marineapi.nmea.parser.SentenceFactory;
import net.sf.marineapi.nmea.sentence.GGASentence;
import net.sf.marineapi.nmea.sentence.RMCSentence;
import net.sf.marineapi.nmea.sentence.VTGSentence;
import net.sf.marineapi.nmea.util.CompassPoint;
import net.sf.marineapi.nmea.util.DataStatus;
import net.sf.marineapi.nmea.util.Position;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The decoder and marineapi 0.12.0 must read the same numbers from the same sentences. */
class ReferenceLibraryTest {

    private static final int ROUNDS = 400;
    private static final double KNOT_MPS = 1852.0 / 3600.0;

    /** The library adds degrees and minutes in two steps, so its last bits differ. */
    private static final double LAST_BITS_DEG = 1e-12;

    private static final String[] TALKERS = {"GP", "GN", "GL", "GA", "GB", "II", "IN"};

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12})
    void rmcAgrees(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < ROUNDS; round++) {
            LocalDate day = LocalDate.of(1990, 1, 1).plusDays(random.nextInt(60 * 365));
            String date = String.format(
                    Locale.ROOT, "%02d%02d%02d", day.getDayOfMonth(), day.getMonthValue(), day.getYear() % 100);
            String sentence = SentenceStreamTest.signed(talker(random) + "RMC," + time(random) + ","
                    + (random.nextBoolean() ? "A" : "V") + "," + position(random) + ","
                    + decimal(random, 40, random.nextInt(5)) + "," + decimal(random, 360, random.nextInt(4)) + ","
                    + date + "," + (random.nextBoolean() ? "3.6,W" : ",") + ",A");
            RMCSentence reference = (RMCSentence) SentenceFactory.getInstance().createParser(sentence);
            SeenSentences.Seen ours = SeenSentences.of(sentence).only();

            String what = "seed " + seed + " round " + round + " " + sentence;
            assertThat(ours.kind()).as(what).isEqualTo("rmc");
            assertThat(ours.fields().get("fix")).as(what).isEqualTo(reference.getStatus() == DataStatus.ACTIVE);
            number(ours, "speedMps", reference.getSpeed() * KNOT_MPS, 1e-13, what);
            number(ours, "courseDeg", reference.getCourse(), 0, what);
            position(ours, reference.getPosition(), what);
            long timeMs = reference.getTime().getMilliseconds();
            assertThat((Long) ours.fields().get("utcEpochMs") % 86_400_000L)
                    .as(what)
                    .isEqualTo(timeMs);
            assertThat(LocalDate.ofEpochDay((Long) ours.fields().get("utcEpochMs") / 86_400_000L))
                    .as(what)
                    .isEqualTo(LocalDate.of(
                            day.getYear(),
                            reference.getDate().getMonth(),
                            reference.getDate().getDay()));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {21, 22})
    void vtgAgrees(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < ROUNDS; round++) {
            boolean knots = random.nextInt(4) > 0;
            String sentence = SentenceStreamTest.signed(talker(random) + "VTG,"
                    + decimal(random, 360, random.nextInt(4)) + ",T,"
                    + (random.nextBoolean() ? decimal(random, 360, 1) : "") + ",M,"
                    + (knots ? decimal(random, 40, random.nextInt(5)) : "") + ",N,"
                    + decimal(random, 75, random.nextInt(5)) + ",K" + (random.nextBoolean() ? ",A" : ""));
            VTGSentence reference = (VTGSentence) SentenceFactory.getInstance().createParser(sentence);
            SeenSentences.Seen ours = SeenSentences.of(sentence).only();

            String what = "seed " + seed + " round " + round + " " + sentence;
            number(ours, "courseDeg", reference.getTrueCourse(), 0, what);
            double expectedMps = knots ? reference.getSpeedKnots() * KNOT_MPS : reference.getSpeedKmh() / 3.6;
            number(ours, "speedMps", expectedMps, 1e-13, what);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {31, 32})
    void ggaAgrees(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < ROUNDS; round++) {
            String sentence = SentenceStreamTest.signed(talker(random) + "GGA," + time(random) + ","
                    + position(random) + "," + random.nextInt(9) + ","
                    + String.format(Locale.ROOT, "%02d", random.nextInt(30)) + "," + decimal(random, 20, 2) + ","
                    + (random.nextBoolean() ? "-" : "") + decimal(random, 3000, random.nextInt(4)) + ",M,45.1,M,,");
            GGASentence reference = (GGASentence) SentenceFactory.getInstance().createParser(sentence);
            SeenSentences.Seen ours = SeenSentences.of(sentence).only();

            String what = "seed " + seed + " round " + round + " " + sentence;
            assertThat(ours.fields())
                    .as(what)
                    .containsEntry("quality", (long) reference.getFixQuality().toInt())
                    .containsEntry("satellites", (long) reference.getSatelliteCount())
                    .containsEntry("timeOfDayMs", reference.getTime().getMilliseconds());
            number(ours, "hdop", reference.getHorizontalDOP(), 0, what);
            number(ours, "altitudeM", reference.getAltitude(), 0, what);
            position(ours, reference.getPosition(), what);
        }
    }

    private static void position(SeenSentences.Seen ours, Position reference, String what) {
        double latitude =
                Math.abs(reference.getLatitude()) * (reference.getLatitudeHemisphere() == CompassPoint.NORTH ? 1 : -1);
        double longitude =
                Math.abs(reference.getLongitude()) * (reference.getLongitudeHemisphere() == CompassPoint.EAST ? 1 : -1);
        number(ours, "latitudeDeg", latitude, LAST_BITS_DEG, what);
        number(ours, "longitudeDeg", longitude, LAST_BITS_DEG, what);
    }

    private static void number(SeenSentences.Seen ours, String key, double expected, double tolerance, String what) {
        assertThat((Double) ours.fields().get(key)).as(key + " of " + what).isCloseTo(expected, within(tolerance));
    }

    private static String talker(SplittableRandom random) {
        return TALKERS[random.nextInt(TALKERS.length)];
    }

    private static String time(SplittableRandom random) {
        return String.format(
                Locale.ROOT,
                "%02d%02d%02d.%03d",
                random.nextInt(24),
                random.nextInt(60),
                random.nextInt(60),
                random.nextInt(1000));
    }

    private static String position(SplittableRandom random) {
        int decimals = 2 + random.nextInt(7);
        return String.format(Locale.ROOT, "%02d", random.nextInt(90))
                + minutes(random, decimals)
                + (random.nextBoolean() ? ",N," : ",S,")
                + String.format(Locale.ROOT, "%03d", random.nextInt(180))
                + minutes(random, decimals)
                + (random.nextBoolean() ? ",E" : ",W");
    }

    private static String minutes(SplittableRandom random, int decimals) {
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT, "%02d.", random.nextInt(60)));
        for (int i = 0; i < decimals; i++) {
            text.append(random.nextInt(10));
        }
        return text.toString();
    }

    private static String decimal(SplittableRandom random, int below, int decimals) {
        StringBuilder text = new StringBuilder().append(random.nextInt(below));
        for (int i = 0; i < decimals; i++) {
            text.append(i == 0 ? "." : "").append(random.nextInt(10));
        }
        return text.toString();
    }
}

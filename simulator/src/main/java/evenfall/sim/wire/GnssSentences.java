package evenfall.sim.wire;

import evenfall.quantity.TradeUnits;
import java.time.LocalDate;
import java.util.OptionalDouble;

/**
 * RMC, VTG and GGA of one receiver, in the form that the golden table prescribes: time to 0.01 s, minutes to 5 decimals, knots
 * and km/h to 3, course to 2, HDOP to 2, metres to 3, no magnetic course or variation.
 */
public final class GnssSentences {
    private static final long DAY_MS = 86_400_000;

    private final String talker;
    private final SentenceWriter writer = new SentenceWriter();

    /** @param talker two letters: GP, GN and so on */
    public GnssSentences(String talker) {
        this.talker = talker;
    }

    /** Recommended minimum: time, status, position, speed, course, date. */
    public byte[] rmc(Fix fix) {
        writer.begin(talker, "RMC");
        timeOfDay(fix);
        writer.letter(fix.valid() ? 'A' : 'V');
        position(fix);
        known(speedIn(fix, TradeUnits.KNOT_MPS), 3);
        known(fix.courseDeg(), 2);
        if (fix.utcMs().isPresent()) {
            LocalDate day = LocalDate.ofEpochDay(Math.floorDiv(fix.utcMs().getAsLong(), DAY_MS));
            writer.padded(day.getDayOfMonth() * 10_000L + day.getMonthValue() * 100L + day.getYear() % 100, 6);
        } else {
            writer.empty();
        }
        writer.empty().empty();
        mode(fix);
        return writer.end();
    }

    /** Course and speed over ground. */
    public byte[] vtg(Fix fix) {
        writer.begin(talker, "VTG");
        known(fix.courseDeg(), 2);
        writer.letter('T').empty().letter('M');
        known(speedIn(fix, TradeUnits.KNOT_MPS), 3);
        writer.letter('N');
        known(speedIn(fix, TradeUnits.KMPH_MPS), 3);
        writer.letter('K');
        mode(fix);
        return writer.end();
    }

    /** Position, quality, altitude. */
    public byte[] gga(Fix fix) {
        writer.begin(talker, "GGA");
        timeOfDay(fix);
        position(fix);
        writer.whole(fix.quality()).padded(fix.satellites(), 2);
        known(fix.hdop(), 2);
        known(fix.altitudeM(), 3);
        writer.letter('M');
        known(fix.geoidM(), 3);
        writer.letter('M').empty().empty();
        return writer.end();
    }

    private void timeOfDay(Fix fix) {
        if (fix.utcMs().isPresent()) {
            writer.timeOfDay(Math.floorMod(fix.utcMs().getAsLong(), DAY_MS));
        } else {
            writer.empty();
        }
    }

    private void position(Fix fix) {
        if (fix.latitudeDeg().isPresent() && fix.longitudeDeg().isPresent()) {
            writer.angle(fix.latitudeDeg().getAsDouble(), 2, 'N', 'S');
            writer.angle(fix.longitudeDeg().getAsDouble(), 3, 'E', 'W');
        } else {
            writer.empty().empty().empty().empty();
        }
    }

    private void mode(Fix fix) {
        if (fix.mode() == 0) {
            writer.empty();
        } else {
            writer.letter(fix.mode());
        }
    }

    private void known(OptionalDouble value, int decimals) {
        if (value.isPresent()) {
            writer.decimal(value.getAsDouble(), decimals);
        } else {
            writer.empty();
        }
    }

    private static OptionalDouble speedIn(Fix fix, double unitMps) {
        return fix.speedMps().isPresent()
                ? OptionalDouble.of(fix.speedMps().getAsDouble() / unitMps)
                : OptionalDouble.empty();
    }
}

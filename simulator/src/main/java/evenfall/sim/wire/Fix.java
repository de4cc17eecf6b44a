package evenfall.sim.wire;

import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What a GNSS receiver says at one epoch; what it does not know is empty.
 *
 * @param valid whether it has a position: status A or V
 * @param utcMs UTC of the epoch, ms since 1970-01-01
 * @param latitudeDeg north positive
 * @param longitudeDeg east positive
 * @param speedMps over ground
 * @param courseDeg over ground, from true north, clockwise
 * @param mode of the fix, the letter of NMEA 0183 from 2.3 on: A autonomous, D differential, R fixed, N none; 0 where the
 *     receiver has no such field to fill
 * @param quality GGA's number: 0 none, 1 autonomous, 2 differential, 4 fixed
 * @param satellites used
 * @param hdop horizontal dilution of precision
 * @param altitudeM over the geoid
 * @param geoidM geoid over the ellipsoid
 */
public record Fix(
        boolean valid,
        OptionalLong utcMs,
        OptionalDouble latitudeDeg,
        OptionalDouble longitudeDeg,
        OptionalDouble speedMps,
        OptionalDouble courseDeg,
        char mode,
        int quality,
        int satellites,
        OptionalDouble hdop,
        OptionalDouble altitudeM,
        OptionalDouble geoidM) {}

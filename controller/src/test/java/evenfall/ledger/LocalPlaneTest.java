package evenfall.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;

/** Against GeographicLib (C. F. F. Karney, "Algorithms for geodesics", Journal of Geodesy 87, 2013; right to 15 nm). */
class LocalPlaneTest {
    private static final long SEED = 12;

    @Test
    void placesABoomApartHaveTheirDistanceToAMillimetreWithinTenKilometres() {
        Random random = new Random(SEED);
        double worstM = 0;
        for (int i = 0; i < 20_000; i++) {
            double latitude = 130 * random.nextDouble() - 65;
            double longitude = 360 * random.nextDouble() - 180;
            LocalPlane plane = new LocalPlane(latitude, longitude);
            GeodesicData one =
                    Geodesic.WGS84.Direct(latitude, longitude, 360 * random.nextDouble(), 10_000 * random.nextDouble());
            double apartM = 40 * random.nextDouble();
            GeodesicData other = Geodesic.WGS84.Direct(one.lat2, one.lon2, 360 * random.nextDouble(), apartM);
            plane.put(one.lat2, one.lon2);
            double eastM = plane.eastM();
            double northM = plane.northM();
            plane.put(other.lat2, other.lon2);
            worstM = Math.max(worstM, Math.abs(Math.hypot(plane.eastM() - eastM, plane.northM() - northM) - apartM));
        }
        assertThat(worstM).as("seed %d", SEED).isLessThan(1e-3);
    }

    @Test
    void aPlaceLiesWhereItIsToACentimetreWithinTenKilometres() {
        Random random = new Random(SEED);
        for (int i = 0; i < 2000; i++) {
            double latitude = 130 * random.nextDouble() - 65;
            double longitude = 360 * random.nextDouble() - 180;
            double bearing = 360 * random.nextDouble();
            double farM = 10_000 * random.nextDouble();
            LocalPlane plane = new LocalPlane(latitude, longitude);
            GeodesicData at = Geodesic.WGS84.Direct(latitude, longitude, bearing, farM);
            plane.put(at.lat2, at.lon2);
            double offM = Math.hypot(
                    plane.eastM() - farM * Math.sin(Math.toRadians(bearing)),
                    plane.northM() - farM * Math.cos(Math.toRadians(bearing)));
            assertThat(offM)
                    .as("seed %d, %.3f° N, %.0f m", SEED, latitude, farM)
                    .isLessThan(0.01);
        }
    }
}

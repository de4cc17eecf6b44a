package evenfall.ledger;

/**
 * A plane that touches the earth at the first fix: metres east and north of it. The first terms of the transverse Mercator series
 * (J. P. Snyder, Map Projections, USGS Professional Paper 1395, 1987; from memory) on the WGS 84 ellipsoid (NIMA TR8350.2).
 *
 * <p>Places that are one boom's width apart have that distance in it to better than a millimetre as far as 10 km from the first fix;
 * measured against GeographicLib by its test. Not at the poles.
 */
final class LocalPlane {
    private static final double HALF_AXIS_M = 6_378_137;
    private static final double ECCENTRICITY_SQUARED = 0.00669437999014;

    private final double originLatitude;
    private final double originLongitudeDeg;

    private double eastM;
    private double northM;

    LocalPlane(double latitudeDeg, double longitudeDeg) {
        originLatitude = StrictMath.toRadians(latitudeDeg);
        originLongitudeDeg = longitudeDeg;
    }

    /** Takes a place, degrees; then {@link #eastM} and {@link #northM} are its. */
    void put(double latitudeDeg, double longitudeDeg) {
        double latitude = StrictMath.toRadians(latitudeDeg);
        double turnsDeg = longitudeDeg - originLongitudeDeg;
        // Round the other way where the date line lies between.
        double aside = StrictMath.toRadians(turnsDeg - 360 * Math.floor((turnsDeg + 180) / 360));
        double sin = StrictMath.sin(latitude);
        double cos = StrictMath.cos(latitude);
        double primeM = HALF_AXIS_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * sin * sin);
        double tan2 = sin * sin / (cos * cos);
        double eta2 = ECCENTRICITY_SQUARED / (1 - ECCENTRICITY_SQUARED) * cos * cos;
        double a = aside * cos;
        eastM = primeM * a * (1 + a * a * (1 - tan2 + eta2) / 6);
        northM = meridianM(latitude) + primeM * sin / cos * a * a / 2;
    }

    /** Arc of the meridian from the origin, by the radius half way: right to the third order. */
    private double meridianM(double latitude) {
        double sin = StrictMath.sin(0.5 * (latitude + originLatitude));
        double squeeze = 1 - ECCENTRICITY_SQUARED * sin * sin;
        double radiusM = HALF_AXIS_M * (1 - ECCENTRICITY_SQUARED) / (squeeze * Math.sqrt(squeeze));
        return radiusM * (latitude - originLatitude);
    }

    double eastM() {
        return eastM;
    }

    double northM() {
        return northM;
    }
}

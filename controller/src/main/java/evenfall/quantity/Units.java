package evenfall.quantity;

/** The units that people read. Files and JSON are untouched by this: there the unit stands in the key. */
public enum Units {
    METRIC(
            "m",
            1,
            2,
            "kPa",
            TradeUnits.KPA_PA,
            "km/h",
            TradeUnits.KMPH_MPS,
            "L/ha",
            TradeUnits.LPHA_M,
            0,
            "L/min",
            TradeUnits.LPM_M3PS,
            2),
    US(
            "in",
            TradeUnits.INCH_M,
            1,
            "psi",
            TradeUnits.PSI_PA,
            "mph",
            TradeUnits.MPH_MPS,
            "US gal/ac",
            TradeUnits.GPA_M,
            1,
            "US gpm",
            TradeUnits.GPM_M3PS,
            2);

    private final String lengthUnit;
    private final double lengthM;
    private final int lengthDecimals;
    private final String pressureUnit;
    private final double pressurePa;
    private final String speedUnit;
    private final double speedMps;
    private final String rateUnit;
    private final double rateM;
    private final int rateDecimals;
    private final String flowUnit;
    private final double flowM3ps;
    private final int flowDecimals;

    Units(
            String lengthUnit,
            double lengthM,
            int lengthDecimals,
            String pressureUnit,
            double pressurePa,
            String speedUnit,
            double speedMps,
            String rateUnit,
            double rateM,
            int rateDecimals,
            String flowUnit,
            double flowM3ps,
            int flowDecimals) {
        this.lengthUnit = lengthUnit;
        this.lengthM = lengthM;
        this.lengthDecimals = lengthDecimals;
        this.pressureUnit = pressureUnit;
        this.pressurePa = pressurePa;
        this.speedUnit = speedUnit;
        this.speedMps = speedMps;
        this.rateUnit = rateUnit;
        this.rateM = rateM;
        this.rateDecimals = rateDecimals;
        this.flowUnit = flowUnit;
        this.flowM3ps = flowM3ps;
        this.flowDecimals = flowDecimals;
    }

    /** The word after a length. */
    public String lengthUnit() {
        return lengthUnit;
    }

    /** A length as a bare number in {@link #lengthUnit()}. */
    public String lengthNumber(double metres) {
        return FixedDecimals.text(metres / lengthM, lengthDecimals);
    }

    /** A length or height with its unit. */
    public String length(double metres) {
        return lengthNumber(metres) + " " + lengthUnit;
    }

    /** A distance between outlets, rows or lines: finer than a height. */
    public String spacing(double metres) {
        return this == METRIC ? FixedDecimals.text(100 * metres, 1) + " cm" : length(metres);
    }

    /** A pressure with its unit. */
    public String pressure(double pascal) {
        return pressureNumber(pascal) + " " + pressureUnit;
    }

    /** A pressure as a bare number in {@link #pressureUnit()}. */
    public String pressureNumber(double pascal) {
        return FixedDecimals.text(pascal / pressurePa, 0);
    }

    /** The word after a pressure. */
    public String pressureUnit() {
        return pressureUnit;
    }

    /** A speed with its unit. */
    public String speed(double metresPerSecond) {
        return speedNumber(metresPerSecond) + " " + speedUnit;
    }

    /** A speed as a bare number in {@link #speedUnit()}. */
    public String speedNumber(double metresPerSecond) {
        return FixedDecimals.text(metresPerSecond / speedMps, 1);
    }

    /** The word after a speed. */
    public String speedUnit() {
        return speedUnit;
    }

    /**
     * @param cubicMetresPerSecond through one outlet
     */
    public String flow(double cubicMetresPerSecond) {
        return flowNumber(cubicMetresPerSecond) + " " + flowUnit;
    }

    /** An outlet's flow as a bare number in {@link #flowUnit()}. */
    public String flowNumber(double cubicMetresPerSecond) {
        return FixedDecimals.text(cubicMetresPerSecond / flowM3ps, flowDecimals);
    }

    /** The word after a flow. */
    public String flowUnit() {
        return flowUnit;
    }

    /** A boom's flow: as an outlet's, without what nobody reads. */
    public String boomFlow(double cubicMetresPerSecond) {
        return FixedDecimals.text(cubicMetresPerSecond / flowM3ps, 0) + " " + flowUnit;
    }

    /**
     * @param cubicMetres in a tank or through a meter
     */
    public String volume(double cubicMetres) {
        return this == US
                ? FixedDecimals.text(cubicMetres / TradeUnits.US_GALLON_M3, 0) + " gal"
                : FixedDecimals.text(cubicMetres / TradeUnits.LITRE_M3, 0) + " L";
    }

    /** How many of the unit a metre is, for axes. */
    public double lengthsPerMetre() {
        return 1 / lengthM;
    }

    /** How many of the unit a pascal is, for axes. */
    public double pressuresPerPascal() {
        return 1 / pressurePa;
    }

    /** How many of the unit a metre per second is, for axes. */
    public double speedsPerMps() {
        return 1 / speedMps;
    }

    /** How many of the unit a depth of one metre is, for axes. */
    public double ratesPerMetre() {
        return 1 / rateM;
    }

    /**
     * @param depthM product on the ground as a depth, m³/m²
     */
    public String rate(double depthM) {
        return rateNumber(depthM) + " " + rateUnit;
    }

    /** A rate as a bare number in {@link #rateUnit()}. */
    public String rateNumber(double depthM) {
        return FixedDecimals.text(depthM / rateM, rateDecimals);
    }

    /** The word after a rate. */
    public String rateUnit() {
        return rateUnit;
    }

    /** Two lengths with one unit: "0.44 to 0.57 m". */
    public String lengths(double fromM, double toM) {
        return lengthNumber(fromM) + " to " + length(toM);
    }

    /** Two pressures with one unit: "100 to 400 kPa". */
    public String pressures(double fromPa, double toPa) {
        return FixedDecimals.text(fromPa / pressurePa, 0) + " to " + pressure(toPa);
    }

    /** A ratio as percent, without the sign: 0.034 is "3". */
    public static String percentNumber(double ratio, int decimals) {
        return FixedDecimals.text(100 * ratio, decimals);
    }

    /** A ratio as whole percent. */
    public static String percent(double ratio) {
        return percentNumber(ratio, 0) + " %";
    }

    /** A number with its sign before it, and none before what rounds to nothing. */
    public static String signed(double value, int decimals) {
        String text = FixedDecimals.text(value, decimals);
        boolean nothing = text.equals(FixedDecimals.text(0, decimals));
        return value > 0 && !nothing ? "+" + text : text;
    }
}

package evenfall.quantity;

/**
 * The trade's units against SI. Each constant is the SI size of one unit: multiply to come in, divide to go out.
 *
 * <p>Exact by definition: the international foot (0.3048 m), the US liquid gallon (231 in³), the international acre
 * (43,560 square international feet). The US survey acre is 4 parts in a million larger; nothing here uses it.
 */
public final class TradeUnits {
    public static final double INCH_M = 0.0254;
    public static final double FOOT_M = 0.3048;
    public static final double HECTARE_M2 = 10_000;
    public static final double ACRE_M2 = 43_560 * FOOT_M * FOOT_M;
    public static final double LITRE_M3 = 1e-3;
    public static final double US_GALLON_M3 = 231 * INCH_M * INCH_M * INCH_M;
    public static final double LPM_M3PS = LITRE_M3 / 60;
    public static final double GPM_M3PS = US_GALLON_M3 / 60;
    public static final double KMPH_MPS = 1 / 3.6;
    public static final double MPH_MPS = 5280 * FOOT_M / 3600;
    public static final double KNOT_MPS = 1852.0 / 3600;
    public static final double KPA_PA = 1000;
    public static final double BAR_PA = 100_000;
    /** Pound-force per square inch: 0.45359237 kg · 9.80665 m/s² over a square inch. */
    public static final double PSI_PA = 0.45359237 * 9.80665 / (INCH_M * INCH_M);

    public static final double LPHA_M = LITRE_M3 / HECTARE_M2;
    public static final double GPA_M = US_GALLON_M3 / ACRE_M2;
    public static final double POUND_KG = 0.45359237;

    private TradeUnits() {}
}

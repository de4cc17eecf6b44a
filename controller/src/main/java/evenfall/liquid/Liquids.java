package evenfall.liquid;

import java.util.List;
import java.util.Optional;

/**
 * The products that the program knows by name.
 *
 * <p>UAN densities: 1.276 to 1.283 kg/L is published for 28 % (Univ. of Nebraska-Lincoln CropWatch 2016: 10.65 lb/US
 * gal; UNIDO/IFDC Fertilizer Manual 1998 by way of an encyclopaedia: SG 1.283), 1.300 to 1.303 for 30 %, 1.320 to 1.325
 * for 32 % (CropWatch: 11.06 lb/US gal); ours lie inside. Nitrogen is the grade's share of the mass. Published densities
 * of thiosulphate (12-0-0-26S) differ by 4 % (11.04 and 11.5 lb/US gal), so measure and give it where it matters; ours
 * is 1.33 kg/L.
 */
public final class Liquids {
    /** Water, 998.2 kg/m³. */
    public static final Liquid WATER = new Liquid("water", "water", Liquid.WATER_KGPM3, 0, 0);
    /** Urea ammonium nitrate with 28 % nitrogen by mass, 1280 kg/m³. */
    public static final Liquid UAN_28 = uan("uan-28", "UAN 28 %", 1280, 0.28);
    /** Urea ammonium nitrate with 30 % nitrogen by mass, 1301 kg/m³. */
    public static final Liquid UAN_30 = uan("uan-30", "UAN 30 %", 1301, 0.30);
    /** Urea ammonium nitrate with 32 % nitrogen by mass, 1324 kg/m³. */
    public static final Liquid UAN_32 = uan("uan-32", "UAN 32 %", 1324, 0.32);
    /** Ammonium thiosulphate with 12 % nitrogen and 26 % sulphur by mass, 1330 kg/m³. */
    public static final Liquid THIOSULPHATE =
            new Liquid("thiosulphate", "ammonium thiosulphate", 1330, 0.12 * 1330, 0.26 * 1330);

    private static final List<Liquid> ALL = List.of(WATER, UAN_28, UAN_30, UAN_32, THIOSULPHATE);

    private Liquids() {}

    /** All known products, in the order in which they are listed to people. */
    public static List<Liquid> all() {
        return ALL;
    }

    /** The product that a file calls so, such as {@code uan-28}; empty where there is none. */
    public static Optional<Liquid> byId(String id) {
        return ALL.stream().filter(liquid -> liquid.id().equals(id)).findFirst();
    }

    private static Liquid uan(String id, String title, double densityKgpM3, double nitrogenByMass) {
        return new Liquid(id, title, densityKgpM3, nitrogenByMass * densityKgpM3, 0);
    }
}

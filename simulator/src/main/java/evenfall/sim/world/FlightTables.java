package evenfall.sim.world;

import evenfall.liquid.Liquid;
import evenfall.outlet.OutletType;
import evenfall.sim.jet.Air;
import evenfall.sim.jet.FlightTable;
import evenfall.sim.jet.JetLiquid;
import java.util.LinkedHashMap;
import java.util.Map;

/** Flight tables that have been built, for worlds that are alike: a table is a second's work and never changes. */
final class FlightTables {
    private static final int MOST = 16;

    private record Key(OutletType type, JetLiquid liquid, Air air) {}

    private static final Map<Key, FlightTable> BUILT = new LinkedHashMap<>();

    private FlightTables() {}

    /** @param drag whether the air holds streams back */
    static FlightTable of(OutletType type, Liquid liquid, boolean drag) {
        Key key = new Key(type, JetLiquid.of(liquid), drag ? Air.AT_20C : Air.NONE);
        synchronized (BUILT) {
            FlightTable table = BUILT.get(key);
            if (table == null) {
                if (BUILT.size() >= MOST) {
                    BUILT.remove(BUILT.keySet().iterator().next());
                }
                table = new FlightTable(key.type(), key.liquid(), key.air());
                BUILT.put(key, table);
            }
            return table;
        }
    }
}

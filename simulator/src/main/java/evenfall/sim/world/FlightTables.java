package evenfall.sim.world;

import evenfall.liquid.Liquid;
import evenfall.outlet.OutletType;
import evenfall.sim.jet.Air;
import evenfall.sim.jet.FlightTable;
import evenfall.sim.jet.JetLiquid;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Flight tables that have been built, for worlds that are alike: a table is a second's work and never changes. */
final class FlightTables {
    private static final int MOST = 16;

    private record Key(OutletType type, JetLiquid liquid, Air air) {}

    private static final Map<Key, Place> BUILT = new LinkedHashMap<>();

    /** Of one table: who asks for it while it is being built waits, who asks for another does not. */
    private static final class Place {
        private @Nullable FlightTable table;

        synchronized FlightTable table(Key key) {
            if (table == null) {
                table = new FlightTable(key.type(), key.liquid(), key.air());
            }
            return table;
        }
    }

    private FlightTables() {}

    /** @param drag whether the air holds streams back */
    static FlightTable of(OutletType type, Liquid liquid, boolean drag) {
        Key key = new Key(type, JetLiquid.of(liquid), drag ? Air.AT_20C : Air.NONE);
        Place place;
        synchronized (BUILT) {
            if (!BUILT.containsKey(key) && BUILT.size() >= MOST) {
                BUILT.remove(BUILT.keySet().iterator().next());
            }
            place = BUILT.computeIfAbsent(key, k -> new Place());
        }
        return place.table(key);
    }
}

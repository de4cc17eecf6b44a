package evenfall.sim.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All faults that there are. */
public final class Faults {
    private static final List<Fault> ALL = gather();

    private Faults() {}

    private static List<Fault> gather() {
        List<Fault> all = new ArrayList<>();
        all.addAll(LiquidFaults.all());
        all.addAll(HeightFaults.all());
        all.addAll(MeterFaults.all());
        all.addAll(WireFaults.all());
        all.addAll(MachineFaults.all());
        return List.copyOf(all);
    }

    /** In the order in which they are listed for people: by part. */
    public static List<Fault> all() {
        return ALL;
    }

    /** The fault of this id. */
    public static Optional<Fault> find(String id) {
        for (Fault fault : ALL) {
            if (fault.id().equals(id)) {
                return Optional.of(fault);
            }
        }
        return Optional.empty();
    }

    /** The id that looks most like a word that is none. */
    static String nearest(String word) {
        String best = ALL.get(0).id();
        for (Fault fault : ALL) {
            if (distance(word, fault.id()) < distance(word, best)) {
                best = fault.id();
            }
        }
        return best;
    }

    /** How many letters have to be put in, taken out or changed (V. Levenshtein, 1966). */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int before = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int above = row[j];
                int changed = before + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(changed, Math.min(above, row[j - 1]) + 1);
                before = above;
            }
        }
        return row[b.length()];
    }
}

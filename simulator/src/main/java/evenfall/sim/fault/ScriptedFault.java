package evenfall.sim.fault;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A fault that a scenario asks for.
 *
 * @param atS when it comes, s from the start
 * @param forS how long it stays, s; empty to the end
 * @param where as the file says it; empty where the part is there once
 * @param places the same as indices from 0
 * @param howMuch in the unit of the fault's {@link Amount}
 */
public record ScriptedFault(
        Fault fault, double atS, OptionalDouble forS, String where, List<Integer> places, double howMuch) {
    public ScriptedFault {
        places = List.copyOf(places);
    }

    /** When it comes, µs. */
    public long fromUs() {
        return Math.round(atS * 1e6);
    }

    /** When it is gone, µs; {@link Long#MAX_VALUE} when it stays. */
    public long untilUs() {
        return forS.isPresent() ? Math.round((atS + forS.getAsDouble()) * 1e6) : Long.MAX_VALUE;
    }

    /** Whether both touch the same thing at the same time, so that one's end would end the other. */
    boolean meets(ScriptedFault other) {
        return fault == other.fault
                && fromUs() < other.untilUs()
                && other.fromUs() < untilUs()
                && places.stream().anyMatch(other.places::contains);
    }
}

package evenfall.sim.fault;

import evenfall.sim.chance.Chance;

/** What a fault does to the parts. */
@FunctionalInterface
interface Effect {
    /**
     * @param place which one, from 0; 0 where there is only one
     * @param howMuch in the unit of the fault's {@link Amount}; 0 ends the fault
     * @param chance the fault's own
     */
    void set(FaultParts parts, int place, double howMuch, Chance chance);
}

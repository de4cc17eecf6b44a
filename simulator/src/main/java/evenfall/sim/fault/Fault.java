package evenfall.sim.fault;

import java.util.List;

/** Something that can go wrong. Never changes. */
public final class Fault {
    private final String id;
    private final Part part;
    private final PlaceKind place;
    private final Amount amount;
    private final String notice;
    private final String seenBy;
    private final List<String> alerts;
    private final Effect effect;

    Fault(
            String id,
            Part part,
            PlaceKind place,
            Amount amount,
            String notice,
            String seenBy,
            Effect effect,
            String... alerts) {
        this.id = id;
        this.part = part;
        this.place = place;
        this.amount = amount;
        this.notice = notice;
        this.seenBy = seenBy;
        this.effect = effect;
        this.alerts = List.of(alerts);
    }

    /** Its word in scenarios. */
    public String id() {
        return id;
    }

    public Part part() {
        return part;
    }

    /** How its place is said. */
    public PlaceKind place() {
        return place;
    }

    /** What its size means. */
    public Amount amount() {
        return amount;
    }

    /** What a crew would notice: one plain sentence. */
    public String notice() {
        return notice;
    }

    /** Which sensors could see it, or {@code none fitted}. */
    public String seenBy() {
        return seenBy;
    }

    /**
     * Alert kinds that it should lead to when it is large enough and the machine works: any one of them will do. Empty where nothing
     * that is fitted can tell, or where a good monitor should stay calm.
     */
    public List<String> alerts() {
        return alerts;
    }

    Effect effect() {
        return effect;
    }

    @Override
    public String toString() {
        return id;
    }
}

package evenfall.bench.prove.guide;

import java.util.Locale;

/** The tests. */
public enum Prover {
    FLOW,
    HEIGHT,
    SPEED,
    OUTLETS,
    WIRING;

    Script script() {
        return switch (this) {
            case FLOW -> new FlowScript();
            case HEIGHT -> new HeightScript();
            case SPEED -> new SpeedScript();
            case OUTLETS -> new OutletsScript();
            case WIRING -> new WiringScript();
        };
    }

    /** As on the command line. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}

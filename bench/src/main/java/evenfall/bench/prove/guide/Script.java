package evenfall.bench.prove.guide;

import evenfall.bench.prove.measure.Limit;
import java.util.List;

/** One guided test. Its run asks through the dialogue, in a fixed order that depends on the replies alone. */
interface Script {
    /** The limits that it judges by, as they are by default. */
    List<Limit> limits();

    Proof run(Dialogue dialogue, Setup setup) throws Turn;
}

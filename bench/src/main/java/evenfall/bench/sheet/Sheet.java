package evenfall.bench.sheet;

import evenfall.bench.page.Picture;
import java.util.List;

/** A page and the pictures in it. */
public interface Sheet {
    /** The usual cautions. */
    String CAUTION =
            "Relieve the pressure before you open a line, and wear what the product's label asks for. Keep people out"
                    + " of the boom's swing, and look up for power lines before you unfold. The label, the machine's manual, local codes and a"
                    + " licensed person's judgement stand above anything said here. This program watches and warns; it drives nothing.";

    /** What is made up. */
    String INVENTED = "Simulated: field, machine, product and faults are invented.";

    /** The whole HTML file. */
    String html();

    /** Its charts, each of which can stand in a file of its own. */
    List<Picture> pictures();
}

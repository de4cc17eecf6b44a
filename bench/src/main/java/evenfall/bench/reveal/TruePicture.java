package evenfall.bench.reveal;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.report.Json;
import evenfall.sim.world.RearView;

/** The boom over its ground, with its streams, as JSON. */
public final class TruePicture {
    private static final double MM = 1000;

    private TruePicture() {}

    /**
     * @return {@code t} s, {@code x} m; in whole millimetres, an entry for each outlet: {@code ground} over the mean ground under the
     *     boom, {@code h} height over the ground, {@code lands} for each stream where it lands right of the centre line, null where
     *     nothing flows
     */
    public static ObjectNode of(RearView view) {
        double groundM = 0;
        for (int i = 0; i < view.outlets(); i++) {
            groundM += (view.elevationM(i) - view.heightM(i)) / view.outlets();
        }
        ObjectNode json = Json.object();
        json.set("t", Json.number(view.timeUs() * 1e-6, 2));
        json.set("x", Json.number(view.xM(), 2));
        ArrayNode ground = json.putArray("ground");
        ArrayNode height = json.putArray("h");
        for (int i = 0; i < view.outlets(); i++) {
            ground.add(Math.round(MM * (view.elevationM(i) - view.heightM(i) - groundM)));
            height.add(Math.round(MM * view.heightM(i)));
        }
        ArrayNode lands = json.putArray("lands");
        for (int k = 0; k < view.streams(); k++) {
            ArrayNode stream = lands.addArray();
            for (int i = 0; i < view.outlets(); i++) {
                double atM = view.landsM(k, i);
                if (Double.isNaN(atM)) {
                    stream.addNull();
                } else {
                    stream.add(Math.round(MM * atM));
                }
            }
        }
        return json;
    }
}

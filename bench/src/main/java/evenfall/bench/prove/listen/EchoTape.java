package evenfall.bench.prove.listen;

import evenfall.bench.prove.guide.Recording;
import evenfall.wire.AirTemperature;
import evenfall.wire.HeightEchoes;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Echoes of all sensors, and the air's temperature. */
final class EchoTape implements Tape {
    /** A recording lasts seconds; this many are minutes. */
    private static final int MOST_LOOKS = 20_000;

    private final List<Recording.Look> looks = new ArrayList<>();
    private double airSumC;
    private int airReadings;
    private double nowS;

    @Nullable
    Double markS;

    @Override
    public void now(double timeS) {
        nowS = timeS;
    }

    @Override
    public void onHeights(HeightEchoes heights) {
        List<@Nullable Long> echoes = new ArrayList<>();
        for (int i = 0; i < heights.sensors(); i++) {
            echoes.add(heights.hasEcho(i) ? (Long) heights.echoUs(i) : null);
        }
        if (looks.size() < MOST_LOOKS) {
            looks.add(new Recording.Look(nowS, echoes));
        }
    }

    @Override
    public void onAir(AirTemperature air) {
        if (air.hasTemperature()) {
            airSumC += air.temperatureCentidegC() / 100.0;
            airReadings++;
        }
    }

    @Override
    public boolean heard() {
        return !looks.isEmpty();
    }

    @Override
    public String wanted() {
        return "heights ($PEVFH)";
    }

    @Override
    public String soFar() {
        return looks.size() + " looks";
    }

    @Override
    public double amount() {
        return looks.size();
    }

    @Override
    public Recording recording(double seconds) {
        return new Recording.Echoes(looks, airReadings == 0 ? null : (Double) (airSumC / airReadings), markS);
    }
}

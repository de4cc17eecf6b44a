package evenfall.monitor;

import evenfall.judge.Alert;
import evenfall.judge.Situation;
import evenfall.liquid.Application;
import evenfall.outlet.OutletType;
import evenfall.outlet.Stream;
import evenfall.pattern.BoomFall;
import evenfall.pattern.BoomPattern;
import evenfall.pattern.Fall;
import evenfall.pattern.Flight;
import evenfall.pattern.HeightWindow;
import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sense.BoomShape;
import evenfall.sense.HeightReadings;
import evenfall.sense.OutletHeights;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import evenfall.wire.WireCounts;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What follows from the senses at one moment: rate, boom shape, pattern. Keeps its arrays from one moment to the next. */
final class Assessment {
    private final Rig rig;
    private final Inputs inputs;
    /** Of the sensors' own heights, for what is said of wings and summed up over the ground. */
    private final BoomShape still;

    /** Of heights that the boom's motion and the roughness of the ground are worked into, for what is said of rows. */
    private final BoomShape moving;

    private final BoomPattern pattern;
    private final BoomFall ground;
    private final WindowByPressure windows;
    private final double[] outletM;
    private final boolean[] open;

    /** By {@link #still}, and what the sensors say of how fast each height changes. */
    private final OutletHeights own;

    private final double[] ownSdM;

    /** At the sensors, by the boom's motion. */
    private final HeightReadings moved;

    /** By {@link #moving}, with how fast the boom itself rises. */
    private final OutletHeights likeliest;

    /** How unsure it is from which height streams meet the ground, standard deviation, m. */
    private final double[] meetsSdM;

    /** By how much higher streams meet the ground from by {@link #own} than by {@link #likeliest}, m. */
    private final double[] higherM;

    private final double flightS;
    private final double halfM;
    private final double hingeM;

    private long nowUs;
    private double stepS;
    private Quantity speed = Quantity.unknown(Unknown.NOT_YET, -1);
    private Quantity flow = speed;
    private Quantity pressure = speed;
    private Quantity width = speed;
    private Quantity rate = speed;
    private Quantity error = speed;
    private Quantity speedFactor = speed;
    private Quantity patternPressure = speed;
    private List<Quantity> sensorM = List.of();
    private List<Quantity> sensorRateMps = List.of();
    private @Nullable Unknown patternUnknown = Unknown.NOT_YET;

    Assessment(Rig rig, Inputs inputs) {
        this.rig = rig;
        this.inputs = inputs;
        BoomLayout boom = rig.boom();
        outletM = new double[boom.outlets()];
        for (int i = 0; i < outletM.length; i++) {
            outletM[i] = boom.outletRightM(i);
        }
        own = OutletHeights.of(boom.outlets());
        ownSdM = new double[boom.outlets()];
        moved = new HeightReadings(rig.sensors().heights().size());
        likeliest = OutletHeights.of(boom.outlets());
        meetsSdM = new double[boom.outlets()];
        open = new boolean[boom.outlets()];
        halfM = 0.5 * boom.widthM();
        hingeM = boom.hingeM();
        still = new BoomShape(rig.sensors().heights(), outletM, hingeM);
        moving = new BoomShape(rig.sensors().heights(), outletM, hingeM);
        pattern = new BoomPattern(
                boom, rig.outlet(), rig.target().heightM(), rig.liquid().specificGravity());
        ground = new BoomFall(pattern);
        higherM = new double[boom.outlets()];
        windows = new WindowByPressure(rig);
        flightS = flightS();
    }

    /** Time in the air of a stream at target height and rated pressure, s. */
    private double flightS() {
        OutletType type = rig.outlet();
        Stream stream = type.streams().get(0);
        double factor = type.speedFactor(type.ratedPressurePa(), rig.liquid().specificGravity());
        return Flight.timeS(
                factor * stream.exitMps() * stream.downPart(), rig.target().heightM());
    }

    void assess(long timeUs) {
        stepS = (timeUs - nowUs) / 1e6;
        nowUs = timeUs;
        speed = inputs.speedMps(timeUs);
        flow = inputs.flowM3ps(timeUs);
        width = widthM();
        inputs.compare(flow);
        pressure = inputs.pressurePa(timeUs);
        rate = rateM();
        error = rate.isKnown()
                ? Quantity.known(
                        Application.error(rate.get(), rig.target().rateM()),
                        rate.variance() / (rig.target().rateM() * rig.target().rateM()),
                        rate.ageUs())
                : rate;
        sensorM = inputs.heightsM(timeUs);
        sensorRateMps = inputs.heightRatesMps(timeUs);
        still.spread(sensorM, own);
        still.spreadRates(sensorRateMps, own);
        for (int i = 0; i < ownSdM.length; i++) {
            ownSdM[i] = Math.sqrt(own.variance()[i]);
        }
        inputs.motion().now(timeUs, sensorM, flightS, moved);
        moving.over(inputs.motion().roughness());
        moving.spread(moved, likeliest);
        moving.spreadRates(moved, likeliest);
        moving.spreadMeets(moved, meetsSdM);
        speedFactor = speedFactor();
        patternPressure = patternPressurePa();
        patternUnknown = computePattern();
    }

    private Quantity widthM() {
        Quantity known = inputs.sectionsKnown(nowUs);
        if (!known.isKnown()) {
            return known;
        }
        int on = 0;
        boolean switched = false;
        List<BoomLayout.Section> sections = rig.boom().sections();
        for (int s = 0; s < sections.size(); s++) {
            boolean isOn = inputs.isOn(s);
            switched |= isOn != open[sections.get(s).firstOutlet()];
            for (int i = sections.get(s).firstOutlet(); i < sections.get(s).endOutlet(); i++) {
                open[i] = isOn;
            }
            on += isOn ? sections.get(s).outletCount() : 0;
        }
        if (switched) {
            inputs.otherOutlets();
        }
        return Quantity.known(on * rig.boom().spacingM(), known.ageUs());
    }

    private Quantity rateM() {
        if (!flow.isKnown()) {
            return Quantity.unknown(Unknown.NEEDS_FLOW, flow.ageUs());
        }
        if (!speed.isKnown()) {
            return Quantity.unknown(Unknown.NEEDS_SPEED, speed.ageUs());
        }
        if (!width.isKnown()) {
            return Quantity.unknown(Unknown.NEEDS_SECTIONS, width.ageUs());
        }
        long ageUs = Math.max(flow.ageUs(), Math.max(speed.ageUs(), width.ageUs()));
        double duringFlowMps = inputs.speedDuringFlowMps();
        if (Math.min(speed.get(), duringFlowMps) < rig.limits().walkingMps()) {
            return Quantity.unknown(Unknown.STANDING, ageUs);
        }
        if (!(width.get() > 0)) {
            return Quantity.unknown(Unknown.SECTIONS_OFF, ageUs);
        }
        double rateM = Application.rateM(flow.get(), duringFlowMps, width.get());
        double perFlow = rateM / flow.get();
        double perSpeed = rateM / duringFlowMps;
        double variance = perFlow * perFlow * flow.variance() + perSpeed * perSpeed * speed.variance();
        return Quantity.known(rateM, flow.get() > 0 ? variance : 0, ageUs);
    }

    private @Nullable Unknown computePattern() {
        if (!width.isKnown()) {
            return Unknown.NEEDS_SECTIONS;
        }
        if (!(width.get() > 0)) {
            return Unknown.SECTIONS_OFF;
        }
        if (!speed.isKnown()) {
            return Unknown.NEEDS_SPEED;
        }
        if (speed.get() < rig.limits().walkingMps()) {
            return Unknown.STANDING;
        }
        if (!speedFactor.isKnown()) {
            return speedFactor.unknown();
        }
        if (!(speedFactor.get() > 0)) {
            return Unknown.NOTHING_FALLS;
        }
        pattern.compute(
                likeliest.heightM(),
                likeliest.rateMps(),
                meetsSdM,
                likeliest.known(),
                open,
                speedFactor.get(),
                speed.get());
        return null;
    }

    /**
     * Exit speed over the rated one, from pressure; without pressure from the flow of one outlet, since both go with the square
     * root of pressure over density.
     */
    private Quantity speedFactor() {
        if (pressure.isKnown()) {
            double factor =
                    rig.outlet().speedFactor(pressure.get(), rig.liquid().specificGravity());
            // A square root: half the relative error.
            double perPa = pressure.get() > 0 ? 0.5 * factor / pressure.get() : 0;
            return Quantity.known(factor, perPa * perPa * pressure.variance(), pressure.ageUs());
        }
        if (flow.isKnown() && width.isKnown() && width.get() > 0) {
            double outletM3ps = flow.get() * rig.boom().spacingM() / width.get();
            double factor = outletM3ps / rig.outlet().ratedFlowM3ps();
            double perFlow = flow.get() > 0 ? factor / flow.get() : 0;
            return Quantity.known(factor, perFlow * perFlow * flow.variance(), flow.ageUs());
        }
        return Quantity.unknown(Unknown.NEEDS_PRESSURE, pressure.ageUs());
    }

    /** The pressure that the pattern rests on: measured, or what the measured flow takes. */
    private Quantity patternPressurePa() {
        Quantity factor = speedFactor;
        if (pressure.isKnown() || !factor.isKnown()) {
            return pressure;
        }
        double pressurePa = factor.get()
                * factor.get()
                * rig.outlet().ratedPressurePa()
                * rig.liquid().specificGravity();
        double perFactor = factor.get() > 0 ? 2 * pressurePa / factor.get() : 0;
        return Quantity.known(pressurePa, perFactor * perFactor * factor.variance(), factor.ageUs());
    }

    Situation situation() {
        double wingMiddleM = 0.5 * (hingeM + halfM);
        return new Situation(
                nowUs,
                stepS,
                speed.isKnown() ? speed.get() * stepS : 0,
                speed,
                error,
                patternPressure,
                meanHeight(-halfM, -wingMiddleM),
                meanHeight(-hingeM, hingeM),
                meanHeight(wingMiddleM, halfM),
                patternPressure.isKnown() ? windows.at(patternPressure.get()) : null,
                patternUnknown == null ? pattern : null,
                inputs.portStates(nowUs),
                inputs.sensorStates(nowUs, flow, pressure, sensorM),
                plumbing());
    }

    private Situation.Plumbing plumbing() {
        Quantity openOutlets = width;
        long mask = 0;
        if (width.isKnown()) {
            openOutlets =
                    Quantity.known((double) Math.round(width.get() / rig.boom().spacingM()), width.ageUs());
            for (int s = 0; s < rig.boom().sections().size(); s++) {
                mask |= inputs.isOn(s) ? 1L << s : 0;
            }
        }
        return new Situation.Plumbing(flow, pressure, openOutlets, mask, inputs.tankM3(nowUs), inputs.meteredM3(flow));
    }

    /**
     * What falls on the ground; null where the pattern is not known. By the sensors' own heights and rates: the likeliest heights are
     * smoother than true ones, and rows summed up by them get too seldom much too little or too much. What the sensors err by makes up for that.
     */
    @Nullable
    Fall fall() {
        if (patternUnknown != null) {
            return null;
        }
        double[] ownM = own.heightM();
        double[] ownMps = own.rateMps();
        double[] likeliestM = likeliest.heightM();
        double[] likeliestMps = likeliest.rateMps();
        for (int i = 0; i < higherM.length; i++) {
            higherM[i] = ownM[i] - likeliestM[i] + flightS * (ownMps[i] - likeliestMps[i]);
        }
        return ground.compute(ownM, higherM, own.known());
    }

    /** @param outletsMayDiffer the pattern takes all open outlets to give the same; which one does not, flow and pressure cannot tell */
    Live live(List<Alert> standing, boolean outletsMayDiffer, WireCounts wire, long droppedBytes) {
        Unknown rowsUnknown = patternUnknown == null && outletsMayDiffer ? Unknown.OUTLETS_UNLIKE : patternUnknown;
        return new Live(
                nowUs,
                speed,
                flow,
                pressure,
                width,
                rate,
                error,
                sensorM,
                sensorRateMps,
                segment("boom", -halfM, halfM, rowsUnknown),
                List.of(
                        segment("left", -halfM, -hingeM, rowsUnknown),
                        segment("centre", -hingeM, hingeM, rowsUnknown),
                        segment("right", hingeM, halfM, rowsUnknown)),
                heightWindow(),
                standing,
                wire,
                droppedBytes);
    }

    private @Nullable HeightWindow heightWindow() {
        return patternPressure.isKnown() ? windows.at(patternPressure.get()) : null;
    }

    private Live.Segment segment(String name, double fromM, double toM, @Nullable Unknown rowsUnknown) {
        Quantity height = meanHeight(fromM, toM);
        Unknown unknown = rowsUnknown != null ? rowsUnknown : height.unknown();
        if (unknown != null) {
            return new Live.Segment(name, height, null, null, unknown);
        }
        var rows = pattern.rowMeasures(fromM, toM);
        return rows == null
                ? new Live.Segment(name, height, null, null, Unknown.NOTHING_FALLS)
                : new Live.Segment(name, height, rows, pattern.lineMeasures(fromM, toM), null);
    }

    private Quantity meanHeight(double fromM, double toM) {
        double sum = 0;
        double sdSum = 0;
        int n = 0;
        for (int i = 0; i < outletM.length; i++) {
            if (outletM[i] < fromM || outletM[i] > toM) {
                continue;
            }
            if (!own.known()[i]) {
                return Quantity.unknown(
                        rig.sensors().heights().isEmpty() ? Unknown.NOT_FITTED : Unknown.NEEDS_HEIGHT,
                        oldestHeightUs());
            }
            sum += own.heightM()[i];
            sdSum += ownSdM[i];
            n++;
        }
        if (n == 0) {
            return Quantity.unknown(Unknown.NEEDS_HEIGHT, -1);
        }
        // Neighbouring outlets rest on the same sensors and err together: their mean errs no less than they do.
        double sd = sdSum / n;
        return Quantity.known(sum / n, sd * sd, oldestHeightUs());
    }

    private long oldestHeightUs() {
        long oldest = -1;
        for (Quantity height : sensorM) {
            oldest = Math.max(oldest, height.ageUs());
        }
        return oldest;
    }
}

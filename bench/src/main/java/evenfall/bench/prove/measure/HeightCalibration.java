package evenfall.bench.prove.measure;

import java.util.List;

/**
 * What a height sensor makes of known heights.
 *
 * @param line its distance over the height of the outlets beside it, m over m
 * @param aboveOutlet how far its face is above the outlets as the monitor needs it, m: the line's distance less the height, at the
 *     height that the boom is meant to run at
 * @param nonlinearityM greatest distance of a station from the line, m
 * @param noiseM standard deviation of one reading, pooled over the stations, m
 * @param outlierShare of the echoes
 * @param missingShare of the times asked
 */
public record HeightCalibration(
        Line line,
        Estimate aboveOutlet,
        double nonlinearityM,
        double noiseM,
        double outlierShare,
        double missingShare) {

    /** Fewest heights: a line through three has one degree of freedom and a coverage factor of 12.7. */
    public static final int FEWEST_STATIONS = 4;

    /**
     * One known height.
     *
     * @param heightM of the outlets beside the sensor over the target, by the tape, m
     * @param echoes what the sensor said meanwhile
     */
    public record Station(double heightM, EchoSeries echoes) {}

    /**
     * How far off the references may be.
     *
     * @param tapeM half width of the tape's error and of where it is held, the same at every height, m
     * @param tapeStepM smallest step of its reading, m
     * @param airC air temperature beside the sensor, °C
     * @param airHalfWidthC how far off that may be, °C
     */
    public record Doubt(double tapeM, double tapeStepM, double airC, double airHalfWidthC) {}

    /**
     * @param stations at least {@link Line#FEWEST}, at different heights
     * @param workingM height that the boom is meant to run at, m
     */
    public static HeightCalibration of(List<Station> stations, Doubt doubt, double workingM) {
        double[] heights = stations.stream().mapToDouble(Station::heightM).toArray();
        double[] distances =
                stations.stream().mapToDouble(s -> s.echoes().distanceM()).toArray();
        Line line = Line.through(heights, distances);
        double noiseSquares = 0;
        double meanSquares = 0;
        long kept = 0;
        long asked = 0;
        long missing = 0;
        long outliers = 0;
        for (Station station : stations) {
            EchoSeries echoes = station.echoes();
            noiseSquares += (echoes.kept() - 1) * echoes.noiseM() * echoes.noiseM();
            meanSquares += echoes.noiseM() * echoes.noiseM() / echoes.kept();
            kept += echoes.kept() - 1;
            asked += echoes.asked();
            missing += echoes.missing();
            outliers += echoes.outliers();
        }
        double atM = line.at(workingM);
        // Stations cannot agree better than what each was read with, however lucky the fit.
        double roundingM = Math.sqrt(meanSquares / stations.size() + doubt.tapeStepM() * doubt.tapeStepM() / 12);
        double scatterM = line.standardAt(workingM) / line.residualSd() * Math.max(line.residualSd(), roundingM);
        if (line.residualSd() == 0) {
            scatterM = roundingM;
        }
        Estimate above = Estimate.of(
                atM - workingM,
                Component.repeats("scatter around the line", scatterM, line.dof()),
                Component.within("tape", doubt.tapeM()),
                // The speed of sound grows with the root of the absolute temperature.
                Component.within("air temperature", atM * 0.5 * doubt.airHalfWidthC() / (doubt.airC() + 273.15)));
        return new HeightCalibration(
                line,
                above,
                line.worstResidual(),
                Math.sqrt(noiseSquares / kept),
                (double) outliers / (asked - missing),
                (double) missing / asked);
    }

    /**
     * How many stations in all would bring the offset within what is wanted, if they scatter as these do.
     *
     * @param wantedM expanded uncertainty, m
     * @return 0 when no sensible number does
     */
    public int stationsNeeded(double wantedM) {
        double fixed = 0;
        double scatter = 0;
        for (Component component : aboveOutlet.components()) {
            if (component.type() == Component.Type.B) {
                fixed += component.standard() * component.standard();
            } else {
                scatter = component.standard();
            }
        }
        return Repeats.needed(scatter * Math.sqrt(line.n()), 2, Math.sqrt(fixed), wantedM);
    }
}

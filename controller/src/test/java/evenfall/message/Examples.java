package evenfall.message;

import evenfall.judge.Alert;
import evenfall.judge.AlertKind;
import evenfall.monitor.Live;
import evenfall.pattern.HeightWindow;
import evenfall.pattern.LineMeasures;
import evenfall.pattern.RowMeasures;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import evenfall.wire.WireCounts;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Outputs as the core gives them, for the tests of this package: figures invented. */
final class Examples {
    static final Rig RIG = rig();

    static final Alert WING_LOW = new Alert(
            AlertKind.WING_LOW,
            "left",
            11_200_000,
            12_400_000,
            0.112,
            0.15,
            "m",
            "Left wing 0.11 m over the ground, limit 0.15 m.",
            "Raise the left wing.");

    static final Alert SILENT = new Alert(
            AlertKind.SENSOR_SILENT, "gnss", 3_000_000, 4_000_000, null, 1.0, "s", "Nothing ever came.", "Check it.");

    private Examples() {}

    static Live known(long timeUs) {
        RowMeasures rows = new RowMeasures(0.0612, 0.871, 1.13, 0, 0.0125);
        LineMeasures lines = new LineMeasures(0.1421, 0.04);
        Quantity height = Quantity.known(0.4812, 2.5e-5, 40_000);
        return new Live(
                timeUs,
                Quantity.known(5.502, 0.0004, 80_000),
                Quantity.known(165.3 * 1e-3 / 60, 20_000),
                Quantity.known(203_440, 20_000),
                Quantity.known(36.576, 0),
                Quantity.known(148.2e-7, 80_000),
                Quantity.known(-0.0121, 80_000),
                heights(height),
                heights(Quantity.known(-0.123, 0.0025, 40_000)),
                new Live.Segment("boom", height, rows, lines, null),
                List.of(
                        new Live.Segment("left", height, rows, lines, null),
                        new Live.Segment("centre", height, rows, lines, null),
                        new Live.Segment("right", height, rows, lines, null)),
                new HeightWindow(0.34, 0.67),
                List.of(WING_LOW),
                new WireCounts(1000, 990, 4, 3, 2, 1, 0, 0),
                17);
    }

    static Live unknown(Unknown reason, long ageUs) {
        Quantity nothing = Quantity.unknown(reason, ageUs);
        return new Live(
                0,
                nothing,
                nothing,
                nothing,
                nothing,
                nothing,
                nothing,
                heights(nothing),
                heights(nothing),
                new Live.Segment("boom", nothing, null, null, reason),
                List.of(new Live.Segment("left", nothing, null, null, reason)),
                null,
                List.of(),
                new WireCounts(0, 0, 0, 0, 0, 0, 0, 0),
                0);
    }

    static Status status(Status.State state) {
        return new Status(
                state,
                12_345_678,
                "0.1.0",
                List.of(
                        new Status.Port("hub", null, 20_000, 0),
                        new Status.Port("gnss", "there is no /dev/ttyUSB1", -1, 512)),
                Status.Trace.WRITING,
                1,
                "the core met \"something\"\n",
                3);
    }

    private static List<Quantity> heights(Quantity height) {
        List<Quantity> heights = new ArrayList<>();
        RIG.sensors().heights().forEach(sensor -> heights.add(height));
        return heights;
    }

    private static Rig rig() {
        try {
            return RigFile.read(Path.of("docs", "example-rig.yaml"));
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }
}

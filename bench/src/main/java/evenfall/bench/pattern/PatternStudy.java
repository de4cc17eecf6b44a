package evenfall.bench.pattern;

import evenfall.outlet.OutletType;
import evenfall.pattern.HeightWindow;
import evenfall.pattern.StaticPattern;
import java.util.ArrayList;
import java.util.List;

/**
 * One outlet type at several heights.
 *
 * @param type as fitted
 * @param layout boom and rows
 * @param pressurePa pressure at the outlets, Pa
 * @param specificGravity of the product
 * @param cases one for each height, in the order asked for
 */
public record PatternStudy(
        OutletType type,
        StaticPattern.Layout layout,
        double pressurePa,
        double specificGravity,
        List<StaticPattern> cases) {

    /** Row CV that counts as even enough: acceptable for spreading fertiliser (Teagasc, as reported by Agriland). */
    public static final double EVEN_ENOUGH_CV = 0.15;

    /** Looked at first when no height asked for holds: the height that types are designed for. */
    private static final double USUAL_HEIGHT_M = 0.5;

    public PatternStudy {
        cases = List.copyOf(cases);
    }

    public static PatternStudy of(
            OutletType type,
            StaticPattern.Layout layout,
            double pressurePa,
            double specificGravity,
            List<Double> heightsM) {
        List<StaticPattern> cases = new ArrayList<>();
        for (double heightM : heightsM) {
            cases.add(StaticPattern.of(type, layout, heightM, pressurePa, specificGravity));
        }
        return new PatternStudy(type, layout, pressurePa, specificGravity, cases);
    }

    /** Whether the outlet is asked to work at a pressure that it is not made for, where streams may neither form nor land so. */
    public boolean outsideWindow() {
        return pressurePa < type.lowPa() || pressurePa > type.highPa();
    }

    /**
     * The windows of height, by the mean over eight row phases, that hold {@link #EVEN_ENOUGH_CV} around the heights asked
     * for; where none of those holds, the one around 0.5 m if that does. From low to high, none twice.
     */
    public List<HeightWindow> windows() {
        List<HeightWindow> found = new ArrayList<>();
        for (StaticPattern one : cases) {
            addWindow(one.heightM(), found);
        }
        if (found.isEmpty()) {
            addWindow(USUAL_HEIGHT_M, found);
        }
        found.sort((a, b) -> Double.compare(a.lowM(), b.lowM()));
        return List.copyOf(found);
    }

    private void addWindow(double heightM, List<HeightWindow> found) {
        if (heightM < 0 || heightM > HeightWindow.TALLEST_M) {
            return;
        }
        for (HeightWindow window : found) {
            if (heightM >= window.lowM() && heightM <= window.highM()) {
                return;
            }
        }
        HeightWindow window = HeightWindow.around(
                type, layout.spacingM(), layout.rowM(), pressurePa, specificGravity, heightM, EVEN_ENOUGH_CV);
        if (window != null && !found.contains(window)) {
            found.add(window);
        }
    }
}

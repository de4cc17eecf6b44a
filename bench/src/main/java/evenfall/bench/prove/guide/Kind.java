package evenfall.bench.prove.guide;

import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What an answer measures: which units it may be typed in, and its size in SI. */
public enum Kind {
    VOLUME(
            "20.1 L",
            "5.3 gal",
            "0.05 L",
            "1 fl oz",
            units(
                    "L",
                    1e-3,
                    "mL",
                    1e-6,
                    "m3",
                    1,
                    "gal",
                    TradeUnits.US_GALLON_M3,
                    "fl oz",
                    TradeUnits.US_GALLON_M3 / 128)),
    MASS(
            "20.1 kg",
            "44.3 lb",
            "0.02 kg",
            "0.05 lb",
            units("kg", 1, "g", 1e-3, "lb", TradeUnits.POUND_KG, "oz", TradeUnits.POUND_KG / 16)),
    DENSITY(
            "1.28 kg/L",
            "10.65 lb/gal",
            "0.005 kg/L",
            "0.04 lb/gal",
            units("kg/L", 1000, "g/mL", 1000, "kg/m3", 1, "lb/gal", TradeUnits.POUND_KG / TradeUnits.US_GALLON_M3)),
    LENGTH(
            "0.50 m",
            "20 in",
            "2 mm",
            "0.1 in",
            units("m", 1, "cm", 0.01, "mm", 0.001, "in", TradeUnits.INCH_M, "ft", TradeUnits.FOOT_M)),
    TEMPERATURE("14 C", "57 F", "1 C", "2 F", units("C", 1, "F", 5.0 / 9)),
    TEMPERATURE_DIFFERENCE("1 C", "2 F", "1 C", "2 F", units("C", 1, "F", 5.0 / 9)),
    SPEED(
            "15 km/h",
            "9 mph",
            "0.1 km/h",
            "0.1 mph",
            units("km/h", TradeUnits.KMPH_MPS, "m/s", 1, "mph", TradeUnits.MPH_MPS)),
    TIME("60 s", "60 s", "0.5 s", "0.5 s", units("s", 1, "min", 60, "ms", 1e-3)),
    FLOW(
            "2.8 L/min",
            "0.74 gpm",
            "0.1 L/min",
            "0.02 gpm",
            units("L/min", TradeUnits.LPM_M3PS, "gpm", TradeUnits.GPM_M3PS, "gal/min", TradeUnits.GPM_M3PS)),
    PRESSURE(
            "200 kPa",
            "29 psi",
            "5 kPa",
            "1 psi",
            units("kPa", TradeUnits.KPA_PA, "bar", TradeUnits.BAR_PA, "psi", TradeUnits.PSI_PA)),
    SHARE("0.5 %", "0.5 %", "0.5 %", "0.5 %", units("%", 0.01));

    private static final Pattern TYPED = Pattern.compile("([-+]?(?:\\d+\\.?\\d*|\\.\\d+))\\s*(.*)");
    private static final double FREEZING_F = 32;

    private final String metricExample;
    private final String usExample;
    private final String smallMetricExample;
    private final String smallUsExample;

    @SuppressWarnings("ImmutableEnumChecker") // Filled once; its order is that in which units are named.
    private final Map<String, Double> siOfUnit;

    Kind(
            String metricExample,
            String usExample,
            String smallMetricExample,
            String smallUsExample,
            Map<String, Double> siOfUnit) {
        this.smallMetricExample = smallMetricExample;
        this.smallUsExample = smallUsExample;
        this.metricExample = metricExample;
        this.usExample = usExample;
        this.siOfUnit = siOfUnit;
    }

    private static Map<String, Double> units(Object... namesAndSizes) {
        Map<String, Double> units = new LinkedHashMap<>();
        for (int i = 0; i < namesAndSizes.length; i += 2) {
            units.put((String) namesAndSizes[i], ((Number) namesAndSizes[i + 1]).doubleValue());
        }
        return units;
    }

    /** How such an answer may look. */
    public String example(Units units) {
        return units == Units.METRIC ? metricExample : usExample;
    }

    /** How a bound or a step may look. */
    String smallExample(Units units) {
        return units == Units.METRIC ? smallMetricExample : smallUsExample;
    }

    /** The units that may be typed, with commas between. */
    public String unitNames() {
        return String.join(", ", siOfUnit.keySet());
    }

    /**
     * A number with its unit, in SI (°C for a temperature).
     *
     * @throws Refusal when there is no number, no unit, or one that does not fit
     */
    double si(String typed, Units units) throws Refusal {
        return si(typed, example(units));
    }

    /** As the other, with an example that fits the question. */
    double si(String typed, String example) throws Refusal {
        String text = typed.strip().replace("°", "").replace("US ", "");
        Matcher match = TYPED.matcher(text);
        String allowed = "a number with its unit (" + unitNames() + "), as " + example;
        if (!match.matches()) {
            throw new Refusal("\"" + typed.strip() + "\" is not a number with a unit", allowed);
        }
        String unit = match.group(2).strip();
        if (unit.isEmpty()) {
            throw new Refusal("\"" + typed.strip() + "\" has no unit", allowed);
        }
        double number = Double.parseDouble(match.group(1));
        for (Map.Entry<String, Double> known : siOfUnit.entrySet()) {
            if (known.getKey().toLowerCase(Locale.ROOT).equals(unit.toLowerCase(Locale.ROOT))) {
                double offset = this == TEMPERATURE && known.getKey().equals("F") ? FREEZING_F : 0;
                return (number - offset) * known.getValue();
            }
        }
        throw new Refusal("\"" + unit + "\" is not a unit that fits here", allowed);
    }
}

package evenfall.bench.choose;

import evenfall.config.ConfigException;
import evenfall.config.ConfigFile;
import evenfall.config.ConfigNode;
import evenfall.config.ConfigSchema;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Prices that the user has filled in. A type without a price has an unknown cost, never none. */
public final class Prices {
    private static final ConfigSchema SCHEMA = ConfigSchema.resource(Prices.class, "prices.schema.json");

    /**
     * @param each one outlet of one set
     * @param once fittings for one outlet's place, bought once however many sets there are
     */
    private record Price(double each, double once) {}

    private final String whyNone;
    private final @Nullable String currency;
    private final @Nullable String note;
    private final Map<String, Price> byOutlet;

    private Prices(String whyNone, @Nullable String currency, @Nullable String note, Map<String, Price> byOutlet) {
        this.whyNone = whyNone;
        this.currency = currency;
        this.note = note;
        this.byOutlet = byOutlet;
    }

    /** Nothing is known of prices. */
    public static Prices none() {
        return new Prices("no price file was given", null, null, Map.of());
    }

    /**
     * @throws ConfigException with file, line, what is wrong and what is allowed
     */
    public static Prices read(Path file) throws ConfigException {
        return of(ConfigFile.read(file, SCHEMA));
    }

    static Prices parse(String name, String text) throws ConfigException {
        return of(ConfigFile.parse(name, text, SCHEMA));
    }

    private static Prices of(ConfigFile file) throws ConfigException {
        ConfigNode root = file.root();
        Map<String, Price> byOutlet = new LinkedHashMap<>();
        for (ConfigNode at : root.list("outlets")) {
            Price price = new Price(at.number("each"), at.number("once", 0));
            if (byOutlet.put(at.text("outlet"), price) != null) {
                throw at.wrong(
                        "outlet", "there are two prices for " + at.text("outlet"), "one price for each outlet type");
            }
        }
        return new Prices(
                "there is no price in " + file.name(),
                root.text("currency"),
                root.has("note") ? root.text("note") : null,
                byOutlet);
    }

    /**
     * @param outlet id of the outlet type
     * @param places outlets on the boom
     * @param sets how many sets of them
     */
    Cost cost(String outlet, int places, int sets) {
        Price price = byOutlet.get(outlet);
        return price == null
                ? Cost.unknown(whyNone)
                : new Cost(places * (price.once() + sets * price.each()), currency, note, null);
    }
}

package evenfall.bench.cli;

import evenfall.config.ConfigException;
import evenfall.outlet.OutletCatalogue;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Several outlet types. */
final class OutletTypesOption {
    static final String NAME = "--outlets";

    @Option(
            names = NAME,
            paramLabel = "ID|FILE",
            split = ",",
            splitSynopsisLabel = ",",
            description = "Outlet types; all built-in ones if absent.")
    private @Nullable List<String> outlets;

    boolean isGiven() {
        return outlets != null;
    }

    /** As written, not looked up yet. */
    List<String> idsOrFiles() throws ConfigException {
        if (outlets == null) {
            return OutletCatalogue.ids();
        }
        if (outlets.isEmpty()) {
            throw ConfigException.ofOption(
                    NAME, "none is given", String.join(", ", OutletCatalogue.ids()) + ", or outlet files");
        }
        return outlets;
    }
}

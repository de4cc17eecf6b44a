package evenfall.bench.prove.record;

import evenfall.bench.prove.guide.Prover;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;

/** How result files are called. */
public final class ResultName {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss").withZone(ZoneOffset.UTC);
    private static final int MOST_SAME_NAMES = 1000;

    private ResultName() {}

    /**
     * A dated name that is free in a folder.
     *
     * @param rig name of the machine, if known
     * @param trialSeed of a simulated yard; null where the test is a real one
     * @param begun when the test began
     */
    public static Path free(Path folder, Prover prover, @Nullable String rig, @Nullable Long trialSeed, Instant begun) {
        String machine = rig == null ? "" : "-" + rig;
        String stem = "prove-" + prover.word() + (trialSeed == null ? machine : "-trial-" + trialSeed) + "-"
                + STAMP.format(begun);
        for (int again = 1; again < MOST_SAME_NAMES; again++) {
            Path file = folder.resolve(stem + (again == 1 ? "" : "-" + again) + ".json");
            if (!Files.exists(file)) {
                return file;
            }
        }
        return folder.resolve(stem + ".json");
    }
}

package evenfall.trap;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/** Breaks every wall on purpose; {@code WallsTest} proves with it that its rules see what they forbid. */
final class Offender {
    private Offender() {}

    static String everythingForbidden(double value) {
        long now = System.nanoTime();
        double chance = new Random().nextDouble() + Math.sin(value) + Math.sqrt(value);
        return Files.exists(Path.of("x")) + String.format("%f", value) + chance + now;
    }
}

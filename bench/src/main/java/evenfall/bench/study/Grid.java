package evenfall.bench.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.outlet.OutletCatalogue;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;

/**
 * Which runs a study makes: every ground with every outlet type, speed, height and seed.
 *
 * @param grounds classes of roughness, or {@code level}
 * @param outlets ids of built-in types, or outlet files
 * @param speedsKmh km/h
 * @param heightsM target heights, m
 * @param seeds of the random streams
 * @param seconds how long each run lasts, s
 * @param rateLpha target rate, L/ha
 */
public record Grid(
        List<String> grounds,
        List<String> outlets,
        List<Double> speedsKmh,
        List<Double> heightsM,
        List<Long> seeds,
        double seconds,
        double rateLpha) {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    public Grid {
        grounds = List.copyOf(grounds);
        outlets = List.copyOf(outlets);
        speedsKmh = List.copyOf(speedsKmh);
        heightsM = List.copyOf(heightsM);
        seeds = List.copyOf(seeds);
    }

    /**
     * How many machines are taken together, where one is a type sized for a speed. A machine's first run lets the simulator fly its
     * streams for a table, a second's work; it keeps sixteen of them.
     */
    private static final int TOGETHER = 12;

    /**
     * All cases, in the order in which they are run: a few machines over all ground, one after another, then the next few. So several
     * cores build tables side by side, no table is built twice, and types meet on the same ground early in a study.
     */
    List<Case> inTurn() {
        List<Case> machines = new ArrayList<>();
        for (double speed : speedsKmh) {
            for (String outlet : outlets) {
                machines.add(new Case("", outlet, speed, 0, 0));
            }
        }
        List<Case> cases = new ArrayList<>();
        for (int from = 0; from < machines.size(); from += TOGETHER) {
            List<Case> some = machines.subList(from, Math.min(machines.size(), from + TOGETHER));
            for (long seed : seeds) {
                for (String ground : grounds) {
                    for (double height : heightsM) {
                        for (Case machine : some) {
                            cases.add(new Case(ground, machine.outlet(), machine.speedKmh(), height, seed));
                        }
                    }
                }
            }
        }
        return cases;
    }

    /** All cases, in the order in which people read them. */
    public List<Case> cases() {
        List<Case> cases = new ArrayList<>();
        for (String ground : grounds) {
            for (double speed : speedsKmh) {
                for (double height : heightsM) {
                    for (String outlet : outlets) {
                        for (long seed : seeds) {
                            cases.add(new Case(ground, outlet, speed, height, seed));
                        }
                    }
                }
            }
        }
        return cases;
    }

    private static String checksum(String file) throws ConfigException {
        try {
            CRC32 sum = new CRC32();
            sum.update(Files.readAllBytes(Path.of(file)));
            return Long.toHexString(sum.getValue());
        } catch (IOException e) {
            throw new ConfigException(file, 0, null, "cannot be read (" + FileCheck.reason(e) + ")", "an outlet file");
        }
    }

    /** One line that is equal for equal studies; an outlet file counts by what it holds. */
    String fingerprint() throws ConfigException {
        StringBuilder text = new StringBuilder();
        try {
            text.append(JSON.writeValueAsString(this));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a grid cannot be written as JSON", e);
        }
        for (String outlet : outlets) {
            if (!OutletCatalogue.ids().contains(outlet)) {
                text.append(' ').append(outlet).append(' ').append(checksum(outlet));
            }
        }
        return text.toString();
    }

    static Grid ofFingerprint(String text) throws JsonProcessingException {
        return JSON.readerFor(Grid.class).readValue(text);
    }
}

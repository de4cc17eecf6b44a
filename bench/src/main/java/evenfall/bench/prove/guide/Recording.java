package evenfall.bench.prove.guide;

import evenfall.wire.WireCounts;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Raw numbers of one measurement, as an instrument heard them or a person read them. */
public sealed interface Recording {

    /**
     * Pulses in a window, or metres by a receiver, or both.
     *
     * @param pulses null where no counter was heard
     * @param metres driven by the receiver's speed; null where none was heard
     * @param seconds that something passed: from the first pulse or motion to the last
     * @param restarted whether the hub started anew meanwhile
     * @param runningAtStart whether pulses came already when the window began
     * @param runningAtEnd whether they still came when it ended
     * @param longestGapS longest time without a sentence, s
     */
    record Count(
            @Nullable Long pulses,
            @Nullable Double metres,
            double seconds,
            boolean restarted,
            boolean runningAtStart,
            boolean runningAtEnd,
            double longestGapS)
            implements Recording {}

    /**
     * Echoes of all sensors of the hub.
     *
     * @param looks in the order of their arrival
     * @param airC what the hub's thermometer said meanwhile, °C; null where none did
     * @param markS moment that a person marked, s after the begin; null where none was asked for
     */
    record Echoes(
            List<Look> looks,
            @Nullable Double airC,
            @Nullable Double markS) implements Recording {
        public Echoes {
            looks = List.copyOf(looks);
        }

        /** Echoes of one sensor, from 0 at the left; null where none came. */
        public List<@Nullable Long> of(int sensor) {
            List<@Nullable Long> echoes = new ArrayList<>();
            for (Look look : looks) {
                echoes.add(sensor < look.echoesUs().size() ? look.echoesUs().get(sensor) : null);
            }
            return Collections.unmodifiableList(echoes);
        }

        /** Most sensors in any one sentence. */
        public int sensors() {
            int most = 0;
            for (Look look : looks) {
                most = Math.max(most, look.echoesUs().size());
            }
            return most;
        }
    }

    /**
     * One sentence of heights.
     *
     * @param timeS when it arrived, s after the begin
     * @param echoesUs there and back, µs, from the left; null where no echo came
     */
    record Look(double timeS, List<@Nullable Long> echoesUs) {
        public Look {
            echoesUs = Collections.unmodifiableList(new ArrayList<>(echoesUs));
        }
    }

    /**
     * The serial ports of this computer.
     *
     * @param found in the order of their names
     */
    record Ports(List<Port> found) implements Recording {
        public Ports {
            found = List.copyOf(found);
        }
    }

    /**
     * @param device its path
     * @param title what the system calls it
     */
    record Port(String device, String title) {}

    /**
     * What one line brought.
     *
     * @param refused why it could not be opened; null where it could
     * @param seconds listened
     * @param bytes that came
     * @param counts what became of its sentences
     * @param kinds accepted sentences by kind, in the order of their first
     * @param bootCount of the hub, as it last said; null where it did not
     */
    record Line(
            @Nullable String refused,
            double seconds,
            long bytes,
            WireCounts counts,
            List<KindHeard> kinds,
            @Nullable Long bootCount)
            implements Recording {
        public Line {
            kinds = List.copyOf(kinds);
        }

        public static Line refused(String why) {
            return new Line(why, 0, 0, WireCounts.NONE, List.of(), null);
        }
    }

    /**
     * @param name as on the wire: RMC, PEVFQ …
     * @param fromHub whether it is one of the hub's
     * @param sentences how many
     * @param longestGapS longest time between two, or between one and an end of the listening, s
     */
    record KindHeard(String name, boolean fromHub, long sentences, double longestGapS) {}
}

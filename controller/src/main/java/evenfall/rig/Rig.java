package evenfall.rig;

import evenfall.liquid.Liquid;
import evenfall.outlet.OutletType;
import evenfall.quantity.Units;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A machine as configured; everything in SI.
 *
 * @param name used in message topics: lower-case letters, digits and hyphens
 * @param boom boom and rows
 * @param outlet the outlet type as fitted at the boom's spacing, with its metering size
 * @param liquid the product
 * @param target what is wanted
 * @param sensors what is installed, and where
 * @param limits when to warn
 * @param ports where bytes come from
 * @param broker where messages go
 * @param page where the cab view is served; empty for nowhere
 * @param ledger how the row ledger is kept
 * @param units of the words in alerts; all else carries its unit beside it
 */
public record Rig(
        String name,
        BoomLayout boom,
        OutletType outlet,
        Liquid liquid,
        Target target,
        Sensors sensors,
        Limits limits,
        List<Port> ports,
        Broker broker,
        Optional<Page> page,
        Ledger ledger,
        Units units) {

    /** The name under which what is done on the cab view stands among the inputs; no serial port has it. */
    public static final String CAB_PORT = "cab";

    public Rig {
        ports = List.copyOf(ports);
    }

    /** The same machine with other outlets. */
    public Rig withOutlet(OutletType other) {
        return new Rig(name, boom, other, liquid, target, sensors, limits, ports, broker, page, ledger, units);
    }

    /** The same machine, whose alerts speak in other units. */
    public Rig withUnits(Units other) {
        return new Rig(name, boom, outlet, liquid, target, sensors, limits, ports, broker, page, ledger, other);
    }

    /**
     * What the crop shall get.
     *
     * @param rateM product on the ground as a depth, m³/m²
     * @param heightM height of the outlets over what the streams shall meet, m
     */
    public record Target(double rateM, double heightM) {}

    /**
     * A serial port.
     *
     * @param name the name that sensors, traces and messages use
     * @param device path of the device
     * @param baud bits per second; 8 data bits, no parity, 1 stop bit
     */
    public record Port(String name, String device, int baud) {}

    /**
     * An MQTT 3.1.1 broker.
     *
     * @param host name or address
     * @param port TCP port
     */
    public record Broker(String host, int port) {}

    /**
     * The cab view.
     *
     * @param host name or address to listen on
     * @param port TCP port; 0 for any that is free
     * @param token what a page must bring; never empty where the host is beyond loopback
     */
    public record Page(String host, int port, Optional<String> token) {}

    /**
     * How the row ledger is kept.
     *
     * @param cellM length of a distance cell, m
     * @param overlapFrom the worst fix by which passes are laid beside one another
     * @param antennaAheadM how far the receiver's antenna is ahead of the boom, m; negative behind it
     * @param antennaRightM how far it is right of the boom's centre line, m
     * @param productFactor by how much this product touches leaves harder than another, as the farm judges it; empty where it has
     *     no opinion
     * @param weatherFactor the same for the weather
     */
    public record Ledger(
            double cellM,
            FixGrade overlapFrom,
            double antennaAheadM,
            double antennaRightM,
            OptionalDouble productFactor,
            OptionalDouble weatherFactor) {
        /** What a rig file without the key gets. */
        public static final Ledger USUAL =
                new Ledger(2, FixGrade.DIFFERENTIAL, 0, 0, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** How good a receiver's fix is, from the worst to the best. */
    public enum FixGrade {
        /** Of its own: wanders by decimetres within minutes, more than a row. */
        ANY,
        /** With corrections. */
        DIFFERENTIAL,
        /** By the carrier's phase, whole cycles fixed: centimetres. */
        RTK
    }

    /**
     * @param flow the one flow meter, if there is one
     * @param pressure the transmitter near the outlets, if there is one
     * @param heights height sensors from left to right, none to seven
     * @param heightsPort the port their echoes come by; empty without height sensors
     * @param air how warm the air is, which the speed of sound needs
     * @param speedPort port of the GNSS receiver, if there is one
     * @param wheel the wheel sensor, if there is one
     * @param sectionsPort port of the section switches; empty where all sections count as on
     * @param tank the level gauge in the tank, if there is one
     */
    public record Sensors(
            Optional<Flow> flow,
            Optional<Pressure> pressure,
            List<Height> heights,
            Optional<String> heightsPort,
            Air air,
            Optional<String> speedPort,
            Optional<Wheel> wheel,
            Optional<String> sectionsPort,
            Optional<Tank> tank) {
        public Sensors {
            heights = List.copyOf(heights);
        }
    }

    /**
     * @param port where its pulses come from
     * @param pulsesPerM3 K-factor, pulses per cubic metre
     */
    public record Flow(String port, double pulsesPerM3) {}

    /**
     * A sensor at a wheel that rolls without being driven, or a radar that gives pulses.
     *
     * @param port where its pulses come from
     * @param pulsesPerM pulses per metre of way
     */
    public record Wheel(String port, double pulsesPerM) {}

    /**
     * A transmitter on a current loop, linear between two points.
     *
     * @param port where its current comes from
     * @param lowA current at the low point, A
     * @param highA current at the high point, A
     * @param lowPa pressure at the low point, Pa
     * @param highPa pressure at the high point, Pa
     */
    public record Pressure(String port, double lowA, double highA, double lowPa, double highPa) {}

    /**
     * A level gauge in the tank. Between the marks of its table litres go in proportion to counts.
     *
     * @param port where its counts come from
     * @param table what its counts mean, counts ascending, volumes all ascending or all descending; two marks or more
     * @param noiseM3 standard deviation of one reading, m³: sloshing above all
     * @param known how well the table is known, as a share of what is gone: a standard deviation
     */
    public record Tank(String port, List<Mark> table, double noiseM3, double known) {
        public Tank {
            table = List.copyOf(table);
        }

        /**
         * @param counts what the gauge gives
         * @param volumeM3 what the tank holds then, m³
         */
        public record Mark(double counts, double volumeM3) {}
    }

    /**
     * An ultrasonic height sensor.
     *
     * @param name for people
     * @param rightM where it sits, m right of the centre line
     * @param aboveOutletM how far its face is above the outlets, m; negative when below
     */
    public record Height(String name, double rightM, double aboveOutletM) {}

    /**
     * @param port where air temperature comes from; empty where it is fixed
     * @param fixedC the temperature to take without a sensor, °C
     */
    public record Air(Optional<String> port, double fixedC) {}

    /**
     * When to warn. Alerts rise when the limit has been passed for {@code holdS} seconds <em>and</em> {@code holdM} metres, so
     * that a warning stands for ground that matters at any speed.
     *
     * @param rateError limit of the rate error, a ratio
     * @param rowCv limit of the row CV, a ratio
     * @param clearanceM the outlets must stay at least so high over the ground, m
     * @param ceilingM the outlets must stay at most so high, m
     * @param holdS s
     * @param holdM m
     * @param walkingMps below this speed rate and rows are not judged, m/s
     * @param silenceS a port that sends nothing for so long is silent, s
     * @param strikeS a tip that may well be under the clearance within so long is a strike ahead, s
     * @param sectionS a section that is switched has opened or shut after so long, s
     */
    public record Limits(
            double rateError,
            double rowCv,
            double clearanceM,
            double ceilingM,
            double holdS,
            double holdM,
            double walkingMps,
            double silenceS,
            double strikeS,
            double sectionS) {}
}

package evenfall.sim.fault;

import evenfall.sim.plumbing.PlumbingTrouble;
import evenfall.sim.sensor.AirThermometer;
import evenfall.sim.sensor.GnssReceiver;
import evenfall.sim.sensor.HubTrouble;
import evenfall.sim.sensor.PressureTransmitter;
import evenfall.sim.sensor.PulseMeter;
import evenfall.sim.wire.Uart;
import java.util.List;
import java.util.Optional;

/**
 * The parts of one machine that faults can touch.
 *
 * @param mounts how the outlets sit; whoever lets the streams land goes by it
 * @param flow the meter, where there is one
 * @param wheel the wheel sensor, where there is one
 * @param pressure the transmitter, where there is one
 * @param air the thermometer, where there is one
 * @param gnss the receiver, where there is one
 * @param lines serial lines, in the order of {@link FaultPlaces#ports}
 * @param machine boom and chassis
 */
public record FaultParts(
        PlumbingTrouble plumbing,
        OutletMounts mounts,
        HubTrouble hub,
        Optional<PulseMeter> flow,
        Optional<PulseMeter> wheel,
        Optional<PressureTransmitter> pressure,
        Optional<AirThermometer> air,
        Optional<GnssReceiver> gnss,
        List<Uart> lines,
        MachineTrouble machine) {
    public FaultParts {
        lines = List.copyOf(lines);
    }
}

package evenfall.sim.scenario;

import evenfall.sim.sensor.AirThermometer;
import evenfall.sim.sensor.EchoSensor;
import evenfall.sim.sensor.RadarSensor;
import evenfall.sim.sensor.TankGauge;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the sensors get wrong, as they are made.
 *
 * @param flowJitterPeriods jitter of the flow meter's pulses, in periods
 * @param flowStartCount what the meter has counted before
 * @param flowLeastM3ps where its turbine begins to turn, m³/s; 0 for a magnetic one
 * @param wheelPulsesPerM what the wheel sensor gives; empty when there is none
 * @param echo the height sensors, where they are ultrasonic
 * @param radar the height sensors, where they are radars
 * @param air the thermometer
 * @param tank the gauge in the tank, where there is one
 */
public record SensorsSpec(
        double flowJitterPeriods,
        long flowStartCount,
        double flowLeastM3ps,
        OptionalDouble wheelPulsesPerM,
        EchoSensor.Spec echo,
        Optional<RadarSensor.Spec> radar,
        AirThermometer.Spec air,
        Optional<TankGauge.Spec> tank) {}

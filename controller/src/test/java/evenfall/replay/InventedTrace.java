package evenfall.replay;

import evenfall.liquid.Orifice;
import evenfall.rig.Rig;
import evenfall.sense.HeightSense;
import java.util.Locale;
import java.util.Random;

/**
 * An invented recording for speed and thrift: a machine that runs steadily over ground that moves all of them, 80
 * sentences a second. Nothing is wrong with it: it heaves, rolls and bends as a wide boom does, by a few centimetres at its tips, over ground that
 * is rough by one and a half.
 */
final class InventedTrace {
    static final int SENTENCES_PER_S = 80;

    private InventedTrace() {}

    /** The trace's text; the same for the same machine and time. */
    static String of(Rig rig, int seconds) {
        Random random = new Random(7);
        double halfM = 0.5 * rig.boom().widthM();
        double[] wing = rig.sensors().heights().stream()
                .mapToDouble(sensor -> sensor.rightM() / halfM)
                .toArray();
        double[] groundM = new double[wing.length];
        StringBuilder out = new StringBuilder();
        double speedMps = 5.5;
        double pulses = 0;
        int sentences = 0;
        for (long ms = 50; ms <= seconds * 1000L; ms += 50) {
            long us = ms * 1000;
            double flowM3ps = rig.target().rateM() * speedMps * rig.boom().widthM();
            double hz = flowM3ps * rig.sensors().flow().orElseThrow().pulsesPerM3();
            pulses += hz * 0.05;
            StringBuilder echoes = new StringBuilder("PEVFH," + us);
            double s = 1e-3 * ms;
            double heaveM = swing(0.015, 1.7, s) + swing(0.01, 0.31, s);
            double rollM = swing(0.03, 0.47, s);
            double bendM = swing(0.015, 1.17, s);
            for (int i = 0; i < wing.length; i++) {
                groundM[i] += -0.05 * groundM[i] + 0.005 * random.nextGaussian();
                double heightM = 0.5 + heaveM + wing[i] * (rollM + Math.abs(wing[i]) * bendM) - groundM[i];
                double facesM = heightM + 0.1 + 0.003 * random.nextGaussian();
                echoes.append(',').append(Math.round(2e6 * facesM / HeightSense.soundMps(10)));
            }
            sentences += say(out, us, "hub", echoes.toString());
            if (ms % 100 == 0) {
                long whole = (long) Math.floor(pulses);
                sentences += say(
                        out,
                        us,
                        "hub",
                        "PEVFQ," + us + "," + whole + "," + (us - Math.round((pulses - whole) / hz * 1e6)));
                Orifice orifice = rig.outlet().orifice();
                double pressurePa = orifice.pressurePa(
                        flowM3ps / rig.boom().outlets(), rig.liquid().specificGravity());
                sentences += say(out, us, "hub", "PEVFP," + us + "," + Math.round(4000 + 0.016 * pressurePa));
                sentences += say(out, us, "hub", "PEVFS," + us + ",3F");
                String time =
                        String.format(Locale.ROOT, "12%02d%02d.%02d", ms / 60_000 % 60, ms / 1000 % 60, ms / 10 % 100);
                String knots = String.format(Locale.ROOT, "%.3f", speedMps * 3600 / 1852);
                sentences += say(
                        out, us, "gnss", "GPRMC," + time + ",A,5200.0000,N,00100.0000,E," + knots + ",90.0,251126,,,A");
                sentences += say(out, us, "gnss", "GPVTG,90.0,T,,M," + knots + ",N,19.8,K,A");
                sentences +=
                        say(out, us, "gnss", "GPGGA," + time + ",5200.0000,N,00100.0000,E,1,12,0.8,80.0,M,47.0,M,,");
            }
        }
        if (sentences != SENTENCES_PER_S * seconds) {
            throw new IllegalStateException(sentences + " sentences");
        }
        return out.append(seconds * 1_000_000L).append(" - end\n").toString();
    }

    private static double swing(double byM, double hz, double atS) {
        return byM * Math.sin(2 * Math.PI * hz * atS);
    }

    private static int say(StringBuilder out, long us, String port, String body) {
        int sum = 0;
        for (int i = 0; i < body.length(); i++) {
            sum ^= body.charAt(i);
        }
        out.append(us).append(' ').append(port).append(" $").append(body);
        out.append(String.format(Locale.ROOT, "*%02X%n", sum));
        return 1;
    }
}

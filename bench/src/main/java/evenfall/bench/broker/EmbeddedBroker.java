package evenfall.bench.broker;

import java.io.IOException;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.activemq.artemis.core.config.Configuration;
import org.apache.activemq.artemis.core.config.impl.ConfigurationImpl;
import org.apache.activemq.artemis.core.remoting.impl.netty.NettyAcceptor;
import org.apache.activemq.artemis.core.server.embedded.EmbeddedActiveMQ;
import org.apache.activemq.artemis.spi.core.remoting.Acceptor;

/** An MQTT broker in this process, on the loopback address and a free port. Keeps nothing on disk. */
public final class EmbeddedBroker implements AutoCloseable {
    private static final String ACCEPTOR = "mqtt";

    /** Held, for a logger that nobody holds forgets its level. */
    private static final List<Logger> QUIET = List.of(
            Logger.getLogger("org.apache.activemq"),
            Logger.getLogger("org.apache.artemis"),
            Logger.getLogger("io.netty"));

    private final EmbeddedActiveMQ server;
    private final int port;

    private EmbeddedBroker(EmbeddedActiveMQ server, int port) {
        this.server = server;
        this.port = port;
    }

    /**
     * @throws IOException when it does not come up
     */
    public static EmbeddedBroker start() throws IOException {
        for (Logger logger : QUIET) {
            logger.setLevel(Level.SEVERE);
        }
        EmbeddedActiveMQ server = new EmbeddedActiveMQ();
        try {
            Configuration configuration = new ConfigurationImpl()
                    .setPersistenceEnabled(false)
                    .setSecurityEnabled(false)
                    .setJMXManagementEnabled(false)
                    .setThreadPoolMaxSize(4)
                    .addAcceptorConfiguration(ACCEPTOR, "tcp://127.0.0.1:0?protocols=MQTT");
            server.setConfiguration(configuration);
            server.start();
            Acceptor acceptor = server.getActiveMQServer().getRemotingService().getAcceptor(ACCEPTOR);
            if (!(acceptor instanceof NettyAcceptor netty)) {
                throw new IOException("the embedded broker opened no port");
            }
            return new EmbeddedBroker(server, netty.getActualPort());
        } catch (Exception e) {
            stop(server);
            throw new IOException("the embedded broker did not start: " + e.getMessage(), e);
        }
    }

    public String host() {
        return "127.0.0.1";
    }

    public int port() {
        return port;
    }

    @Override
    public void close() {
        stop(server);
    }

    private static void stop(EmbeddedActiveMQ server) {
        try {
            server.stop();
        } catch (Exception e) {
            // It held nothing that could be lost, and the run's result stands without it.
            QUIET.get(0).log(Level.SEVERE, "the embedded broker did not stop cleanly", e);
        }
    }
}

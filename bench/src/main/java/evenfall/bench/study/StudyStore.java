package evenfall.bench.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import evenfall.config.ConfigException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;

/**
 * The runs of a study in an SQLite file. Each is one transaction, on the disk when {@link #add} returns; a program that is killed loses
 * those under way and no other. One program at a time.
 */
public final class StudyStore implements AutoCloseable {
    /** The file, in the study's folder. */
    public static final String FILE = "study.sqlite";

    private static final String LOCK = "study.lock";
    private static final String OTHER = "another folder, or wait";
    private static final String COLUMNS =
            "ground, outlet, speed_kmh, height_m, seed, row_cv_mean, row_cv_p95, below_80_share,"
                    + " above_120_share, rate_error_p95_abs_pct, said_row_cv_mean, alerts_raised, alerts_missed, alerts_false";

    private final Connection connection;
    private final FileChannel lockChannel;
    private final PreparedStatement insert;
    private boolean closed;

    private StudyStore(Connection connection, FileChannel lockChannel) throws SQLException {
        this.connection = connection;
        this.lockChannel = lockChannel;
        this.insert = connection.prepareStatement(
                "INSERT INTO run (" + COLUMNS + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
    }

    /**
     * @param resume whether a study may be there already; then it must be the same one
     * @throws ConfigException where there is one and should not be, or another than is asked for, or none to go on with
     */
    public static StudyStore open(Path folder, Grid grid, boolean resume) throws ConfigException, IOException {
        Path file = folder.resolve(FILE);
        if (Files.exists(file) && !resume) {
            throw ConfigException.ofOption(
                    "--out", folder + " holds a study already", "--resume to go on with it, or another folder");
        }
        if (resume && !Files.exists(file)) {
            throw none(folder);
        }
        FileChannel lock = lock(folder);
        try {
            SQLiteConfig config = new SQLiteConfig();
            config.setJournalMode(SQLiteConfig.JournalMode.WAL);
            config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
            Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file, config.toProperties());
            prepare(connection, grid, folder);
            return new StudyStore(connection, lock);
        } catch (SQLException e) {
            lock.close();
            throw new IOException(file + ": " + e.getMessage(), e);
        } catch (ConfigException e) {
            lock.close();
            throw e;
        }
    }

    private static FileChannel lock(Path folder) throws ConfigException, IOException {
        FileChannel channel =
                FileChannel.open(folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            lock = null;
        }
        if (lock == null) {
            channel.close();
            throw ConfigException.ofOption("--out", folder + ": another program works on this study", OTHER);
        }
        return channel;
    }

    private static void prepare(Connection connection, Grid grid, Path folder) throws SQLException, ConfigException {
        String wanted = grid.fingerprint();
        connection.setAutoCommit(false);
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(
                    "CREATE TABLE IF NOT EXISTS study (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID");
            statement.executeUpdate(
                    "CREATE TABLE IF NOT EXISTS run (ground TEXT NOT NULL, outlet TEXT NOT NULL, speed_kmh REAL"
                            + " NOT NULL, height_m REAL NOT NULL, seed INTEGER NOT NULL, row_cv_mean REAL, row_cv_p95 REAL,"
                            + " below_80_share REAL, above_120_share REAL, rate_error_p95_abs_pct REAL, said_row_cv_mean REAL,"
                            + " alerts_raised INTEGER NOT NULL, alerts_missed INTEGER NOT NULL, alerts_false INTEGER NOT NULL,"
                            + " PRIMARY KEY (ground, outlet, speed_kmh, height_m, seed)) WITHOUT ROWID");
        }
        String there = grid(connection);
        if (there == null) {
            try (PreparedStatement statement =
                    connection.prepareStatement("INSERT INTO study (key, value) VALUES ('grid', ?)")) {
                statement.setString(1, wanted);
                statement.executeUpdate();
            }
        }
        connection.commit();
        connection.setAutoCommit(true);
        if (there != null && !there.equals(wanted)) {
            connection.close();
            throw ConfigException.ofOption(
                    "--resume",
                    folder + " holds another study than the other options ask for",
                    "the options that it was begun with: " + there);
        }
    }

    /**
     * The grid of the study in a folder.
     *
     * @throws ConfigException where there is none
     */
    public static Grid gridOf(Path folder) throws ConfigException {
        Path file = folder.resolve(FILE);
        if (!Files.exists(file)) {
            throw none(folder);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            String there = grid(connection);
            if (there == null) {
                throw none(folder);
            }
            return Grid.ofFingerprint(there);
        } catch (SQLException | JsonProcessingException e) {
            throw new ConfigException(
                    file.toString(),
                    0,
                    null,
                    "is no study (" + e.getMessage() + ")",
                    "a file that evenfall study wrote");
        }
    }

    private static ConfigException none(Path folder) {
        return ConfigException.ofOption(
                "--resume", folder + " holds no study", "the folder of a study that was broken off");
    }

    private static @Nullable String grid(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT value FROM study WHERE key = 'grid'")) {
            return rows.next() ? rows.getString(1) : null;
        }
    }

    /** Keeps a run. */
    public synchronized void add(Case one, Outcome outcome) throws IOException {
        if (closed) {
            throw new IOException("the study is closed");
        }
        try {
            int at = 1;
            insert.setString(at++, one.ground());
            insert.setString(at++, one.outlet());
            insert.setDouble(at++, one.speedKmh());
            insert.setDouble(at++, one.heightM());
            insert.setLong(at++, one.seed());
            for (Double value : new Double[] {
                outcome.rowCvMean(),
                outcome.rowCvP95(),
                outcome.below80Share(),
                outcome.above120Share(),
                outcome.rateErrorP95AbsPct(),
                outcome.saidRowCvMean()
            }) {
                insert.setObject(at++, value);
            }
            insert.setInt(at++, outcome.raised());
            insert.setInt(at++, outcome.missed());
            insert.setInt(at, outcome.unfounded());
            insert.executeUpdate();
        } catch (SQLException e) {
            throw new IOException("the run of " + one + " cannot be kept: " + e.getMessage(), e);
        }
    }

    /** All runs that were kept, in no order that means anything. */
    public synchronized Map<Case, Outcome> all() throws IOException {
        Map<Case, Outcome> all = new LinkedHashMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT " + COLUMNS + " FROM run")) {
            while (rows.next()) {
                all.put(
                        new Case(
                                rows.getString(1),
                                rows.getString(2),
                                rows.getDouble(3),
                                rows.getDouble(4),
                                rows.getLong(5)),
                        new Outcome(
                                known(rows, 6),
                                known(rows, 7),
                                known(rows, 8),
                                known(rows, 9),
                                known(rows, 10),
                                known(rows, 11),
                                rows.getInt(12),
                                rows.getInt(13),
                                rows.getInt(14)));
            }
        } catch (SQLException e) {
            throw new IOException("the study cannot be read: " + e.getMessage(), e);
        }
        return all;
    }

    private static @Nullable Double known(ResultSet rows, int column) throws SQLException {
        double value = rows.getDouble(column);
        return rows.wasNull() ? null : value;
    }

    /** Waits for a run that is being kept, and no longer. */
    @Override
    public synchronized void close() throws IOException {
        if (closed) {
            return;
        }
        closed = true;
        try {
            insert.close();
            connection.close();
        } catch (SQLException e) {
            throw new IOException("the study cannot be closed: " + e.getMessage(), e);
        } finally {
            lockChannel.close();
        }
    }
}

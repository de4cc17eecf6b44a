package evenfall.bench.matrix;

import evenfall.bench.run.LeanRun;
import evenfall.config.ConfigException;
import evenfall.sim.scenario.Scenario;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Makes runs on several cores and counts them one after the other in their own order, so that the result does not depend on which was
 * ready first. Only a few are under way or waiting to be counted at a time, however many there are.
 */
public final class Runs {
    private Runs() {}

    /** Told after each run that has been counted. */
    @FunctionalInterface
    public interface Progress {
        void counted(int runs, int of);
    }

    /**
     * @param jobs how many at a time, at least 1
     * @throws ConfigException when something wanted is wrong
     * @throws IOException when a run fails, in one line
     */
    public static Matrix make(Wanted wanted, int jobs, Progress progress)
            throws ConfigException, IOException, InterruptedException {
        List<Task> tasks = wanted.tasks();
        Matrix matrix = new Matrix(wanted);
        ExecutorService workers = Executors.newFixedThreadPool(jobs, Runs::worker);
        try {
            ArrayDeque<Future<Marked>> underWay = new ArrayDeque<>();
            int started = 0;
            for (int counted = 0; counted < tasks.size(); counted++) {
                while (started < tasks.size() && underWay.size() < 2 * jobs) {
                    Task task = tasks.get(started++);
                    underWay.add(workers.submit(() -> run(task)));
                }
                matrix.count(result(underWay.remove(), tasks.get(counted)));
                progress.counted(counted + 1, tasks.size());
            }
        } finally {
            workers.shutdownNow();
        }
        return matrix;
    }

    private static Thread worker(Runnable work) {
        Thread thread = new Thread(work, "score");
        thread.setDaemon(true);
        return thread;
    }

    private static Marked run(Task task) throws ConfigException {
        Scenario scenario = task.source().scenario();
        return Marked.of(task, scenario, LeanRun.score(scenario));
    }

    private static Marked result(Future<Marked> run, Task task)
            throws ConfigException, IOException, InterruptedException {
        try {
            return run.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof ConfigException wrong) {
                throw wrong;
            }
            throw new IOException(
                    task.group().words() + ", " + task.name() + ": the run broke off with " + e.getCause(), e);
        }
    }
}

package evenfall.bench.study;

import evenfall.bench.run.LeanRun;
import evenfall.config.ConfigException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletionService;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** Makes the runs that are not there yet, on several cores. */
public final class Studying {
    private Studying() {}

    /** Told after each run that has been kept. */
    @FunctionalInterface
    public interface Progress {
        /**
         * @param made in this program
         * @param kept with those of before
         * @param of all of the study
         */
        void kept(int made, int kept, int of);
    }

    /**
     * @param jobs runs at a time, at least 1
     * @return how many were made
     * @throws ConfigException when a case is wrong
     * @throws IOException when a run fails or cannot be kept, in one line
     */
    public static int make(Grid grid, StudyStore store, int jobs, Progress progress)
            throws ConfigException, IOException, InterruptedException {
        List<Case> all = grid.inTurn();
        Set<Case> there = store.all().keySet();
        List<Case> wanted = new ArrayList<>();
        for (Case one : all) {
            if (!there.contains(one)) {
                wanted.add(one);
            }
        }
        ExecutorService workers = Executors.newFixedThreadPool(jobs, Studying::worker);
        CompletionService<Case> done = new ExecutorCompletionService<>(workers);
        try {
            int started = 0;
            for (int made = 0; made < wanted.size(); made++) {
                while (started < wanted.size() && started < made + 2 * jobs) {
                    Case one = wanted.get(started++);
                    done.submit(() -> run(one, grid, store));
                }
                done.take().get();
                progress.kept(made + 1, there.size() + made + 1, all.size());
            }
            return wanted.size();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof ConfigException wrong) {
                throw wrong;
            }
            if (e.getCause() instanceof IOException failed) {
                throw failed;
            }
            throw new IOException("a run broke off with " + e.getCause(), e);
        } finally {
            workers.shutdownNow();
        }
    }

    private static Thread worker(Runnable work) {
        Thread thread = new Thread(work, "study");
        thread.setDaemon(true);
        return thread;
    }

    private static Case run(Case one, Grid grid, StudyStore store) throws ConfigException, IOException {
        store.add(one, Outcome.of(LeanRun.score(StudyField.scenario(one, grid))));
        return one;
    }
}

package evenfall.bench.cli;

import evenfall.bench.received.Message;
import evenfall.bench.run.Runner;

/** Watches nothing: the run is over before anybody could look, and the result holds what counts. */
final class SilentWatch implements Runner.Watcher {
    @Override
    public void preparing(String what) {
        // Nobody looks.
    }

    @Override
    public void driving(double atS) {
        // Nobody looks.
    }

    @Override
    public void heard(Message message) {
        // Nobody looks.
    }
}

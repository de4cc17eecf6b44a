package evenfall.bench.prove.talk;

import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Refusal;
import evenfall.bench.prove.guide.Reply;
import evenfall.bench.prove.guide.Step;
import evenfall.bench.prove.listen.Instruments;
import evenfall.bench.prove.listen.PortTroubleException;
import evenfall.bench.prove.listen.Session;
import evenfall.bench.report.Paint;
import evenfall.bench.report.Wrap;
import evenfall.config.ConfigException;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;

/** A person at a terminal. An empty line takes the usual answer; {@code back} goes one step back. */
public final class TerminalTalk implements FrontEnd {
    private static final long TICK_MS = 250;
    private static final String BACK = "back";
    private static final String CLEAR_LINE = "\r\u001b[K";

    private final Lines lines;
    private final PrintStream out;
    private final Paint paint;
    private final boolean live;
    private final int columns;
    private final Instruments instruments;

    /**
     * @param live whether a line may be drawn over
     */
    public TerminalTalk(Lines lines, PrintStream out, Paint paint, boolean live, int columns, Instruments instruments) {
        this.lines = lines;
        this.out = out;
        this.paint = paint;
        this.live = live;
        this.columns = columns;
        this.instruments = instruments;
    }

    @Override
    public void notes(List<String> notes) {
        for (String note : notes) {
            boolean caution = note.startsWith("Caution");
            for (String line : Wrap.lines(note, columns - 2)) {
                out.println("  " + (caution ? paint.high(line) : line));
            }
        }
    }

    @Override
    public Answer answer(Step step) throws ConfigException, InterruptedException {
        if (step instanceof Step.Ask ask) {
            return typed(step, prompt(ask));
        }
        if (step instanceof Step.More more) {
            return typed(step, more.words() + (more.usual() ? " [Yes/no] " : " [yes/No] "));
        }
        return measured((Step.Measure) step);
    }

    private static String prompt(Step.Ask ask) {
        String usual = ask.usual();
        if (!ask.choices().isEmpty()) {
            return ask.words() + " (" + String.join(", ", ask.choices()) + ") "
                    + (usual == null ? "" : "[" + usual + "] ");
        }
        return ask.words() + (usual == null ? " (as " + ask.example() + ") " : " [" + usual + "] ");
    }

    private Answer typed(Step step, String prompt) throws ConfigException, InterruptedException {
        ask(prompt);
        String line = line(step);
        return line.strip().toLowerCase(Locale.ROOT).equals(BACK) ? Back.ONCE : new Given(new Reply.Typed(line));
    }

    private void ask(String prompt) {
        List<String> parts = Wrap.lines(prompt, columns - 1);
        for (int i = 0; i < parts.size() - 1; i++) {
            out.println(paint.strong(parts.get(i)));
        }
        out.print(paint.strong(parts.get(parts.size() - 1)) + " ");
        out.flush();
    }

    private String line(Step step) throws ConfigException, InterruptedException {
        while (true) {
            Lines.Line line = lines.poll(1000);
            if (line.state() == Lines.State.TYPED) {
                return line.text();
            }
            if (line.state() == Lines.State.ENDED) {
                throw ended(step);
            }
        }
    }

    private ConfigException ended(Step step) {
        out.println();
        return new ConfigException(
                "standard input",
                0,
                step.key(),
                "the answers ended before the test did",
                "an answer to each question, or --answers FILE");
    }

    private Answer measured(Step.Measure step) throws ConfigException, InterruptedException {
        Step.Signal signal = step.signal();
        if (signal instanceof Step.Listing || signal instanceof Step.Listening) {
            return byItself(step);
        }
        if (!instruments.canRecord(signal)) {
            if (step.example() == null) {
                out.println(paint.bad("! ")
                        + "this needs a port: begin again with --port DEVICE or --rig RIG.yaml, or answer no");
                return Back.ONCE;
            }
            return typed(step, step.words() + " Then type what was counted (as " + step.example() + ")");
        }
        while (true) {
            ask(step.words() + " Enter begins"
                    + (step.example() == null ? "" : "; or type what was read (as " + step.example() + ")") + ":");
            String line = line(step).strip();
            if (line.toLowerCase(Locale.ROOT).equals(BACK)) {
                return Back.ONCE;
            }
            if (!line.isEmpty()) {
                return new Given(new Reply.Typed(line));
            }
            try (Session session = instruments.start(signal)) {
                return new Given(new Reply.Heard(record(step, session)));
            } catch (PortTroubleException e) {
                // The port may be freed or plugged in meanwhile; nothing that was answered is lost.
                out.println(paint.bad("! ") + e.getMessage() + "; allowed: a port that is free and speaks");
            }
        }
    }

    private Recording record(Step.Measure step, Session session)
            throws PortTroubleException, ConfigException, InterruptedException {
        boolean wantsMark = step.signal() instanceof Step.Echoing echoing && echoing.marked();
        if (session.seconds() == 0) {
            ask("Recording. Enter ends:");
            untilEnter(step, session);
        } else if (wantsMark) {
            ask("Recording. Pull the board away and press Enter at that very moment:");
            untilEnter(step, session);
            session.mark();
            pass(session, session.seconds() * 2 / 3);
        } else {
            pass(session, session.seconds());
        }
        String said = session.soFar();
        Recording recording = session.finish();
        draw("");
        out.println((live ? "" : "  ") + paint.faint("heard: " + said));
        return recording;
    }

    private void untilEnter(Step step, Session session) throws ConfigException, InterruptedException {
        while (true) {
            Lines.Line line = lines.poll(TICK_MS);
            if (line.state() == Lines.State.TYPED) {
                return;
            }
            if (line.state() == Lines.State.ENDED) {
                throw ended(step);
            }
            draw(session.soFar() + "   Enter ends: ");
        }
    }

    private void pass(Session session, double seconds) throws InterruptedException {
        long endNs = System.nanoTime() + (long) (1e9 * seconds);
        for (long left = endNs - System.nanoTime(); left > 0; left = endNs - System.nanoTime()) {
            Thread.sleep(Math.min(TICK_MS, Math.max(1, left / 1_000_000)));
            draw(session.soFar());
        }
    }

    private void draw(String text) {
        if (live) {
            out.print(CLEAR_LINE + Paint.cut(text, columns - 1));
            out.flush();
        }
    }

    private Answer byItself(Step.Measure step) throws InterruptedException {
        out.println(step.words());
        try (Session session = instruments.start(step.signal())) {
            pass(session, session.seconds());
            String said = session.soFar();
            Recording recording = session.finish();
            draw("");
            out.println("  " + paint.faint(said));
            return new Given(new Reply.Heard(recording));
        } catch (PortTroubleException e) {
            String why = String.valueOf(e.getMessage());
            out.println(paint.bad("! ") + why);
            return new Given(new Reply.Heard(Recording.Line.refused(why)));
        }
    }

    @Override
    public void refused(Step step, Refusal refusal) {
        out.println(paint.bad("! ") + refusal.getMessage());
    }
}

package evenfall.trace;

import java.io.IOException;

/** A trace that is not one: its message is one line of file, line number, what is wrong and what is allowed. */
public final class TraceFormatException extends IOException {

    private static final long serialVersionUID = 1L;

    private final long line;

    TraceFormatException(String name, long line, String wrong, String allowed) {
        super(name + ":" + line + ": " + wrong + "; allowed: " + allowed);
        this.line = line;
    }

    /** Returns the number of the bad line, from 1. */
    public long line() {
        return line;
    }
}

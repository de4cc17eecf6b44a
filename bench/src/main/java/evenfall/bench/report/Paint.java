package evenfall.bench.report;

/** Colours of a terminal; each carries a second sign (a word, a mark) wherever it is used, for who cannot see it. */
public enum Paint {
    ON(true),
    OFF(false);

    private static final String END = "\u001b[0m";
    private final boolean colours;

    Paint(boolean colours) {
        this.colours = colours;
    }

    public static Paint of(boolean colours) {
        return colours ? ON : OFF;
    }

    public String strong(String text) {
        return wrap("1", text);
    }

    public String faint(String text) {
        return wrap("2", text);
    }

    /** Fine. */
    public String good(String text) {
        return wrap("32", text);
    }

    /** Too little of something. */
    public String low(String text) {
        return wrap("36", text);
    }

    /** Too much of something, or a warning. */
    public String high(String text) {
        return wrap("33", text);
    }

    /** Wrong. */
    public String bad(String text) {
        return wrap("1;31", text);
    }

    private String wrap(String code, String text) {
        return colours && !text.isEmpty() ? "\u001b[" + code + "m" + text + END : text;
    }

    /** Characters that a person sees: colour codes take no room. */
    public static int width(String text) {
        int width = 0;
        boolean code = false;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (c == 0x1b) {
                code = true;
            } else if (code) {
                code = c != 'm';
            } else {
                width++;
            }
        }
        return width;
    }

    /** The first so many visible characters; a colour that is open then is closed. */
    public static String cut(String text, int columns) {
        StringBuilder kept = new StringBuilder();
        int width = 0;
        boolean code = false;
        boolean coloured = false;
        for (int i = 0; i < text.length() && (code || width < columns); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (c == 0x1b) {
                code = true;
                coloured = true;
            } else if (code) {
                code = c != 'm';
            } else {
                width++;
            }
            kept.appendCodePoint(c);
        }
        return coloured ? kept + END : kept.toString();
    }
}

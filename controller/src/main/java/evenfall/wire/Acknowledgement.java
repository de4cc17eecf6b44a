package evenfall.wire;

/**
 * {@code $PEVFA}: somebody has seen an alert and said so on the cab view. No sensor sends it; the box writes it into its own inputs, so
 * that a trace holds it like everything else that came in.
 *
 * <p>A view that is filled again with the next sentence of its kind: valid only during the call that handed it over.
 */
public final class Acknowledgement {
    private static final String HEX = "0123456789ABCDEF";

    /** As the envelope has it, CR LF included. */
    private static final int LONGEST = 82;

    private final byte[] kind = new byte[LONGEST];
    private final byte[] place = new byte[LONGEST];
    private int kindLength;
    private int placeLength;

    Acknowledgement() {}

    boolean read(Fields fields) {
        kindLength = fields.word(kind);
        placeLength = fields.word(place);
        return fields.good() && !fields.more();
    }

    /** The alert's kind: lower-case words joined by hyphens. Whether there is such a kind is not decided here. */
    public String kind() {
        return text(kind, kindLength);
    }

    /** Its place, likewise. */
    public String place() {
        return text(place, placeLength);
    }

    private static String text(byte[] word, int length) {
        StringBuilder text = new StringBuilder(length);
        for (int i = 0; i < length; i++) {
            text.append((char) word[i]);
        }
        return text.toString();
    }

    /**
     * The sentence with CR LF.
     *
     * @param kind lower-case words joined by hyphens, as is the place
     * @throws IllegalArgumentException where they are not, or would make a sentence that is too long
     */
    public static byte[] sentence(String kind, String place) {
        String content = "PEVFA," + word(kind) + "," + word(place);
        int sum = 0;
        for (int i = 0; i < content.length(); i++) {
            sum ^= content.charAt(i);
        }
        String sentence = "$" + content + "*" + HEX.charAt(sum >> 4) + HEX.charAt(sum & 0xF) + "\r\n";
        if (sentence.length() > LONGEST) {
            throw new IllegalArgumentException(
                    "a sentence of " + sentence.length() + " characters; allowed: " + LONGEST);
        }
        byte[] bytes = new byte[sentence.length()];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) sentence.charAt(i);
        }
        return bytes;
    }

    private static String word(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (!Fields.isOfWord(text.charAt(i))) {
                throw new IllegalArgumentException(
                        "'" + text + "' is no word of lower-case letters, digits and hyphens");
            }
        }
        if (text.isEmpty()) {
            throw new IllegalArgumentException("an empty word");
        }
        return text;
    }
}

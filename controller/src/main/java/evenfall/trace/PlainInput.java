package evenfall.trace;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import org.jspecify.annotations.Nullable;

/** The bytes of a recording, unpacked where they are packed, in a stream that can be looked into and set back. */
final class PlainInput extends BufferedInputStream {

    private static final int BUFFER = 65_536;
    private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
    private static final int GZIP_FIRST = 0x1F;
    private static final int GZIP_SECOND = 0x8B;

    private final @Nullable Unpacker unpacker;

    private PlainInput(InputStream in, @Nullable Unpacker unpacker) {
        super(in, BUFFER);
        this.unpacker = unpacker;
    }

    static PlainInput of(InputStream in) throws IOException {
        if (in instanceof PlainInput plain) {
            return plain;
        }
        PlainInput plain = unpacked(in);
        plain.skipByteOrderMark();
        return plain;
    }

    private static PlainInput unpacked(InputStream in) throws IOException {
        InputStream packed = in.markSupported() ? in : new BufferedInputStream(in, BUFFER);
        packed.mark(2);
        int first = packed.read();
        int second = first < 0 ? -1 : packed.read();
        packed.reset();
        if (first != GZIP_FIRST || second != GZIP_SECOND) {
            return new PlainInput(packed, null);
        }
        Unpacker unpacker = new Unpacker(packed);
        return new PlainInput(unpacker, unpacker);
    }

    /** What some editors write before everything else; it says nothing. */
    private void skipByteOrderMark() throws IOException {
        mark(BYTE_ORDER_MARK.length);
        if (!Arrays.equals(readNBytes(BYTE_ORDER_MARK.length), BYTE_ORDER_MARK)) {
            reset();
        }
    }

    /** Returns whether the compressed data broke off before their end. */
    boolean broken() {
        return unpacker != null && unpacker.broken;
    }

    /** Returns what is wrong with the compressed data, or null while nothing is known to be. */
    @Nullable
    String damage() {
        return unpacker == null ? null : unpacker.damage;
    }

    /**
     * Ends where the compressed data break off or are damaged, instead of throwing: a buffer above it would lose with
     * the exception the bytes that came before it.
     */
    private static final class Unpacker extends InputStream {

        private final @Nullable GZIPInputStream packed;
        private boolean broken;
        private @Nullable String damage;

        Unpacker(InputStream in) throws IOException {
            GZIPInputStream opened = null;
            try {
                opened = new GZIPInputStream(in, BUFFER);
            } catch (EOFException e) {
                broken = true; // not even its header is whole
            } catch (ZipException e) {
                damage = e.getMessage();
            }
            packed = opened;
        }

        @Override
        public int read() throws IOException {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] bytes, int offset, int length) throws IOException {
            if (broken || damage != null || packed == null) {
                return -1;
            }
            try {
                return packed.read(bytes, offset, length);
            } catch (EOFException e) {
                broken = true;
                return -1;
            } catch (ZipException e) {
                damage = e.getMessage();
                return -1;
            }
        }
    }
}

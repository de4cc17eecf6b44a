package evenfall.serial;

/** An open serial device. */
interface Device {
    /** What {@link #read} returns when the device is gone. */
    int GONE = -1;

    /**
     * Waits for bytes, but not for ever.
     *
     * @return how many bytes came into the buffer; 0 when none came in time; {@link #GONE} when none ever will
     */
    int read(byte[] buffer);

    /** May hang when the driver does: never called on a thread that somebody waits for. */
    void close();

    /** Opens a device anew at each call. */
    @FunctionalInterface
    interface Opener {
        Device open() throws RefusedException;
    }

    /** The device is absent, taken, or not allowed; the message says so in a few words for people. */
    final class RefusedException extends Exception {
        private static final long serialVersionUID = 1L;

        RefusedException(String why) {
            super(why);
        }
    }
}

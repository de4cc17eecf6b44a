package evenfall.message;

/** What a message is worth once a newer one is there. */
public enum Delivery {
    /** Only the newest counts: an older one that has not left yet is dropped for it, and none is sent twice. */
    LATEST,
    /** Each one counts: kept until it is known to have arrived, in order. */
    EVERY
}

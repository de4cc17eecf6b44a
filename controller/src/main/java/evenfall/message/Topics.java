package evenfall.message;

import evenfall.judge.Alert;

/** The topics of one rig. */
public final class Topics {
    private final String root;
    private final String live;
    private final String ledger;

    /**
     * @param rigName as the rig file has it: lower-case letters, digits and hyphens, so nothing in it means anything to MQTT
     */
    public Topics(String rigName) {
        this.root = "evenfall/" + rigName + "/";
        this.live = root + "live";
        this.ledger = root + "ledger";
    }

    /** How the box itself is; retained. */
    public String status() {
        return root + "status";
    }

    /** The state of things five times a second; not retained. */
    public String live() {
        return live;
    }

    /** Where each finished distance cell of the row ledger goes. */
    public String ledger() {
        return ledger;
    }

    /** Where each finished pass goes. */
    public String pass() {
        return root + "pass";
    }

    /** Where one alert stands: a topic for each kind and place, retained while it stands. */
    public String alert(Alert alert) {
        return alert(alert.kind().word(), alert.place());
    }

    /** The topic of the alert of one kind at one place, by their words. */
    public String alert(String kind, String place) {
        return alertsUnder() + kind + "/" + place;
    }

    /** What every alert topic of the rig begins with. */
    public String alertsUnder() {
        return root + "alert/";
    }

    /** Where it is said that somebody has acknowledged an alert. */
    public String acknowledged() {
        return root + "acknowledged";
    }

    /** The filter that matches every alert topic of the rig and nothing else. */
    public String everyAlert() {
        return root + "alert/+/+";
    }
}

package evenfall.judge;

import evenfall.sense.Quantity;

/**
 * The end of a wing at one moment: its lowest outlet in the outer quarter.
 *
 * @param heightM over what the sensors see, m
 * @param rateMps how fast that height grows, m/s; negative while it falls
 */
public record Tip(Quantity heightM, Quantity rateMps) {}

package evenfall.bench.choose;

/**
 * What one metering size reaches.
 *
 * @param sizeM3ps its flow with water at the outlet's rated pressure, m³/s
 * @param flowsM3ps flows of the product through one outlet within the pressure window, m³/s
 * @param share of the range of rates and speeds that it reaches, 0 to 1
 */
public record Reach(double sizeM3ps, Span flowsM3ps, double share) {}

package slabfield.fit;

/**
 * What one plausible house has beyond the model: a draw of the errors of {@link NoiseModel}, the same everywhere in the house.
 *
 * @param noise how large the errors are
 * @param pressures draw from the standard normal distribution for pressures
 * @param flows the same for flows
 */
public record ModelError(NoiseModel noise, double pressures, double flows) {
    /** None at all. */
    public static final ModelError NONE = new ModelError(NoiseModel.METER_ONLY, 0, 0);

    private static final double FURTHEST = 3;

    /** Of a draw no more than three deviations count. */
    public ModelError {
        pressures = Math.max(-FURTHEST, Math.min(FURTHEST, pressures));
        flows = Math.max(-FURTHEST, Math.min(FURTHEST, flows));
    }

    /**
     * What the house has where the model has a pressure, or a vacuum; never more than the strongest.
     *
     * @param pressure relative to the room [Pa]
     * @param strongest vacuum at a suction point [Pa]
     */
    public double pressure(double pressure, double strongest) {
        double p = pressure * Math.exp(noise.shareAt(pressure, strongest) * pressures),
                most = Math.max(strongest, Math.abs(pressure));
        return Math.max(-most, Math.min(most, p));
    }

    /** What the house has where the model has a flow [m3/s]. */
    public double flow(double flow) {
        return flow * (1 + noise.flowShare() * flows);
    }
}

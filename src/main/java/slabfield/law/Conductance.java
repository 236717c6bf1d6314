package slabfield.law;

/**
 * Flow in proportion to the pressure difference: {@code q = C dp}.
 *
 * <p>Stands for Darcy flow and for every other slow, viscous leak: soil, porous block faces, fine joints.
 *
 * @param conductance C, above 0; what is shut off altogether has no link instead [m3/(s Pa)]
 * @see "FlowLawContractTest"
 */
public record Conductance(double conductance) implements FlowLaw {
    public Conductance {
        Require.positive("conductance", conductance);
    }

    @Override
    public double flow(double difference) {
        return conductance * difference;
    }

    @Override
    public double slope(double difference) {
        return conductance;
    }
}

package slabfield.network;

/**
 * Pressures of a solved network from which the solve of a like one can start.
 *
 * @param cells of each cell of the grid, 0 where it has none
 * @param devices of each further node, in the order in which they were added
 */
record Guess(double[] cells, double[] devices) {
    /** Everything at the room's pressure. */
    static final Guess NONE = new Guess(new double[0], new double[0]);

    static Guess of(Network network, double[] at, double[] rest) {
        double[] all = network.spread(at, rest).clone();
        int n = network.cells();
        return new Guess(java.util.Arrays.copyOf(all, n), java.util.Arrays.copyOfRange(all, n, all.length));
    }

    /** The same with a further device, before the one that has this number so far. */
    Guess withDevice(int number, double pressure) {
        double[] more = java.util.Arrays.copyOf(devices, devices.length + 1);
        System.arraycopy(devices, number, more, number + 1, devices.length - number);
        more[number] = pressure;
        return new Guess(cells, more);
    }

    /** Sets the unknowns of a network of the same grid; its devices only where there are as many of them. */
    void start(Network network, double[] at) {
        if (cells.length != network.cells()) return;
        boolean sameDevices = devices.length == network.nodes() - network.cells();
        for (int u = 0; u < at.length; u++) {
            int node = network.nodeOf(u);
            if (node < cells.length) at[u] = cells[node];
            else if (sameDevices) at[u] = devices[node - cells.length];
        }
    }
}
